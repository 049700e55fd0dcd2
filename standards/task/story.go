package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Story is a short word problem: a situation, the number sentence that it tells, what it
// is about and who is in it. "story add-to change-unknown: 5 + ? = 12, shells, Mia".
// Its wording is computed (Prompt).
//
// A story in which both parts are unknown, "7 = ? + ?", holds the sentence of two parts
// as even as can be.
type Story struct {
	Situation StorySituation
	Sentence  Sentence
	Thing     string // one of StoryThings
	Name      string // one of StoryNames
	Other     string // the second child where two are compared, else empty
	Telling   int    // which of the StoryTellings, from 1; 0 is the first, as older stories are written
}

// NewStory is a story of a situation told by a sentence; names is one child, or two where
// two are compared. The error says what can't be told.
func NewStory(situation StorySituation, s Sentence, thing string, names ...string) (Story, error) {
	t := Story{Situation: situation, Sentence: s, Thing: thing}
	if situation == TogetherBoth {
		t.Sentence = evenParts(s.Result())
	}
	if len(names) != situation.People() || !slices.Contains(StoryThings(situation), thing) || situation != TogetherBoth && !situation.tells(s) {
		return t, words.Errorf("%s of %s with %d children tells no %s", s, thing, len(names), situation)
	}
	t.Name, t.Other = names[0], append(names, "")[1]
	return t, t.check()
}

var bothUnknown = regexp.MustCompile(`^([0-9]{1,4}) ?= ?\? ?\+ ?\?$`)

func readStory(text string) (Task, error) {
	rest, ok := strings.CutPrefix(text, "story ")
	if !ok {
		return nil, errOther
	}
	name, rest, _ := strings.Cut(rest, ":")
	situation := StorySituation(strings.TrimSpace(name))
	if situation.row().situation == "" {
		if hint := words.Suggest(name, situationNames()); hint != nil {
			return nil, words.Errorf("no situation %q%s; write for example %s", name, hint, AddToChange.exampleText())
		}
		return nil, errOther // a story in somebody's own words
	}
	cells := strings.Split(rest, ",")
	telling, err := tellingOf(&cells)
	if err != nil {
		return nil, err
	}
	if len(cells) != 2+situation.People() {
		return nil, words.Errorf("a story of %s needs a sentence, a thing and %d of the names, as in %s", situation, situation.People(), situation.exampleText())
	}
	s, err := situation.read(strings.TrimSpace(cells[0]))
	if err != nil {
		return nil, err
	}
	thing, err := listed("thing for "+string(situation), cells[1], StoryThings(situation))
	if err != nil {
		return nil, err
	}
	children := cells[2:]
	for i := range children {
		if children[i], err = listed("child", children[i], StoryNames()); err != nil {
			return nil, err
		}
	}
	story, err := NewStory(situation, s, thing, children...)
	story.Telling = telling
	return story, err
}

// tellingOf takes the last cell off where it says which telling it is: "telling 2".
func tellingOf(cells *[]string) (int, error) {
	last := len(*cells) - 1
	number, ok := strings.CutPrefix(strings.TrimSpace((*cells)[last]), "telling ")
	if !ok {
		return 0, nil
	}
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > StoryTellings {
		return 0, words.Errorf("no telling %q; there are %d, from telling 1", number, StoryTellings)
	}
	*cells = (*cells)[:last]
	return n, nil
}

// listed finds a name in a list, whatever the size of its letters.
func listed(what, name string, list []string) (string, error) {
	name = strings.TrimSpace(name)
	for _, known := range list {
		if strings.EqualFold(known, name) {
			return known, nil
		}
	}
	return "", words.Errorf("no %s named %q; choose one of %s", what, name, strings.Join(list, ", "))
}

func situationNames() []string {
	var names []string
	for _, s := range Situations() {
		names = append(names, string(s))
	}
	return names
}

// Example is a story of the situation.
func (s StorySituation) Example() Task { return MustParse(s.exampleText()) }

// exampleText is a story of the situation, as it is typed.
func (s StorySituation) exampleText() string {
	names := StoryNames()[:s.People()]
	return fmt.Sprintf("story %s: %s, shells, %s", s, s.row().example, strings.Join(names, ", "))
}

