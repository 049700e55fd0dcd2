package assemble_test

import (
	"bytes"
	"slices"
	"testing"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/plan"
	"evenhand/bank"
)

// A make-up form is the best of all that can be made beside the forms that were sat, which is found by
// trying them all, and it holds none of their items; what became of these since says nothing.
func TestMakeUpAgainstTryingEverything(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 14, 3)
	plan := mustPlan(t, "title = 'Friday check'\nforms = 2\nshare_right = 70\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n")
	given := give(t, b, plan, "2026-W48")
	retired := given.Forms[0].Items[0].Item.ID
	if _, err := b.Retire(retired, "MK", "asked too often", given.At); err != nil {
		t.Fatal(err)
	}
	got, err := assemble.MakeUp(t.Context(), b, plan, []bank.Quiz{given}, assemble.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if !got.Proved || len(got.Forms) != 3 || got.Forms[2].Name != "C" || got.Forms[0].Items[0].Item.ID != retired {
		t.Fatalf("proved: %v, forms %+v", got.Proved, got.Forms)
	}
	if best := bestMakeUp(t, b, plan, given); got.Objective != best {
		t.Errorf("objective %d, the best of all forms has %d", got.Objective, best)
	}
	o := assemble.Options{Week: given.Week, Forms: 3, Ability: &given.Level}
	if err := wrongFigures(plan, o, got); err != nil {
		t.Error(err)
	}
}

// give assembles a quiz and keeps it as given.
func give(t *testing.T, b *bank.Bank, plan plan.Plan, week string) bank.Quiz {
	t.Helper()
	quiz, err := assemble.Assemble(t.Context(), b, plan, assemble.Options{Seed: 1, Week: week})
	if err != nil {
		t.Fatal(err)
	}
	given := quiz.Given("MK", time.Date(2026, time.November, 26, 16, 0, 0, 0, time.UTC))
	if err := b.KeepQuiz(given); err != nil {
		t.Fatal(err)
	}
	return given
}

// bestMakeUp tries every three of the ready items as one form more.
func bestMakeUp(t *testing.T, b *bank.Bank, plan plan.Plan, given bank.Quiz) int {
	sat := assemble.QuizOf(given).Forms
	var stock []assemble.Placed
	for item, err := range b.Find(bank.Query{Standings: []bank.Standing{bank.Ready}}) {
		if err != nil {
			t.Fatal(err)
		}
		seen := slices.ContainsFunc(sat, func(f assemble.Form) bool {
			return slices.ContainsFunc(f.Items, func(p assemble.Placed) bool { return p.Item.ID == item.ID })
		})
		if !seen {
			stock = append(stock, assemble.Placed{Item: item})
		}
	}
	o := assemble.Options{Week: given.Week, Forms: 3, Ability: &given.Level}
	best := -1
	for i := range stock {
		for j := range i {
			for k := range j {
				items := []assemble.Placed{stock[i], stock[j], stock[k]}
				for n := range items {
					items[n].Number = n + 1
				}
				q := assemble.Quiz{Forms: append(slices.Clone(sat), assemble.Form{Name: "C", Items: items})}
				figures(plan, o, &q)
				if brokenForm(b, plan, o, q, q.Forms[2]) == nil && (best < 0 || q.Objective < best) {
					best = q.Objective
				}
			}
		}
	}
	return best
}

// The next form keeps clear of the make-up form before it, too; and shared items, which the pupils of
// every form have seen, are on none.
func TestMakeUpOfMakeUp(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 30, 3)
	plan := mustPlan(t, "title = 'Friday check'\nforms = 2\nshared = 1\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n")
	given := give(t, b, plan, "2026-W48")
	sat := []bank.Quiz{given}
	seen := map[string]string{}
	for _, form := range given.Forms {
		for _, placed := range form.Items {
			seen[placed.Item.ID] = form.Name
		}
	}
	for _, name := range []string{"C", "D"} {
		all, err := assemble.MakeUp(t.Context(), b, plan, sat, assemble.Options{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		made := all
		made.Forms = all.Forms[len(all.Forms)-1:]
		for _, placed := range made.Forms[0].Items {
			if before := seen[placed.Item.ID]; before != "" || made.Forms[0].Name != name {
				t.Errorf("form %s for %s holds item %s of form %s", made.Forms[0].Name, name, placed.Item.ID, before)
			}
			seen[placed.Item.ID] = name
		}
		sat = append(sat, made.Given("MK", given.At))
	}
	var csv bytes.Buffer
	if err := export.WriteQuiz(&csv, assemble.QuizOf(sat[2])); err != nil || !bytes.Contains(csv.Bytes(), []byte("\nD,1,")) {
		t.Errorf("quiz.csv of form D: %v\n%s", err, csv.Bytes())
	}
}
