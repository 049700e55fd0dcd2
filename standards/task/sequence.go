package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Sequence is counting in equal steps with some numbers left out: "98, 99, ?, 101".
type Sequence struct {
	First  int
	Step   int // not zero; negative when counting back
	N      int // how many places, 3 to 12
	Blanks uint16
}

var sequencePattern = regexp.MustCompile(`^[0-9?]+( ?,? ?[0-9?]+){2,}$`)

func readSequence(text string) (Task, error) {
	text = strings.TrimRight(strings.ReplaceAll(text, ";", ","), ", .")
	if !strings.ContainsAny(text, ", ") || !sequencePattern.MatchString(text) {
		if s, ok := askedSequence(text); ok {
			return s, nil
		}
		return nil, errOther
	}
	cells := strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ' ' })
	s := Sequence{N: len(cells)}
	if s.N > 12 {
		return nil, words.Errorf("%q has %d places; a sequence here has 3 to 12", text, s.N)
	}
	given := make(map[int]int)
	for i, cell := range cells {
		n, blank, err := readNumber(cell)
		if err != nil {
			return nil, err
		}
		if blank {
			s.Blanks |= 1 << i
		} else {
			given[i] = n
		}
	}
	return s.fit(text, given)
}

// fit finds the start and step from the numbers given by place.
func (s Sequence) fit(text string, given map[int]int) (Task, error) {
	if s.Blanks == 0 {
		return nil, words.Errorf("%q has nothing to fill in; write ? for each number that is asked for", text)
	}
	if len(given) < 2 {
		return nil, words.Errorf("%q gives too few numbers to see the step; give at least two", text)
	}
	i := s.N
	for place := range given {
		i = min(i, place)
	}
	for j := i + 1; j < s.N; j++ {
		if _, ok := given[j]; !ok {
			continue
		}
		s.Step = (given[j] - given[i]) / (j - i)
		s.First = given[i] - i*s.Step
		break
	}
	for place, n := range given {
		if s.at(place) != n || s.Step == 0 {
			return nil, words.Errorf("%q does not count in equal steps", text)
		}
	}
	if last := s.at(s.N - 1); s.First < 0 || last < 0 || s.First > MaxNumber || last > MaxNumber {
		return nil, words.Errorf("%q leaves 0 to %d", text, MaxNumber)
	}
	return s, nil
}

func (s Sequence) at(place int) int { return s.First + place*s.Step }

// Blank says whether place i (from 0) is to fill in.
func (s Sequence) Blank(i int) bool { return s.Blanks>>i&1 == 1 }

// Number is the number at place i (from 0).
func (s Sequence) Number(i int) int { return s.at(i) }

func (s Sequence) String() string {
	cells := make([]string, s.N)
	for i := range cells {
		cells[i] = "?"
		if !s.Blank(i) {
			cells[i] = strconv.Itoa(s.at(i))
		}
	}
	return strings.Join(cells, ", ")
}

// missing are the numbers to fill in, each given as f of its place.
func (s Sequence) missing(f func(place int) int) string {
	var numbers []int
	for i := range s.N {
		if s.Blank(i) {
			numbers = append(numbers, f(i))
		}
	}
	return joinInts(numbers, ", ")
}

// Key is the numbers to fill in, separated by commas.
func (s Sequence) Key() string { return s.missing(s.at) }

// Judge accepts the missing numbers in order, or the whole sequence.
func (s Sequence) Judge(answer string) bool {
	if answer == s.Key() {
		return true
	}
	for _, tokens := range [][]words.Token{words.ListTokens(answer), words.Tokens(answer)} { // 999,1000 and 1,000
		if numbers, ok := s.reply(tokens); ok && (slices.Equal(numbers, s.asked()) || slices.Equal(numbers, s.all())) {
			return true
		}
	}
	return false
}

// Possible takes numbers with commas, "and" or spaces between, at most as many as the sequence has.
func (s Sequence) Possible(answer string) bool { _, ok := s.reply(words.ListTokens(answer)); return ok }

// reply is the numbers of an answer.
func (s Sequence) reply(tokens []words.Token) ([]int, bool) {
	tokens = words.Cut(tokens, func(t words.Token) bool {
		return t.Kind == words.Word && t.Text != "and" && t.Text != "y" && aroundNumbers[t.Text]
	})
	numbers, ok := listOf(tokens, ",;")
	return numbers, ok && len(numbers) <= s.N
}