// read reads the sentence of a story and checks that it is the situation's.
func (s StorySituation) read(text string) (Sentence, error) {
	if m := bothUnknown.FindStringSubmatch(text); m != nil && s == TogetherBoth {
		n, _ := strconv.Atoi(m[1])
		return evenParts(n), nil
	}
	task, err := readSentence(text)
	sentence, ok := task.(Sentence)
	if err != nil || !ok || !s.tells(sentence) {
		return sentence, words.Errorf("%q does not tell %s; write for example %s", text, s, s.row().example)
	}
	sentence.ResultFirst = false
	return sentence, nil
}

// evenParts is n as a sum of two parts as even as can be.
func evenParts(n int) Sentence {
	return Sentence{Terms: [4]int{n / 2, n - n/2}, N: 2, Blank: 2}
}

// tells says whether a sentence has the situation's signs and its unknown in place.
func (s StorySituation) tells(sentence Sentence) bool {
	row := s.row()
	switch s {
	case TwoSteps:
		return sentence.N == 3 && sentence.Blank == 3
	case ThreeAddends:
		return sentence.N == 3 && sentence.Blank == 3 && sentence.IsAddition()
	}
	return s != TogetherBoth && sentence.N == 2 && sentence.Minus[1] == row.minus && sentence.Blank == row.blank
}

// mostInStories is the largest number in a story, from the published standard.
const mostInStories = 100

// check says what can't be told: numbers past 100, a single thing, nothing to find.
func (t Story) check() error {
	s := t.Sentence
	numbers := append(s.Operands(), s.Result())
	if max(s.Size(), slices.Max(numbers)) > mostInStories {
		return words.Errorf("%s goes past %d; stories stay within %d", s, mostInStories, mostInStories)
	}
	for i, n := range numbers {
		switch {
		case t.Situation == TogetherBoth:
			if i == 2 && n < 2 {
				return words.Errorf("%d has no two parts; stories use numbers from 2", n)
			}
		case i == s.Blank && n < 1, i != s.Blank && i < s.N && n < 2, i == s.N && n < 1:
			return words.Errorf("%d is too small to tell of; stories use numbers from 2, and the answer is at least 1", n)
		}
	}
	if t.Situation.isCompare() && t.Name == t.Other {
		return words.Errorf("%s stands twice; name two different children to compare", t.Name)
	}
	return nil
}

// Measured says that the story is about a length.
func (t Story) Measured() bool { return t.thing().Kind == words.Measured }

// Money says that the story is about money.
func (t Story) Money() bool { return t.thing().Kind == words.Money }

func (t Story) thing() words.Thing { return words.ThingNamed(t.Thing) }

func (t Story) String() string {
	cells := []string{t.equation(), t.Thing, t.Name}
	if t.Other != "" {
		cells = append(cells, t.Other)
	}
	if t.Telling > 0 {
		cells = append(cells, fmt.Sprintf("telling %d", t.Telling))
	}
	return fmt.Sprintf("story %s: %s", t.Situation, strings.Join(cells, ", "))
}

// equation is the sentence as it is typed.
func (t Story) equation() string {
	if t.Situation == TogetherBoth {
		return fmt.Sprintf("%d = ? + ?", t.Sentence.Result())
	}
	return t.Sentence.String()
}

// Key is the number asked for; where both parts are, one right pair of many, "3 + 4".
func (t Story) Key() string {
	if t.Situation == TogetherBoth {
		return t.Sentence.left(-1)
	}
	return t.Sentence.Key()
}

// Judge accepts the number, alone, with its unit ("12 shells", "55¢") or in a sentence of the
// story's words, or a number sentence that finds it; where both parts are asked for, any two
// of at least 1 that make the whole.
func (t Story) Judge(answer string) bool {
	if t.Situation == TogetherBoth {
		parts, ok := t.parts(answer)
		return ok && len(parts) == 2 && min(parts[0], parts[1]) >= 1 && sum(parts) == t.Sentence.Result()
	}
	r, ok := t.reply(answer)
	if !ok || r.equation == nil {
		return ok && r.number == t.Sentence.answer()
	}
	s := t.Sentence
	return r.equation.says(s.signed(), s.Result()) || r.equation.finds(s.answer(), append(slices.Clone(s.Operands()), s.Result()))
}

