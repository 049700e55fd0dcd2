package intake

import (
	"fmt"

	"evenhand/standards/words"
)

// Problem is why a row was set aside.
type Problem struct {
	Line   int         // of the list, counted from 1
	Column string      // what the cell holds, such as answer; empty when it is the whole row
	Reason *words.Told // in plain words, with what would be right
}

// String is the problem as people read it: `line 14, answer: 47 + 36 is 83, the list says 73`.
func (p Problem) String() string { return located(p.Line, p.Column, p.Reason) }

// Note is something a person may want to know of a row that came in all the same,
// such as a skill that is not the computed one.
type Note struct {
	Line   int
	Column string
	Text   *words.Told
}

// String is the note with its place, in the form of a Problem.
func (n Note) String() string { return located(n.Line, n.Column, n.Text) }

func located(line int, column string, text *words.Told) string {
	if column == "" {
		return fmt.Sprintf("line %d: %s", line, text)
	}
	return fmt.Sprintf("line %d, %s: %s", line, column, text)
}