// asked is the numbers to fill in, and all every number.
func (s Sequence) asked() (numbers []int) {
	for i, n := range s.all() {
		if s.Blank(i) {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

func (s Sequence) all() []int {
	numbers := make([]int, s.N)
	for i := range numbers {
		numbers[i] = s.at(i)
	}
	return numbers
}

// Prompt asks to go on counting.
func (s Sequence) Prompt(lang string) string {
	if lang == "es" {
		return "Escribe los números que faltan: " + s.String()
	}
	return "Write the missing numbers: " + s.String()
}

// Traits of a sequence.
func (s Sequence) Traits() Traits {
	var ts Traits
	low, high := min(s.First, s.at(s.N-1)), max(s.First, s.at(s.N-1))
	ts.setFlag(Crosses100, low < 100 && high > 100)
	ts.setFlag(Reaches100, slices.Contains(s.all(), 100))
	ts.setNumber(Digits, digitCount(high))
	ts.setNumber(Largest, high)
	ts.setNumber(Step, max(s.Step, -s.Step))
	ts[Asks] = "up"
	if s.Step < 0 {
		ts[Asks] = "down"
	}
	return ts
}

// Codes: counting on by ones to 120 in the first years, by ones and tens from the start and up to 100;
// by 1, 5, 10, 100 within 1000 in grade 2; by twos with odd and even. No standard up to
// grade 2 asks to count back.
func (s Sequence) Codes() []Code {
	high := s.at(s.N - 1)
	switch {
	case s.Step < 0 || high > 1000:
		return nil
	case s.Step == 1 && (s.First <= 1 && high <= 100 || high == 100):
		return []Code{"K.CC.A.1", "K.CC.A.2", "1.NBT.A.1"}
	case s.Step == 1 && high <= 100:
		return []Code{"K.CC.A.2", "1.NBT.A.1"}
	case s.Step == 1 && high <= 120:
		return []Code{"1.NBT.A.1"}
	case s.Step == 10 && s.First%10 == 0 && high <= 100:
		return []Code{"K.CC.A.1", "2.NBT.A.2"}
	case s.Step == 1 || s.Step == 5 || s.Step == 10 || s.Step == 100:
		return []Code{"2.NBT.A.2"}
	case s.Step == 2 && high <= 20:
		return []Code{"2.OA.C.3"}
	}
	return nil
}

// The missteps in counting.
var (
	countedOnes = newMisstep("counted by ones",
		"goes on by ones although the step is larger",
		"sigue de uno en uno aunque el paso es mayor",
		"say the step first, then count aloud",
		"decir primero el paso y luego contar en voz alta", "common practice")
	countedBack = newMisstep("counted the other way",
		"counts up where the row goes down, or down where it goes up",
		"cuenta hacia adelante cuando la serie baja, o hacia atrás cuando sube",
		"look at two neighbors: is it getting more or less",
		"mirar dos números vecinos: ¿va subiendo o bajando?", "common practice")
	oneTooFar = newMisstep("one step too far",
		"skips a number",
		"se salta un número",
		"point to each place while counting",
		"señalar cada lugar al contar", "common practice")
	writtenHeard = newMisstep("written as heard",
		"writes the hundred and then the rest, as in 1001 for 101",
		"escribe la centena y luego el resto, como 1001 en lugar de 101",
		"lay the parts on top of each other: 101 is 100 under 1",
		"poner una parte sobre la otra: 101 es 100 debajo de 1", writingSource)
)

// Missteps of a sequence, all blanks filled in the same wrong way.
func (s Sequence) Missteps() []Misstep {
	before := func(step int) func(int) int { // counts on from the last number given
		return func(i int) int {
			j := i
			for j >= 0 && s.Blank(j) {
				j--
			}
			if j < 0 {
				return s.at(i)
			}
			return s.at(j) + (i-j)*step
		}
	}
	unit := s.Step / max(s.Step, -s.Step)
	return gather(s, []slip{
		{countedOnes, s.missing(before(unit))},
		{countedBack, natural(s.missing(before(-s.Step)))},
		{oneTooFar, natural(s.missing(func(i int) int { return s.at(i) + s.Step }))},
		{writtenHeard, s.missing(func(i int) int { return asHeard(s.at(i)) })},
	})
}

// natural drops answers with a number below zero.
func natural(answer string) string {
	if strings.Contains(answer, "-") {
		return ""
	}
	return answer
}

// asHeard writes a number past one hundred as it is said: 100 and then the rest.
func asHeard(n int) int {
	if n < 100 || n > 999 || n%100 == 0 {
		return n
	}
	heard, _ := strconv.Atoi(strconv.Itoa(n/100*100) + strconv.Itoa(n%100))
	return heard
}

// Clashes of a sequence: sequences with one step that ask for one of the same numbers.
func (s Sequence) Clashes() []string { return []string{fmt.Sprintf("steps:%d:%s", s.Step, s.Key())} }

// Fingerprint of a sequence is its text.
func (s Sequence) Fingerprint() string { return s.String() }

// Looks of a sequence.
func (s Sequence) Looks() []Look { return []Look{LookSequence} }

// Short is the question alone.
func (s Sequence) Short(lang string) string { return alone(s, lang) }

// Fills are the numbers to fill in.
func (s Sequence) Fills() []string { return strings.Split(s.Key(), ", ") }

// Written is the text itself.
func (s Sequence) Written() string { return s.String() }
