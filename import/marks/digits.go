package marks

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/bank/results"
)

// usage is how a grid uses 1 and 0.
type usage struct {
	marks     bool     // one stands where it can hardly be an answer
	written   bool     // a right answer is written out
	uncertain []string // places, such as A3, where one could be either
}

// look adds one cell.
func (u *usage) look(form string, number int, item results.Item, cell string) {
	_, sign := Sign(cell)
	_, box := tickedBox(item, cell)
	switch place := fmt.Sprintf("%s%d", form, number); {
	case sign || box:
	case isDigit(cell) && !oneDigit(item):
		u.marks = true
	case isDigit(cell) && !slices.Contains(u.uncertain, place):
		u.uncertain = append(u.uncertain, place)
	case !isDigit(cell):
		answer, problem := Written(item, cell)
		u.written = u.written || problem == "" && answer.State == results.Right
	}
}

// digits decides what 1 and 0 mean.
func (u usage) digits() Digits {
	if u.written && !u.marks {
		return AreAnswers
	}
	return AreMarks
}

// note says where the decision may be wrong; empty when it can't be.
func (u usage) note(d Digits) string {
	if len(u.uncertain) == 0 || !u.written {
		return ""
	}
	read := map[Digits]string{AreMarks: "right and wrong", AreAnswers: "what the children wrote"}[d]
	other := map[Digits]Digits{AreMarks: AreAnswers, AreAnswers: AreMarks}[d]
	slices.Sort(u.uncertain)
	return fmt.Sprintf("1 and 0 were read as %s, also at %s, where they could be either; if that is wrong, say --digits %s",
		read, strings.Join(u.uncertain, ", "), other)
}
