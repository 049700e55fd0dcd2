package assemble_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
)

func mustFail(t *testing.T, b *bank.Bank, plan plan.Plan, o assemble.Options) *assemble.ImpossibleError {
	t.Helper()
	_, err := assemble.Assemble(context.Background(), b, plan, o)
	var impossible *assemble.ImpossibleError
	if !errors.As(err, &impossible) {
		t.Fatalf("the plan should be impossible; got %v", err)
	}
	return impossible
}

// fill does what --fill does: it makes the items asked for.
func fill(t *testing.T, b *bank.Bank, wishes []assemble.Generate) {
	t.Helper()
	for _, g := range wishes {
		made, err := generate.Make(generate.Request{Skill: g.Skill, Where: g.Where, Count: g.Count, Seed: g.Seed, Taken: func(fingerprint string) bool {
			_, has, err := b.Has(fingerprint)
			if err != nil {
				t.Fatal(err)
			}
			return has
		}})
		if err != nil {
			t.Fatal(err)
		}
		var items []bank.Item
		for _, task := range made.Tasks {
			items = append(items, bank.NewItem(task, "", bank.Origin{Kind: "generated", Seed: g.Seed}))
		}
		addItems(t, b, items...)
	}
}

func TestTooFewItems(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 + 36 = ?", "25 + 38 = ?", "19 + 53 = ?", "12 + 34 = ?", "41 + 27 = ?", "read 4:00", "read 5:00", "read 6:00", "read 7:00")
	plan := mustPlan(t, `
forms = 2
[[row]]
skill = "add-two-digit"
count = 2
where = ["regroups >= 1"]
[[row]]
skill = "clock-hour"
count = 2
`)
	e := mustFail(t, b, plan, assemble.Options{})
	want := `no quiz keeps all the rules of the plan. These can't be kept together:
  - no item stands in two of the 2 forms
  - row 1 (add-two-digit where regroups >= 1) takes 2 items in each of 2 forms; the bank offers 3
Any one of these changes is enough:
  - take 1 item instead of 2 in row 1
  - make 1 of the 2 forms
Or make the missing items (--fill does it):
      evenhand generate --skill add-two-digit --where 'regroups>=1' --count 1`
	if e.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", e, want)
	}
	fill(t, b, e.Generate)
	mustAssemble(t, b, plan, assemble.Options{})
}

func TestRestingItems(t *testing.T) {
	b := newBank(t)
	ids := addTasks(t, b, "read 4:00", "read 5:00", "read 6:00", "read 7:00")
	use(t, b, "2026-W47", ids[0])
	use(t, b, "2026-W46", ids[1])
	use(t, b, "2026-W44", ids[2])
	plan := mustPlan(t, "rest = 4\n[[row]]\nskill = 'clock-hour'\ncount = 3\n")
	e := mustFail(t, b, plan, assemble.Options{Week: "2026-W48"})
	want := `no quiz keeps all the rules of the plan. These can't be kept together:
  - row 1 (clock-hour) takes 3 items; the bank offers 1, and 3 more were used too lately
  - an item used in the last 4 weeks stays out
Any one of these changes is enough:
  - take 1 item instead of 3 in row 1
  - rest items 1 week instead of 4 (rest = 1)
Or make the missing items (--fill does it):
      evenhand generate --skill clock-hour --count 2`
	if e.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", e, want)
	}
	plan.Rest = 1 // weeks 47 and 48 are out, 46 and 44 are in
	mustAssemble(t, b, plan, assemble.Options{Week: "2026-W48"})
}

