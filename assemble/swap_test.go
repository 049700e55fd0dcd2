package assemble_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

func TestSwapKeepsTheRest(t *testing.T) {
	b := fridayBank(t)
	plan := mustPlan(t, plan.Example())
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

// Every item of the bank is tried in the place of the one that is given up; none
// that keeps the rules gives a smaller objective than the one chosen.
func TestSwapIsBest(t *testing.T) {
	b := newBank(t)
	for i, difficulty := range []standards.Difficulty{-2400, -1800, -1300, -900, -600, -100, 300, -1100, -1250, -700} {
		item := bank.NewItem(task.MustParse(fmt.Sprintf("read %d:00", i+1)), "", bank.Origin{})
		item.Measured = &bank.Measured{Difficulty: difficulty, StandardError: 100, Answers: 90}
		id := addItems(t, b, item)
		for range i % 3 {
			use(t, b, "2026-W30", id...)
		}
	}
	plan := mustPlan(t, "share_right = 70\n[[row]]\nskill = 'clock-hour'\ncount = 4\n")
	first := mustAssemble(t, b, plan, assemble.Options{Seed: 4})
	o := assemble.Options{Seed: 4, Earlier: assemble.Earlier{Spots: spots(first), Replace: []string{"A2"}}}
	second := mustAssemble(t, b, plan, o)
	given := first.Forms[0].Items[1].Item.ID
	best := -1
	for item, err := range b.Find(bank.Query{}) {
		if err != nil {
			t.Fatal(err)
		}
		uses, err := b.Uses(item.ID)
		if err != nil {
			t.Fatal(err)
		}
		trial := first
		placed := slices.Clone(first.Forms[0].Items)
		placed[1] = assemble.Placed{Number: 2, Item: item, Uses: len(uses)}
		trial.Forms = []assemble.Form{{Name: "A", Items: placed}}
		figures(plan, o, &trial)
		trial.Bound, trial.Proved = trial.Objective, true
		if item.ID != given && broken(b, plan, o, trial) == nil && (best < 0 || trial.Objective < best) {
			best = trial.Objective
		}
	}
	if best < 0 || second.Objective != best {
		t.Errorf("the swap gives objective %d, the best of all is %d", second.Objective, best)
	}
	if len(second.Changes) == 0 || second.Forms[0].Items[1].Item.ID == given {
		t.Errorf("changes %v", second.Changes)
	}
}

func TestKeepOnlySome(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "clock-half-hour", 20, 3)
	addMade(t, b, "add-two-digit", 30, 3)
	plan := mustPlan(t, "forms = 2\nshared = 1\n[[row]]\nskill = 'clock-half-hour'\ncount = 2\n[[row]]\nskill = 'add-two-digit'\ncount = 2\n")
	first := mustAssemble(t, b, plan, assemble.Options{Seed: 1})
	o := assemble.Options{Seed: 2, Earlier: assemble.Earlier{Spots: spots(first), Keep: []string{"A4", "B1"}}}
	second := mustAssemble(t, b, plan, o)
	if err := broken(b, plan, o, second); err != nil {
		t.Error(err)
	}
	for _, at := range []struct{ form, item int }{{0, 3}, {1, 0}} {
		if was, now := first.Forms[at.form].Items[at.item], second.Forms[at.form].Items[at.item]; was.Item.ID != now.Item.ID || was.Number != now.Number {
			t.Errorf("%s is now %s", was.Item.Task, now.Item.Task)
		}
	}
}

// A shared item that is given up on one form is exchanged on all.
func TestSwapSharedItem(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 30, 3)
	text := "forms = 2\nshared = 2\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n"
	plan := mustPlan(t, text)
	first := mustAssemble(t, b, plan, assemble.Options{Seed: 1})
	at := slices.IndexFunc(first.Forms[0].Items, func(p assemble.Placed) bool { return p.Shared })
	o := assemble.Options{Earlier: assemble.Earlier{Spots: spots(first), Replace: []string{fmt.Sprint("A", at+1)}}}
	second := mustAssemble(t, b, plan, o)
	if err := broken(b, plan, o, second); err != nil {
		t.Error(err)
	}
	if len(second.Swaps) != 2 || second.Swaps[0].Out != second.Swaps[1].Out || second.Swaps[0].In != second.Swaps[1].In {
		t.Errorf("swaps %v", second.Swaps)
	}
	_, err := assemble.Assemble(context.Background(), b, mustPlan(t, strings.Replace(text, "shared = 2", "shared = 0", 1)), o)
	if want := "the earlier quiz has 2 items in all of its forms, the plan asks for 0; set shared = 2"; err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

// More forms than the quiz had come behind its own, fewer are its first ones; the rules hold for all.
func TestFormsBesideAnEarlierQuiz(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 40, 3)
	plan := mustPlan(t, "forms = 2\nshared = 1\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n")
	first := mustAssemble(t, b, plan, assemble.Options{Seed: 1})
	for _, forms := range []int{1, 2, 3, 4} {
		o := assemble.Options{Seed: 2, Forms: forms, Earlier: assemble.Earlier{Spots: spots(first), Replace: []string{"A1"}}}
		q := mustAssemble(t, b, plan, o)
		given := plan
		given.Forms = forms
		if err := broken(b, given, o, q); err != nil {
			t.Errorf("%d forms: %v", forms, err)
		}
		if forms == 1 {
			q.Forms = append(q.Forms, first.Forms[1])
		}
		kept := 0
		for f, form := range first.Forms {
			for i, placed := range form.Items {
				if q.Forms[f].Items[i].Item.ID == placed.Item.ID {
					kept++
				}
			}
		}
		changed := 1 // A1, and B1 where it is shared
		if first.Forms[0].Items[0].Shared && forms > 1 {
			changed = 2
		}
		if kept != 6-changed || len(q.Swaps) != changed {
			t.Errorf("%d forms: %d items are kept, %d exchanged", forms, kept, len(q.Swaps))
		}
	}
}

func TestSwapRefusals(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "clock-hour", 12, 3)
	plan := mustPlan(t, "[[row]]\nskill = 'clock-hour'\ncount = 3\n")
	q := mustAssemble(t, b, plan, assemble.Options{})
	for want, e := range map[string]assemble.Earlier{
		"name the items to replace or those to keep, not both":        {Spots: spots(q), Keep: []string{"A1"}, Replace: []string{"A2"}},
		"to keep or replace items, say from which quiz":               {Keep: []string{"A1"}},
		`the earlier quiz has no item "A9"; its items are A1 to A3`:   {Spots: spots(q), Keep: []string{"A9"}},
		"form A of the earlier quiz has 2 items; the plan asks for 3": {Spots: spots(q)[:2]},
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

func mustAssemble(t *testing.T, b *bank.Bank, plan plan.Plan, o assemble.Options) assemble.Quiz {
	t.Helper()
	q, err := assemble.Assemble(context.Background(), b, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	return q
}
