package task

import (
	"fmt"
	"regexp"
	"strconv"
)

// LineMark asks to mark a number on a number line from 0: "mark 70 on line 0 to 100 by 10". The number where a child's
// mark stands is its answer.
type LineMark struct{ Line MarkedLine }

// LookLineMark is a number line to mark.
const LookLineMark Look = "line-to-mark"

var _ = ownLook(LookLineMark, "number line to mark", 0)

var lineMarkPattern = regexp.MustCompile(`^mark ([0-9]{1,4}) on (?:a |the )?(?:number )?line (.+)$`)

func readLineMark(text string) (Task, error) {
	m := lineMarkPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	line, err := readMarkedLine("marked line " + m[2] + ": " + m[1])
	if err != nil {
		return nil, err
	}
	return LineMark{line.(MarkedLine)}, nil
}

func (t LineMark) String() string {
	return fmt.Sprintf("mark %d on line 0 to %d by %d", t.Line.Number, t.Line.To, t.Line.Step)
}

// Key is the number.
func (t LineMark) Key() string { return t.Line.Key() }

// Judge accepts the number at the child's mark.
func (t LineMark) Judge(answer string) bool { return t.Line.Judge(answer) }

// Possible takes a number.
func (t LineMark) Possible(answer string) bool { return t.Line.Possible(answer) }

// Prompt says which number to mark.
func (t LineMark) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Marca el %d en la recta con una flecha.", t.Line.Number)
	}
	return fmt.Sprintf("Draw an arrow to %d on the line.", t.Line.Number)
}

// Short tells the line.
func (t LineMark) Short(lang string) string {
	return shown(t, lang, fmt.Sprintf("0, %d, ... %d", t.Line.Step, t.Line.To))
}

// Traits of marking a line are those of reading it.
func (t LineMark) Traits() Traits {
	ts := t.Line.Traits()
	ts[Asks] = "a mark"
	return ts
}

// Codes of marking a line: whole numbers as lengths from 0, grade 2.
func (t LineMark) Codes() []Code { return t.Line.Codes() }

// Missteps of marking a line: the marks of a child who starts or goes on wrongly.
func (t LineMark) Missteps() []Misstep {
	return gather(t, []slip{{startCounted, strconv.Itoa(t.Line.Number - t.Line.Step)}, {tickMissed, strconv.Itoa(t.Line.Number + t.Line.Step)}})
}

// Clashes of marking a line: the number.
func (t LineMark) Clashes() []string { return t.Line.Clashes() }

// Fingerprint of marking a line is its text.
func (t LineMark) Fingerprint() string { return t.String() }

// Looks of marking a line.
func (t LineMark) Looks() []Look { return []Look{LookLineMark} }

// Answers to it are drawings.
func (t LineMark) Answers() Answers { return Drawn }
