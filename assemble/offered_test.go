package assemble_test

import (
	"slices"
	"testing"

	"evenhand/assemble"
)

// What is offered to a row is what its skill, traits and rest leave of the bank.
func TestOffered(t *testing.T) {
	b := newBank(t)
	sums := addMade(t, b, "add-two-digit", 40, 1)
	addMade(t, b, "clock-half-hour", 10, 1)
	use(t, b, "2026-W47", sums[:15]...)
	plan := mustPlan(t, `rest = 4
[[row]]
skill = "add-two-digit"
count = 2
[[row]]
skill = "add-two-digit"
count = 2
where = ["regroups = 1"]
[[row]]
skill = "clock-hour"
count = 1
`)
	regroup := 0
	for _, id := range sums[15:] {
		it, err := b.Get(id)
		if err != nil {
			t.Fatal(err)
		}
		if plan.Rows[1].Where.Holds(it.Traits) {
			regroup++
		}
	}
	got, err := assemble.Offered(b, plan, "2026-W48")
	if want := []int{25, regroup, 0}; err != nil || !slices.Equal(got, want) {
		t.Errorf("offered are %v, %v; want %v", got, err, want)
	}
	if regroup == 0 || regroup == 25 {
		t.Fatal("the bank does not tell the rows apart")
	}
}
