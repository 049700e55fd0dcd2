package assemble_test

import (
	"context"
	"fmt"
	"testing"

	"evenhand/assemble"
	"evenhand/bank"
	"evenhand/standards"
)

func TestSwapKeepsTheRest(t *testing.T) {
	b := newBank(t)
	for _, skill := range []standards.SkillID{"add-two-digit", "subtract-regrouping", "tens-and-ones", "clock-half-hour"} {
		addMade(t, b, skill, 60, 7)
	}
	plan := mustPlan(t, assemble.ExamplePlan())
	o := assemble.Options{Seed: 1, Week: "2026-W48"}
	first := mustAssemble(t, b, plan, o)
	var ids []string
	for _, s := range spots(first) {
		ids = append(ids, s.ID)
	}
	use(t, b, "2026-W48", ids...) // the quiz was given out
	o.Earlier = assemble.Earlier{Spots: spots(first), Replace: []string{"A3", "B7"}}
	second := mustAssemble(t, b, plan, o)
	var swapped []string
	for f, form := range second.Forms {
		for i, placed := range form.Items {
			if was := first.Forms[f].Items[i].Item; was.ID != placed.Item.ID {
				swapped = append(swapped, fmt.Sprint(form.Name, placed.Number))
				if was.Skill != placed.Item.Skill {
					t.Errorf("%s: %s takes the place of %s", swapped, placed.Item.Task, was.Task)
				}
			}
		}
	}
	if fmt.Sprint(swapped) != "[A3 B7]" || len(second.Swaps) != 2 || second.Swaps[0].Out != first.Forms[0].Items[2].Item.ID {
		t.Errorf("swapped %v, noted %v", swapped, second.Swaps)
	}
}

func TestSwapRefusals(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "clock-hour", 12, 3)
	plan := mustPlan(t, "[[row]]\nskill = 'clock-hour'\ncount = 3\n")
	q := mustAssemble(t, b, plan, assemble.Options{})
	for want, e := range map[string]assemble.Earlier{
		"name the items to replace or those to keep, not both":                                    {Spots: spots(q), Keep: []string{"A1"}, Replace: []string{"A2"}},
		"to keep or replace items, say from which quiz":                                           {Keep: []string{"A1"}},
		`the earlier quiz has no item "A9"; its items are A1 to A3`:                               {Spots: spots(q), Keep: []string{"A9"}},
		"the earlier quiz has 1 forms, form A with 2 items; the plan asks for 1 forms of 3 items": {Spots: spots(q)[:2]},
	} {
		_, err := assemble.Assemble(context.Background(), b, plan, assemble.Options{Earlier: e})
		if err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
}

func spots(q assemble.Quiz) []assemble.Spot {
	var list []assemble.Spot
	for _, form := range q.Forms {
		for _, placed := range form.Items {
			list = append(list, assemble.Spot{Form: form.Name, Number: placed.Number, ID: placed.Item.ID, Look: placed.Item.Look})
		}
	}
	return list
}

func mustAssemble(t *testing.T, b *bank.Bank, plan assemble.Plan, o assemble.Options) assemble.Quiz {
	t.Helper()
	q, err := assemble.Assemble(context.Background(), b, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	return q
}