// Possible takes numbers with the units and words of the story, and number sentences.
func (t Story) Possible(answer string) bool {
	if t.Situation == TogetherBoth {
		_, ok := t.parts(answer)
		return ok
	}
	_, ok := t.reply(answer)
	return ok
}

func (t Story) reply(answer string) (reply, bool) {
	known := t.vocabulary()
	if t.Money() {
		return readCents(answer, known)
	}
	return readReply(answer, known)
}

// vocabulary is the words of the story; lengths may have their unit written out.
func (t Story) vocabulary() func(string) bool {
	more := "he she they his her cm centimeter centimeters centimetre centimetres centímetro centímetros"
	if !t.Measured() {
		more = "he she they his her"
	}
	return vocabulary(t.Prompt, more, t.Unit("en"), t.Unit("es"))
}

// parts are the numbers of an answer that gives parts, without the whole.
func (t Story) parts(answer string) ([]int, bool) {
	known := t.vocabulary()
	tokens := words.Cut(trimmed(words.ListTokens(answer)), func(w words.Token) bool {
		return w.Kind == words.Word && w.Text != "and" && w.Text != "y" && (known(w.Text) || aroundNumbers[w.Text])
	})
	if e, ok := readEquation(tokens, noWords); ok {
		for _, row := range [][2][]int{{e.left, e.right}, {e.right, e.left}} {
			if len(row[0]) == 1 && row[0][0] == t.Sentence.Result() {
				return row[1], true
			}
		}
	}
	numbers, ok := listOf(tokens, "+,;&")
	return numbers, ok && len(numbers) <= 2
}

// Traits of a story are those of its sentence, and the situation.
func (t Story) Traits() Traits {
	ts := t.Sentence.Traits()
	if t.Situation == TogetherBoth {
		ts = Pairs{t.Sentence.Result()}.Traits()
	}
	ts[Situation] = string(t.Situation)
	return ts
}

// Codes of a story follow from its situation, its numbers and what it is about, by the
// published table of situations: within 10, 20 and 100 in kindergarten, grade 1
// and grade 2.
func (t Story) Codes() []Code {
	size, mastered, thing := t.Sentence.Size(), t.Situation.Mastered(), t.thing()
	var codes []Code
	if mastered == 0 && size <= 10 {
		codes = append(codes, "K.OA.A.2")
	}
	if t.Situation == TogetherBoth && size <= 10 {
		codes = append(codes, "K.OA.A.3")
	}
	three := t.Sentence.N == 3
	if !three && size <= 20 { // "with unknowns in all positions"
		codes = append(codes, "1.OA.A.1")
	}
	if three && t.Sentence.IsAddition() && size <= 20 {
		codes = append(codes, "1.OA.A.2")
	}
	codes = append(codes, "2.OA.A.1")
	switch {
	case thing.Kind == words.Measured:
		return append(codes, "2.MD.B.5")
	case thing.Kind == words.Money:
		return append(codes, "2.MD.C.8")
	}
	return codes
}

// Clashes of a story: the fact family of its sentence.
func (t Story) Clashes() []string {
	if t.Situation == TogetherBoth {
		return Pairs{t.Sentence.Result()}.Clashes()
	}
	return t.Sentence.Clashes()
}

// Fingerprint of a story leaves the children's names and the telling out.
func (t Story) Fingerprint() string {
	return fmt.Sprintf("story %s: %s, %s", t.Situation, t.equation(), t.Thing)
}

// Looks of a story.
func (t Story) Looks() []Look {
	if t.Situation == TogetherBoth {
		return []Look{LookStory}
	}
	return withChoice(t, LookStory)
}

// Short is the sentence and what it counts.
func (t Story) Short(lang string) string {
	word := "Story"
	if lang == "es" {
		word = "Problema"
	}
	return fmt.Sprintf("%s: %s, %s", word, t.equation(), t.Unit(lang))
}

// ReadIn is the story as it is told.
func (t Story) ReadIn(lang string) string { return t.Prompt(lang) }