// A plan is drawn that contradicts itself or a bank that lacks something in each
// of the ways a teacher meets. What the message offers must do what it says.
func TestWhyNot(t *testing.T) {
	for _, c := range []struct {
		name, plan string
		rules      []string // a part of each
		ways       []string // a part of each
		fills      bool
	}{
		{"minutes", "minutes = 1\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n",
			[]string{"1 minute for a form; the quickest items for the rows take 2:15", "row 1"},
			[]string{"give 3 minutes instead of 1", "take 1 item instead of 3 in row 1"}, false},
		{"band", "[[row]]\nskill = 'subtract-regrouping'\ncount = 2\n[bands]\nstretch = [1, 2]\n",
			[]string{"stretch items: at least 1; the bank offers 0"}, []string{"stretch items: ask for at least 0 instead of 1"}, true},
		{"quota", "[[row]]\nskill = 'add-two-digit'\ncount = 2\n[[quota]]\nwhere = 'doubles = true'\ncount = [2, 2]\n",
			[]string{"items with doubles = true: at least 2; the bank offers 0"}, []string{"items with doubles = true: ask for at least 0 instead of 2"}, true},
		{"two rows and a quota", "[[row]]\nskill = 'add-two-digit'\ncount = 2\nwhere = ['regroups = 1']\n" +
			"[[row]]\nskill = 'add-two-digit'\ncount = 1\nwhere = ['regroups >= 1']\n" +
			"[[quota]]\nwhere = 'regroups >= 1'\ncount = [0, 2]\n",
			[]string{"row 1", "row 2", "items with regroups >= 1: at most 2"},
			[]string{"items with regroups >= 1: allow up to 3 instead of 2", "take 1 item instead of 2 in row 1", "leave row 2 out"}, false},
		{"one key", "[[row]]\nskill = 'add-two-digit'\ncount = 2\nwhere = ['largest = 72']\n",
			[]string{"one skill and key", "row 1"}, []string{"take 1 item instead of 2"}, false},
		{"looks", "[[row]]\nskill = 'missing-number-larger'\ncount = 1\nlooks = ['bond']\n[[row]]\nskill = 'add-two-digit'\ncount = 1\n",
			[]string{"row 1 (missing-number-larger, shown as bond) takes 1 item; the bank offers 0"}, []string{"leave row 1 out"}, true},
		{"a look that few can take", "[[row]]\nskill = 'add-within-1000'\ncount = 2\nlooks = ['hundreds-chart']\n[[row]]\nskill = 'add-two-digit'\ncount = 1\n",
			[]string{"row 1 (add-within-1000, shown as hundreds-chart) takes 2 items; the bank offers 0"}, []string{"leave row 1 out"}, true},
		{"shared", "forms = 2\nshared = 1\n[[row]]\nskill = 'subtract-regrouping'\ncount = 2\n",
			[]string{"exactly 1 item stands in all 2 forms", "row 1"}, []string{"let 2 items stand in every form instead of 1"}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBank(t)
			addTasks(t, b, "47 + 36 = ?", "25 + 38 = ?", "19 + 53 = ?", "12 + 34 = ?", "41 + 27 = ?", "62 + 15 = ?", "25 + 47 = ?", "read 4:30",
				"47 ? 74", "51 ? 38", "62 ? 62", "23 ? 32", "47 + ? = 183", "83 - 47 = ?", "52 - 35 = ?")
			plan := mustPlan(t, c.plan)
			e := mustFail(t, b, plan, assemble.Options{})
			for _, part := range c.rules {
				if !slices.ContainsFunc(e.Clashes[0].Rules, func(r assemble.Rule) bool { return strings.Contains(r.Text, part) }) {
					t.Errorf("no rule says %q:\n%v", part, e)
				}
			}
			for _, part := range c.ways {
				if !slices.ContainsFunc(e.Clashes[0].Ways, func(w assemble.Way) bool { return strings.Contains(w.Text, part) }) {
					t.Errorf("no way says %q:\n%v", part, e)
				}
			}
			if c.fills != (len(e.Generate) > 0) {
				t.Fatalf("items to make: %v", e.Generate)
			}
			if c.fills {
				fill(t, b, e.Generate)
				mustAssemble(t, b, plan, assemble.Options{})
			}
		})
	}
}

// Two mistakes in one plan are told at once, each with what mends it by itself; both mended, there is a quiz.
func TestTwoClashesAtOnce(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 + 36 = ?", "25 + 38 = ?", "19 + 53 = ?", "read 4:30", "read 7:30")
	plan := mustPlan(t, "[[row]]\nskill = 'add-two-digit'\ncount = 5\n[[row]]\nskill = 'clock-half-hour'\ncount = 4\n")
	e := mustFail(t, b, plan, assemble.Options{})
	said := e.Error()
	for _, part := range []string{"take 3 items instead of 5 in row 1", "take 2 items instead of 4 in row 2", "Nor can these be kept together"} {
		if !strings.Contains(said, part) {
			t.Errorf("%q is missing in\n%s", part, said)
		}
	}
	plan.Rows[0].Count, plan.Rows[1].Count = 3, 2
	mustAssemble(t, b, plan, assemble.Options{})
}

// Where items mend only one of two clashes, they are told with it, filling makes them, and what is left is told.
func TestItemsMendOneOfTwoClashes(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 + 36 = ?", "25 + 38 = ?", "read 4:30", "read 7:30", "read 9:30")
	plan := mustPlan(t, "[[row]]\nskill = 'add-two-digit'\ncount = 5\n[[row]]\nskill = 'clock-half-hour'\ncount = 3\n"+
		"[[quota]]\nwhere = 'clock_step = half-hour'\ncount = [0, 2]\n")
	e := mustFail(t, b, plan, assemble.Options{})
	want := `no quiz keeps all the rules of the plan. These can't be kept together:
  - row 1 (add-two-digit) takes 5 items; the bank offers 2
Any one of these changes mends it:
  - take 2 items instead of 5 in row 1
Or make the missing items (--fill does it):
      evenhand generate --skill add-two-digit --count 3
Nor can these be kept together:
  - items with clock_step = half-hour: at most 2; the bank offers 2 others for the rows
  - row 2 (clock-half-hour) takes 3 items; the bank offers 3
Any one of these changes mends it:
  - take 2 items instead of 3 in row 2
  - items with clock_step = half-hour: allow up to 3 instead of 2
With the first change of each the plan can be met.`
	if e.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", e, want)
	}
	filling := assemble.Filling{Bank: b, By: "MK", At: noon}
	_, err := filling.Assemble(t.Context(), plan, assemble.Options{})
	if !errors.As(err, &e) || len(e.Clashes) != 1 || len(e.Generate) > 0 || !strings.Contains(err.Error(), "row 2") {
		t.Errorf("what is left is\n%v", err)
	}
	plan.Rows[1].Count = 2
	if _, err := filling.Assemble(t.Context(), plan, assemble.Options{}); err != nil {
		t.Errorf("with that mended: %v", err)
	}
}

