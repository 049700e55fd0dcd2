package assemble

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/assemble/search"
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

	// The figures of the model (see Assemble). Objective is 1000 · (Σ Off +
	// forms · Σ Uneven) + UsesSum; no quiz from this bank under this plan has less
	// than Bound.
	Ability   int           // of the typical pupil, in thousandths of a logit
	Off       []int         // by how many hundredths of a point each form misses the mark, beyond the tolerance
	Uneven    search.Points // by how many the forms lie apart for a weaker, a typical and a stronger pupil, beyond the tolerance
	Objective int
	UsesSum   int // earlier uses of the chosen items, each item once
	Bound     int
	Proved    bool // Bound == Objective: there is no better quiz

	Swaps   []Swap   // what was exchanged, when an earlier quiz was given
	Changes []string // what that changed in the balance of the forms
}

// OnTheMark says that every form meets the mark and that they are even.
func (q Quiz) OnTheMark() bool { return q.Objective-q.UsesSum == 0 }

// Better is what a better quiz could be better in.
type Better string

// What a better quiz could be better in, and in what its number is told.
const (
	BetterNone   Better = ""       // there is none
	BetterUses   Better = "uses"   // earlier uses that other items could spare
	BetterCloser Better = "closer" // hundredths of a point by which forms could be closer
	BetterNearer Better = "nearer" // hundredths of a point, over all forms, by which they could be nearer the mark
)

// Better says in what and by how much a better quiz could be better at most.
func (q Quiz) Better() (in Better, by int) {
	if q.Proved {
		return BetterNone, 0
	}
	hundredths := (q.Objective - q.Bound + 999) / 1000
	if uses := q.Objective - q.Bound; q.Objective/1000 == q.Bound/1000 {
		return BetterUses, uses
	}
	if apart := slices.Max(q.Uneven[:]); apart > 0 {
		return BetterCloser, min(apart, (hundredths+len(q.Forms)-1)/len(q.Forms))
	}
	return BetterNearer, hundredths
}

// Verdict says how good the quiz is: "best possible" where that is proved, else
// by how much a better one could be better at most. Where time ran out what was found until
// then depends on the machine, so it is said.
func (q Quiz) Verdict() string {
	switch in, by := q.Better(); in {
	case BetterNone:
		return "best possible"
	case BetterUses:
		return fmt.Sprintf("as even and as near the mark as can be; other items could spare at most %s%s", number(by, "earlier use"), ranOut)
	case BetterCloser:
		return fmt.Sprintf("forms could be closer by at most %s%s", inPoints(by), ranOut)
	default:
		return fmt.Sprintf("forms could be nearer the mark by at most %s in all%s", inPoints(by), ranOut)
	}
}

// Misses says what can be expected of forms that miss the mark; it is empty where all meet it.
func (q Quiz) Misses() string {
	var parts []string
	for f, off := range q.Off {
		form := q.Forms[f]
		whole := 10 * len(form.Items) // a hundredth of all its points, in thousandths
		if off > 0 {
			parts = append(parts, fmt.Sprintf("about %d of form %s", (form.Scores[1]+whole/2)/whole, form.Name))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return fmt.Sprintf("off the mark: %d in 100 answers are asked to be right; %s can be expected",
		q.ShareRight, strings.Join(parts, ", "))
}

// ranOut says why nothing better was found, and what follows from it.
const ranOut = "; time ran out, so the same seed may give other items another time"

// inPoints is a number of hundredths of a point as one says it, rounded up to
// tenths where there are any.
func inPoints(hundredths int) string {
	if hundredths < 10 {
		return fmt.Sprintf("0.%02d of a point", hundredths)
	}
	tenths := (hundredths + 9) / 10
	if tenths <= 10 {
		return fmt.Sprintf("%d.%d of a point", tenths/10, tenths%10)
	}
	return fmt.Sprintf("%d.%d points", tenths/10, tenths%10)
}

// Form is one sheet of a quiz.
type Form struct {
	Name   string        // "A", "B", ...
	Scores search.Points // what a weaker, a typical and a stronger pupil can expect, in thousandths of a point
	Items  []Placed
}

// Placed is an item in its place on a form.
type Placed struct {
	Number int       // from 1, in the order of the sheet
	Item   bank.Item // its Look and Seconds are those of the sheet
	Row    string    // the name of the plan's row that it fills
	Uses   int       // how often it was used before
	Shared bool      // it stands in every form

	Choices []string // the answers printed to choose from, in order; nil where the printing decides

	Basis bank.Basis // what its difficulty rests on; empty where nothing predicts it or nobody noted it
}

// Swap is one exchange of an item for another on a form.
type Swap struct {
	Form    string
	Number  int
	Out, In string // IDs
}

// Moved is the quiz with two places, counted from 0, exchanged in every form; how good it is does not
// depend on their order.
func (q Quiz) Moved(a, b int) Quiz {
	q.Forms = slices.Clone(q.Forms)
	for i := range q.Forms {
		items := slices.Clone(q.Forms[i].Items)
		items[a], items[b] = items[b], items[a]
		items[a].Number, items[b].Number = a+1, b+1
		q.Forms[i].Items = items
	}
	return q
}
