package intake

import "fmt"

// Report says what became of a list.
type Report struct {
	List     *List
	DryRun   bool      // nothing was changed: Added is what would be added
	Outcomes []Outcome // one for each row, in the order of the list
	Notes    []Note    // on rows that came in or were here
}

// Outcome is what became of one row.
type Outcome struct {
	First, Last int // its lines in the list
	Fate        Fate
	ID          string // of the item added or already here; empty in a dry run for a new one
	Problem     *Problem
	Repeats     int  // the earlier line of the list that asks the same, where it is known to; else 0
	ByHand      bool // the item's mathematics isn't understood: traits by hand
	Whole       bool // set aside as a true number sentence that leaves nothing out; ImportOptions.LeaveOut reads it

	proposed bool    // its skill, from its numbers
	row      *record // in the list
}

// Fate is one of the ends of a row.
type Fate string

// The fates.
const (
	Added    Fate = "added"
	Here     Fate = "already here"
	SetAside Fate = "set aside"
	Revised  Fate = "revised" // a row of the bank's own export that was edited
	Differs  Fate = "differs" // the same, but nobody asked for its revision
)

// Cell is what a row says under a meaning, such as its question; empty where it says nothing.
func (r *Report) Cell(out Outcome, m Meaning) string { return out.row.cell(r.List.column(m)) }

// Count is how many rows had the fate.
func (r *Report) Count(f Fate) int {
	n := 0
	for _, out := range r.Outcomes {
		if out.Fate == f {
			n++
		}
	}
	return n
}

// ByHand is how many of the rows added are items by hand.
func (r *Report) ByHand() int {
	n := 0
	for _, out := range r.Outcomes {
		if out.Fate == Added && out.ByHand {
			n++
		}
	}
	return n
}

// Proposed is how many of the rows added have a skill proposed from their numbers.
func (r *Report) Proposed() int {
	n := 0
	for _, out := range r.Outcomes {
		n += int(truth(out.Fate == Added && out.proposed))
	}
	return n
}

// Whole is how many rows were set aside as true number sentences that leave nothing out.
func (r *Report) Whole() int {
	n := 0
	for _, out := range r.Outcomes {
		n += int(truth(out.Whole))
	}
	return n
}

// Problems lists why rows were set aside, in the order of the list.
func (r *Report) Problems() []Problem {
	var problems []Problem
	for _, out := range r.Outcomes {
		if out.Problem != nil {
			problems = append(problems, *out.Problem)
		}
	}
	return problems
}

// Summary is the report in a line: "28 rows: 24 added, 1 already here, 3 set aside".
func (r *Report) Summary() string {
	rows, added := "rows", "added"
	if len(r.Outcomes) == 1 {
		rows = "row"
	}
	if r.DryRun {
		added = "to be added"
	}
	text := fmt.Sprintf("%d %s: %d %s, %d already here, %d set aside",
		len(r.Outcomes), rows, r.Count(Added), added, r.Count(Here), r.Count(SetAside))
	if n := r.Count(Revised); n > 0 {
		text += fmt.Sprintf(", %d revised", n)
	}
	if n := r.Count(Differs); n > 0 {
		text += fmt.Sprintf(", %d different from the bank", n)
	}
	return text
}
