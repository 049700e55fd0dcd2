package assemble_test

import (
	"slices"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"

	"pgregory.net/rapid"
)

// bestByTrying tries every way to fill the rows of a one-form plan and gives the
// smallest objective of those that keep all rules, or −1.
func bestByTrying(t *testing.T, b *bank.Bank, asked plan.Plan, o assemble.Options) int {
	var stock []assemble.Placed
	for item, err := range b.Find(bank.Query{Standings: []bank.Standing{bank.Ready}}) {
		if err != nil {
			t.Fatal(err)
		}
		uses, err := b.Uses(item.ID)
		if err != nil {
			t.Fatal(err)
		}
		if brokenItem(b, asked, o, item) == nil {
			stock = append(stock, assemble.Placed{Item: item, Uses: len(uses)})
		}
	}
	var slots []plan.Row
	for _, row := range asked.Rows {
		for range row.Count {
			slots = append(slots, row)
		}
	}
	best := -1
	var place func(form []assemble.Placed)
	place = func(form []assemble.Placed) {
		if len(form) == len(slots) {
			q := assemble.Quiz{Forms: []assemble.Form{{Name: "A", Items: form}}}
			figures(asked, o, &q)
			q.Bound, q.Proved = q.Objective, true
			if (best < 0 || q.Objective < best) && broken(b, asked, o, q) == nil {
				best = q.Objective
			}
			return
		}
		row := slots[len(form)]
		for _, p := range stock {
			twice := slices.ContainsFunc(form, func(other assemble.Placed) bool { return other.Item.ID == p.Item.ID })
			if p.Item.Skill != row.Skill || !row.Where.Holds(p.Item.Traits) || twice {
				continue
			}
			if len(row.Looks) > 0 {
				p.Item.Look = row.Looks[0]
				p.Item.Seconds = standards.Seconds(p.Item.Skill, p.Item.Look)
			}
			p.Number = len(form) + 1
			place(append(slices.Clone(form), p))
		}
	}
	place(nil)
	return best
}

// On small banks every choice can be tried. Assemble must find the best of them,
// or say that there is none.
func TestAgainstTryingEverything(t *testing.T) {
	possible := 0
	rapid.Check(t, func(r *rapid.T) {
		b, plan := drawBank(t, r), drawPlan(r)
		plan.Forms, plan.Shared = 1, 0
		for plan.Size() > 3 {
			plan.Rows = plan.Rows[1:]
		}
		o := assemble.Options{Seed: rapid.Uint64().Draw(r, "seed"), Week: "2026-W48", Limit: lawLimit}
		got, proved := objective(t, b, plan, o)
		if want := bestByTrying(t, b, plan, o); proved && got != want {
			r.Fatalf("objective %d, the best of all choices has %d", got, want)
		}
		if got >= 0 {
			possible++
		}
	})
	if possible == 0 {
		t.Error("no plan was possible")
	}
	t.Logf("%d plans were possible", possible)
}
