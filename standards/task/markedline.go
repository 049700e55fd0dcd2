package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// MarkedLine asks which number is at the mark on a number line from 0: "marked line 0 to 100 by 10: 70".
// Only 0, the first number and the last stand below the line, so that the mark is found by counting on.
type MarkedLine struct {
	To     int // the last number, to 100
	Step   int // from one tick to the next: 1, 2, 5 or 10
	Number int // at the mark, never one that stands below the line
}

// LookMarkedLine is a number line with a mark.
const LookMarkedLine Look = "marked-line"

var _ = ownLook(LookMarkedLine, "number line with a mark", 0)

// Spaces between ticks that a marked line has, as can be told apart and counted on paper (common
// practice, no source).
const (
	fewestSpaces = 4
	mostSpaces   = 20
)

var markedLinePattern = regexp.MustCompile(`^(?:marked|number) line:? ?(?:from )?([0-9]{1,4}) ?(?:to|-) ?([0-9]{1,4}),? ?` +
	`by ([0-9]{1,3})s?: ?(?:mark at )?([0-9]{1,4})$`)

func readMarkedLine(text string) (Task, error) {
	m := markedLinePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	var n [4]int
	for i := range n {
		n[i], _ = strconv.Atoi(m[i+1])
	}
	t := MarkedLine{To: n[1], Step: n[2], Number: n[3]}
	switch {
	case n[0] != 0:
		return nil, words.Errorf("%q does not begin at 0; lines of grade 2 do, as in %s", text, markedLineExample)
	case t.Step != 1 && t.Step != 2 && t.Step != 5 && t.Step != 10:
		return nil, words.Errorf("%q goes by %d; lines go by 1, 2, 5 or 10, as in %s", text, t.Step, markedLineExample)
	case t.To > 100 || t.To%t.Step != 0 || t.To < fewestSpaces*t.Step || t.To > mostSpaces*t.Step:
		return nil, words.Errorf("%q can't be a line to 100 with %d to %d spaces of %d, as in %s", text, fewestSpaces, mostSpaces, t.Step, markedLineExample)
	case t.Number%t.Step != 0 || t.Number < 2*t.Step || t.Number >= t.To:
		return nil, words.Errorf("%q has its mark at %d; it stands at a tick without a number, from %d to %d by %ds",
			text, t.Number, 2*t.Step, t.To-t.Step, t.Step)
	}
	return t, nil
}

const markedLineExample = "marked line 0 to 100 by 10: 70"

func (t MarkedLine) String() string {
	return fmt.Sprintf("marked line 0 to %d by %d: %d", t.To, t.Step, t.Number)
}

// Key is the number at the mark.
func (t MarkedLine) Key() string { return strconv.Itoa(t.Number) }

// Judge accepts the number, in digits or in words.
func (t MarkedLine) Judge(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return ok && r.equation == nil && r.number == t.Number
}

// Possible takes a number.
func (t MarkedLine) Possible(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return ok && r.equation == nil
}

// Prompt asks for the number, without saying where the mark is.
func (t MarkedLine) Prompt(lang string) string {
	if lang == "es" {
		return "¿Qué número está en la marca?"
	}
	return "What number is at the mark?"
}

// Short tells the line and the mark.
func (t MarkedLine) Short(lang string) string {
	return shown(t, lang, fmt.Sprintf("0, %d, ... %d: %d", t.Step, t.To, t.Number))
}

// Traits of a marked line: its largest number and its step.
func (t MarkedLine) Traits() Traits {
	ts := numberTraits(t.To)
	ts.setNumber(Step, t.Step)
	ts[Asks] = "at the mark"
	return ts
}

// Codes of a marked line: whole numbers as lengths from 0, grade 2.
func (t MarkedLine) Codes() []Code { return []Code{"2.MD.B.6"} }

// The missteps on a line of ticks.
var (
	ticksCounted = newMisstep("ticks counted as ones",
		"counts each tick as one, whatever the numbers say",
		"cuenta cada raya como uno, sin mirar los números",
		"say the first two numbers below the line, then go on by the same step",
		"decir los dos primeros números de la recta y seguir con el mismo paso", "common practice")
	startCounted = newMisstep("start counted",
		"counts the tick at 0 as the first step",
		"cuenta la raya del 0 como el primer paso",
		"jump with a finger: the first step ends at the first tick after 0",
		"saltar con el dedo: el primer paso termina en la primera marca después del 0", "common practice")
	tickMissed = newMisstep("one tick missed",
		"leaves out a tick while counting on",
		"salta una raya al contar",
		"touch each tick as its number is said",
		"tocar cada marca al decir su número", "common practice")
)

// Missteps of a marked line.
func (t MarkedLine) Missteps() []Misstep {
	return gather(t, []slip{
		{ticksCounted, strconv.Itoa(t.Number / t.Step)},
		{startCounted, strconv.Itoa(t.Number + t.Step)},
		{tickMissed, strconv.Itoa(t.Number - t.Step)},
	})
}

// Clashes of a marked line: the number at the mark.
func (t MarkedLine) Clashes() []string { return []string{"mark:" + strconv.Itoa(t.Number)} }

// Fingerprint of a marked line is its text.
func (t MarkedLine) Fingerprint() string { return t.String() }

// Looks of a marked line.
func (t MarkedLine) Looks() []Look { return []Look{LookMarkedLine} }
