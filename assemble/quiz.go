package assemble

import (
	"fmt"

	"evenhand/bank"
	"evenhand/standards/task"
)

// Quiz is what Assemble gives: one or more even forms and how good they are.
type Quiz struct {
	Title string
	Week  string // ISO week, such as 2026-W48; empty when none was given
	Seed  uint64
	Forms []Form

	ShareRight int                 // the mark aimed at: how many in 100 answers should be right
	Diagnose   []*task.MisstepKind // missteps that its items should tell apart

	// The figures of the model (see Assemble). Objective is 1000·Excess +
	// UsesSum; no quiz from this bank under this plan has less than Bound.
	Objective int
	Excess    int // hundredths of a logit by which the forms miss the mark, beyond the tolerance
	UsesSum   int // earlier uses of the chosen items, each item once
	Bound     int
	Proved    bool // Bound == Objective: there is no better quiz

	Swaps   []Swap   // what was exchanged, when an earlier quiz was given
	Changes []string // what that changed in the balance of the forms
}

// Verdict says how good the quiz is: "best possible", or "within 3 of best
// possible" in units of the objective when the time ran out.
func (q Quiz) Verdict() string {
	if q.Proved {
		return "best possible"
	}
	return fmt.Sprintf("within %d of best possible", q.Objective-q.Bound)
}

// Form is one sheet of a quiz.
type Form struct {
	Name  string // "A", "B", ...
	Items []Placed
}

// Placed is an item in its place on a form.
type Placed struct {
	Number int       // from 1, in the order of the sheet
	Item   bank.Item // its Look and Seconds are those of the sheet
	Row    string    // the name of the plan's row that it fills
	Uses   int       // how often it was used before
	Shared bool      // it stands in every form
}

// Swap is one exchange of an item for another on a form.
type Swap struct {
	Form    string
	Number  int
	Out, In string // IDs
}