// A way out holds for the plan as it will be: of three comparisons two may have one answer, so that
// to leave ten others out is not enough where the three that stay have all the same.
func TestWaysKeepTheRuleOfAnswers(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 ? 74", "12 ? 21", "35 ? 53", "14 ? 41", "47 + 36 = ?", "25 + 38 = ?")
	plan := mustPlan(t, "[[row]]\nskill = 'compare-two-digit'\ncount = 7\n[[row]]\nskill = 'compare-two-digit'\nwhere = ['digits = 2']\ncount = 3\n"+
		"[[row]]\nskill = 'add-two-digit'\ncount = 2\n")
	e := mustFail(t, b, plan, assemble.Options{})
	for i, c := range e.Clashes {
		for _, w := range c.Ways {
			if w.Change == assemble.ChangeCount && w.Row < 2 && len(e.Clashes) == 1 {
				t.Errorf("clash %d is said to be mended alone by %s:\n%v", i, w, e)
			}
		}
	}
}

// countdown is a context that ends after so many questions whether it has: a clock that the
// test holds.
type countdown struct {
	context.Context
	left  *int
	after *int // questions asked when it had ended
}

func (c countdown) Err() error {
	if *c.left--; *c.left >= 0 {
		return nil
	}
	*c.after++
	return context.DeadlineExceeded
}

// Wherever the time runs out, the search and its explanation end soon after, and what they say
// is true: that nothing else helps is said only when all was looked at.
func TestTimeRunsOutAnywhere(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 + 36 = ?", "25 + 38 = ?", "19 + 53 = ?", "read 4:30", "read 7:30", "47 ? 74")
	plan := mustPlan(t, "forms = 2\nminutes = 1\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n"+
		"[[row]]\nskill = 'clock-half-hour'\ncount = 2\n[bands]\nstretch = [1, 2]\n")
	whole := mustFail(t, b, plan, assemble.Options{}).Error()
	done := false
	for left := 1; left < 1<<20 && !done; left += 1 + left/3 {
		n, after := left, 0
		_, err := assemble.Assemble(countdown{t.Context(), &n, &after}, b, plan, assemble.Options{})
		if after > 200 {
			t.Errorf("after %d questions the time was up, and %d more were asked", left, after)
		}
		var e *assemble.ImpossibleError
		switch {
		case errors.As(err, &e) && !e.CutShort:
			done = after == 0
			if err.Error() != whole {
				t.Errorf("with time for %d questions it says\n%v\nwith time enough\n%s", left, err, whole)
			}
		case err == nil:
			t.Fatal("a quiz was made")
		case e != nil && strings.Contains(err.Error(), "No change"):
			t.Errorf("with time for %d questions it says for certain\n%v", left, err)
		case e != nil && !strings.Contains(err.Error(), "time ran out"):
			t.Errorf("with time for %d questions it hides that it was cut short\n%v", left, err)
		}
	}
	if !done {
		t.Error("it never came to an end")
	}
}

// What to make is judged by what the bank has learnt: where papers showed a skill to be much
// harder than supposed, its items fill a band that they would not reach by the first table.
func TestMissingItemsAreJudgedByWhatTheBankLearnt(t *testing.T) {
	b := newBank(t)
	first := bank.LevelOf("add-tens")
	table := bank.Table{Number: 1, At: noon, By: "lin", Levels: map[standards.SkillID]bank.Learnt{
		"add-tens": {Default: first, Value: first + 4000, SE: 100, Answers: 400},
	}}
	if err := b.KeepTable(table); err != nil {
		t.Fatal(err)
	}
	plan := mustPlan(t, "[[row]]\nskill = 'add-tens'\ncount = 2\n[bands]\nstretch = [2, 2]\n")
	e := mustFail(t, b, plan, assemble.Options{})
	if len(e.Generate) == 0 {
		t.Fatalf("nothing to make:\n%v", e)
	}
	fill(t, b, e.Generate)
	mustAssemble(t, b, plan, assemble.Options{})
}

// What the quickest items take counts those that keep their places: three additions take three times 45 seconds,
// two of them kept.
func TestQuickestWithKeptItems(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 + 36 = ?", "25 + 38 = ?", "19 + 53 = ?", "26 + 48 = ?")
	asked := mustPlan(t, "[[row]]\nskill = 'add-two-digit'\ncount = 3\n")
	first := mustAssemble(t, b, asked, assemble.Options{})
	asked.Minutes = 1
	e := mustFail(t, b, asked, assemble.Options{Earlier: assemble.Earlier{Spots: spots(first), Replace: []string{"A3"}}})
	if !strings.Contains(e.Error(), "1 minute for a form; the quickest items for the rows take 2:15") {
		t.Error(e)
	}
}
