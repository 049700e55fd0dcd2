package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// MoreLess asks for the number 10 or 100 more or less: "10 more than 47 = ?".
type MoreLess struct {
	Number int
	Step   int // 10 or 100
	Less   bool
}

var moreLessPattern = regexp.MustCompile(`^(10|ten|100|a hundred|one hundred) (more|less) than ([0-9]+) ?(?:= ?)?(?:\?|is ?\??)?$`)

func readMoreLess(text string) (Task, error) {
	m := moreLessPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := MoreLess{Step: 100, Less: m[2] == "less"}
	if m[1] == "10" || m[1] == "ten" {
		t.Step = 10
	}
	n, err := strconv.Atoi(m[3])
	if err != nil || n > 1000 || t.at(n) > 1000 || t.at(n) < 0 {
		return nil, words.Errorf("%q leaves 0 to 1000; choose a number so that the answer stays inside", text)
	}
	t.Number = n
	return t, nil
}

func (t MoreLess) at(n int) int {
	if t.Less {
		return n - t.Step
	}
	return n + t.Step
}

func (t MoreLess) answer() int { return t.at(t.Number) }

func (t MoreLess) word() string {
	if t.Less {
		return "less"
	}
	return "more"
}

func (t MoreLess) String() string {
	return fmt.Sprintf("%d %s than %d = ?", t.Step, t.word(), t.Number)
}

// Key is the number asked for.
func (t MoreLess) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, also within a sentence ("57 is 10 more than 47", "47 + 10 = 57").
func (t MoreLess) Judge(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	switch {
	case !ok:
		return t.wholeSentence(answer)
	case r.equation != nil:
		step := map[bool]int{false: t.Step, true: -t.Step}[t.Less]
		return r.equation.says([]int{t.Number, step}, t.answer())
	}
	return r.number == t.answer()
}

// Possible takes a number and number sentences, also in words.
func (t MoreLess) Possible(answer string) bool {
	_, ok := readReply(answer, vocabulary(t.Prompt))
	return ok || sentenceOfMore.MatchString(words.Unaccented(words.Plain(answer)))
}

var sentenceOfMore = regexp.MustCompile(`^([0-9]+ (?:is|es) )?([0-9]+) (more|less|fewer|mas|menos) (?:than|que) ([0-9]+)((?: is| es| =) [0-9]+)?\.?$`)

// wholeSentence reads "57 is 10 more than 47" and "10 more than 47 is 57".
func (t MoreLess) wholeSentence(answer string) bool {
	m := sentenceOfMore.FindStringSubmatch(words.Unaccented(words.Plain(answer)))
	if m == nil || (m[1] == "") == (m[5] == "") {
		return false
	}
	less := m[3] != "more" && m[3] != "mas"
	said := strings.Trim(m[1]+m[5], " =ies")
	return said == t.Key() && m[2] == strconv.Itoa(t.Step) && m[4] == strconv.Itoa(t.Number) && less == t.Less
}

// Prompt asks the question in words.
func (t MoreLess) Prompt(lang string) string {
	if lang == "es" {
		word := map[bool]string{false: "más", true: "menos"}[t.Less]
		return fmt.Sprintf("¿Qué número es %d %s que %d?", t.Step, word, t.Number)
	}
	return fmt.Sprintf("What number is %d %s than %d?", t.Step, t.word(), t.Number)
}

// Traits of more and less.
func (t MoreLess) Traits() Traits {
	var ts Traits
	n, result := t.Number, t.answer()
	crosses, reaches := t.sentence().aroundHundred()
	ts.setFlag(Crosses100, crosses)
	ts.setFlag(Reaches100, reaches)
	ts.setNumber(Digits, digitCount(n))
	ts.setNumber(Largest, max(n, result))
	ts.setNumber(Step, t.Step)
	ts[Asks] = t.word()
	if t.Less {
		ts.setNumber(Regroups, SubtractionRegroups(n, t.Step))
	} else {
		ts.setNumber(Regroups, AdditionRegroups(n, t.Step))
	}
	return ts
}

// Codes: ten more or less than a two-digit number is grade 1; with numbers from 100 to
// 900, and with hundreds, grade 2.
func (t MoreLess) Codes() []Code {
	switch {
	case t.Step == 10 && t.Number >= 10 && t.Number <= 99:
		return []Code{"1.NBT.C.5"}
	case t.Number >= 100 && t.Number <= 900:
		return []Code{"2.NBT.B.8"}
	}
	return nil
}

// The missteps in more and less.
var (
	changedOnes = newMisstep("ones changed",
		"counts one more or less and not ten",
		"cuenta uno más o uno menos, y no diez",
		"moving down one row of the hundreds chart",
		"bajar una fila en la tabla de números", "common practice")
	otherWay = newMisstep("other way",
		"goes up where less is asked, or down where more is asked",
		"sube cuando se pide menos, o baja cuando se pide más",
		"the words more and less, with things to hold",
		"las palabras «más» y «menos», con cosas en la mano", "common practice")
	wrongHundred = newMisstep("tens and hundreds mixed up",
		"changes the tens by one where hundreds are asked, or the other way round",
		"cambia en uno las decenas cuando se piden centenas, o al revés",
		"which digit changes: build both numbers",
		"qué dígito cambia: formar los dos números", "common practice")
)

// Missteps of more and less.
func (t MoreLess) Missteps() []Misstep {
	change := func(step int, less bool) string {
		if n := (MoreLess{t.Number, step, less}).answer(); n >= 0 {
			return strconv.Itoa(n)
		}
		return ""
	}
	other := map[int]int{10: 100, 100: 10}[t.Step]
	return gather(t, []slip{{changedOnes, change(1, t.Less)}, {otherWay, change(t.Step, !t.Less)}, {wrongHundred, change(other, t.Less)}})
}

// Clashes of more and less: the fact family.
func (t MoreLess) Clashes() []string {
	return t.sentence().Clashes()
}

// sentence is the question as a sum or difference: ten less than 304 is 304 - 10.
func (t MoreLess) sentence() Sentence {
	return Sentence{Terms: [4]int{t.Number, t.Step}, Minus: [4]bool{1: t.Less}, N: 2, Blank: 2}
}

// Fingerprint of more and less is its text.
func (t MoreLess) Fingerprint() string { return t.String() }

// Looks of more and less.
func (t MoreLess) Looks() []Look {
	if _, _, ok := t.Jumps(); ok {
		return withChoice(t, LookWords, LookHundredsChart)
	}
	return withChoice(t, LookWords)
}
