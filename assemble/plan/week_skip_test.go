package plan_test

import (
	"fmt"
	"slices"
	"testing"

	"evenhand/assemble/plan"

	"pgregory.net/rapid"
)

// ISO 8601: 2026 has 53 weeks, as its 1 January is a Thursday; so two weeks of holiday after 2026-W51 end with the year.
func TestSchoolWeeks(t *testing.T) {
	from, skip := plan.Week{Year: 2026, Number: 51}, []plan.Week{{Year: 2026, Number: 52}, {Year: 2026, Number: 53}}
	if got := fmt.Sprint(plan.SchoolWeeks(from, 3, skip)); got != "[2026-W51 2027-W01 2027-W02]" {
		t.Errorf("school weeks: %s", got)
	}
	if got := fmt.Sprint(plan.SchoolWeeks(skip[0], 1, skip)); got != "[2027-W01]" {
		t.Errorf("from a holiday: %s", got)
	}
	if n := from.Until(plan.Week{Year: 2027, Number: 1}); n != 3 {
		t.Errorf("%d weeks, want 3", n)
	}
}

// The nth week of school after a first one is n weeks of school away from it, whatever the holidays.
func TestSchoolWeeksAreCountedAsListed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := plan.Week{Year: 2026, Number: rapid.IntRange(1, 53).Draw(t, "from")}
		var skip []plan.Week
		for _, n := range rapid.SliceOfDistinct(rapid.IntRange(1, 60), rapid.ID[int]).Draw(t, "skip") {
			skip = append(skip, from.Add(n))
		}
		weeks := plan.SchoolWeeks(from, rapid.IntRange(1, 40).Draw(t, "n"), skip)
		for n, week := range weeks {
			if got := plan.SchoolWeeksUntil(from, week, skip); got != n || slices.Contains(skip, week) {
				t.Fatalf("%s is %d weeks of school after %s, want %d (no school in %v)", week, got, from, n, skip)
			}
		}
	})
}
