package marks

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/bank/results"
)

// usage is how a grid uses 1 and 0.
type usage struct {
	written int      // right answers written out, longer than a 1 or 0
	marked  int      // 1 and 0 where they can hardly be right answers
	either  []string // places, such as A3, of a 1 or 0 that may be an answer
	unusual []string // places of the others
}

// look adds one cell.
func (u *usage) look(form string, number int, item results.Item, cell string) {
	_, sign := Sign(cell)
	_, box := tickedBox(item, cell)
	place := fmt.Sprintf("%s%d", form, number)
	switch {
	case sign || box:
	case isDigit(cell) && oneDigit(item):
		u.either = append(u.either, place)
	case isDigit(cell):
		u.marked++
		u.unusual = append(u.unusual, place)
	default:
		if answer, problem := Written(item, cell); problem == "" && answer.State == results.Right {
			u.written++
		}
	}
}

// digits decides what 1 and 0 mean.
func (u usage) digits() Digits {
	if u.written > u.marked {
		return AreAnswers
	}
	return AreMarks
}

// note says where the decision may be wrong; empty when it can't be.
func (u usage) note(d Digits) string {
	places, read, other := u.either, "right and wrong", AreAnswers
	if d == AreAnswers {
		places, read, other = append(places, u.unusual...), "what the children wrote", AreMarks
	}
	if len(places) == 0 || u.written == 0 {
		return ""
	}
	slices.Sort(places)
	return fmt.Sprintf("1 and 0 were read as %s, also at %s, where they could be either; if that is wrong, say --digits %s",
		read, strings.Join(slices.Compact(places), ", "), other)
}
