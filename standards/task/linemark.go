package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// LineMark asks to mark a number on a number line from 0, "mark 70 on line 0 to 100 by 10", or to show a sum or
// difference by a jump and mark where it ends, "show 40 + 30 on line 0 to 100 by 10". The number where a child's mark
// stands is its answer.
type LineMark struct {
	Line  MarkedLine
	Start int // where the jump begins, at a tick; 0 where no jump is asked for
}

// LookLineMark is a number line to mark.
const LookLineMark Look = "line-to-mark"

var _ = ownLook(LookLineMark, "number line to mark", 0)

var lineMarkPattern = regexp.MustCompile(`^mark ([0-9]{1,4}) on (?:a |the )?(?:number )?line (.+)$`)

var lineJumpPattern = regexp.MustCompile(`^(?:show|muestra) ([0-9]{1,4}) ?([-+]) ?([0-9]{1,4}) on (?:a |the )?(?:number )?line (.+)$`)

// readLineJump reads a sum or difference to show.
func readLineJump(text string) (Task, error) {
	m := lineJumpPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	start, _ := strconv.Atoi(m[1])
	end, _ := strconv.Atoi(m[3])
	if m[2] == "-" {
		end = -end
	}
	end += start
	line, err := readMarkedLine(fmt.Sprintf("marked line %s: %d", m[4], max(end, 0)))
	if err != nil {
		return nil, err
	}
	t := LineMark{line.(MarkedLine), start}
	if start < 1 || start > t.Line.To || start%t.Line.Step != 0 || start == end {
		return nil, words.Errorf("%q: a jump goes from one tick to another, as in show 40 + 30 on line 0 to 100 by 10", text)
	}
	return t, nil
}

func readLineMark(text string) (Task, error) {
	m := lineMarkPattern.FindStringSubmatch(text)
	if m == nil {
		return readLineJump(text)
	}
	line, err := readMarkedLine("marked line " + m[2] + ": " + m[1])
	if err != nil {
		return nil, err
	}
	return LineMark{Line: line.(MarkedLine)}, nil
}

// sum is the sum or difference to show.
func (t LineMark) sum() Sentence {
	by := t.Line.Number - t.Start
	return Sentence{Terms: [4]int{t.Start, max(by, -by)}, Minus: [4]bool{1: by < 0}, N: 2, Blank: 2}
}

func (t LineMark) String() string {
	if t.Start > 0 {
		return fmt.Sprintf("show %s on line 0 to %d by %d", t.sum().left(-1), t.Line.To, t.Line.Step)
	}
	return fmt.Sprintf("mark %d on line 0 to %d by %d", t.Line.Number, t.Line.To, t.Line.Step)
}

// Key is the number.
func (t LineMark) Key() string { return t.Line.Key() }

// Judge accepts the number at the child's mark.
func (t LineMark) Judge(answer string) bool { return t.Line.Judge(answer) }

// Possible takes a number.
func (t LineMark) Possible(answer string) bool { return t.Line.Possible(answer) }

// Prompt says which number to mark, or what to show.
func (t LineMark) Prompt(lang string) string {
	switch {
	case t.Start > 0 && lang == "es":
		return fmt.Sprintf("Muestra %s en la recta con un salto. Dibuja una flecha donde termina.", t.sum().left(-1))
	case t.Start > 0:
		return fmt.Sprintf("Show %s by a jump on the line. Draw an arrow where it ends.", t.sum().left(-1))
	case lang == "es":
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
	if t.Start > 0 {
		ts[Asks] = "a jump"
	}
	return ts
}

// Codes of marking a line: whole numbers as lengths from 0, grade 2.
func (t LineMark) Codes() []Code { return t.Line.Codes() }

var jumpedBack = newMisstep("jumped the other way",
	"jumps back for a sum, or on for a difference",
	"salta hacia atrás para sumar, o hacia adelante para restar",
	"say the sign and show with a finger which way it goes",
	"decir el signo y mostrar con el dedo hacia dónde va", "common practice")

// Missteps of marking a line: the marks of a child who starts or goes on wrongly.
func (t LineMark) Missteps() []Misstep {
	if t.Start > 0 {
		back := t.Line.Step
		if t.Line.Number < t.Start {
			back = -back
		}
		slips := []slip{{startCounted, strconv.Itoa(t.Line.Number - back)}, {tickMissed, strconv.Itoa(t.Line.Number + back)}}
		if other := 2*t.Start - t.Line.Number; other >= 0 && other <= t.Line.To {
			slips = append(slips, slip{jumpedBack, strconv.Itoa(other)})
		}
		return gather(t, slips)
	}
	return gather(t, []slip{{startCounted, strconv.Itoa(t.Line.Number - t.Line.Step)}, {tickMissed, strconv.Itoa(t.Line.Number + t.Line.Step)}})
}

// Clashes of marking a line: the number, and of a jump its fact family.
func (t LineMark) Clashes() []string {
	if t.Start > 0 {
		return append(t.Line.Clashes(), t.sum().Clashes()...)
	}
	return t.Line.Clashes()
}

// Fingerprint of marking a line is its text.
func (t LineMark) Fingerprint() string { return t.String() }

// Looks of marking a line.
func (t LineMark) Looks() []Look { return []Look{LookLineMark} }

// Answers to it are drawings.
func (t LineMark) Answers() Answers { return Drawn }
