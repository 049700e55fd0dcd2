package assemble_test

import (
	"context"
	"errors"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank/generate"
	"evenhand/standards"
)

func TestExamplePlanFromABank(t *testing.T) {
	b := fridayBank(t)
	plan := mustPlan(t, plan.Example())
	o := assemble.Options{Seed: 1, Week: "2026-W48"}
	q, err := assemble.Assemble(context.Background(), b, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	if err := broken(b, plan, o, q); err != nil {
		t.Error(err)
	}
}

// The second week of a fresh bank, a hundred items a skill: the first edition of the quiz gave one
// form the only hard item, for every seed. Forms must be even for a weaker, a typical and a stronger pupil.
func TestSecondWeekIsEven(t *testing.T) {
	for seed := range uint64(6) {
		b := newBank(t)
		for _, skill := range []standards.SkillID{"add-two-digit", "subtract-regrouping", "tens-and-ones", "clock-half-hour"} {
			addMade(t, b, skill, 100, 1)
		}
		plan := mustPlan(t, plan.Example())
		for _, week := range []string{"2026-W48", "2026-W49"} {
			o := assemble.Options{Seed: seed, Week: week}
			q := mustAssemble(t, b, plan, o)
			if err := broken(b, plan, o, q); err != nil {
				t.Error(err)
			}
			// Within half a point in 100, the tolerance: 0.05 of a point with ten items.
			a, c := q.Forms[0].Scores, q.Forms[1].Scores
			for i := range a {
				if apart := max(a[i]-c[i], c[i]-a[i]); apart > 50 {
					t.Errorf("seed %d, week %s: scores %v and %v", seed, week, a, c)
				}
			}
			var ids []string
			for _, form := range q.Forms {
				for _, placed := range form.Items {
					ids = append(ids, placed.Item.ID)
				}
			}
			use(t, b, week, ids...)
		}
	}
}

// The week's number stands where the title says {week}.
func TestTitleNamesTheWeek(t *testing.T) {
	b := fridayBank(t)
	q := mustAssemble(t, b, mustPlan(t, plan.Example()), assemble.Options{Seed: 1, Week: "2026-W51"})
	if q.Title != "Friday check, week 51" {
		t.Errorf("the title is %q", q.Title)
	}
}

// Assemble leaves unread items out on the strength of a task naming at most six
// clash groups beside its key: the six times of a match (standards.Match).
func TestTasksNameFewClashes(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 60, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		for _, task := range made.Tasks {
			if names := task.Clashes(); len(names) > 6 {
				t.Errorf("%s names %d clash groups: %v", task, len(names), names)
			}
		}
	}
}

func TestAssembleRefusals(t *testing.T) {
	b := newBank(t)
	plan := mustPlan(t, "rest = 3\n[[row]]\nskill = 'clock-hour'\ncount = 3\n")
	for want, o := range map[string]assemble.Options{
		"the plan rests items for 3 weeks, so the quiz needs its week, such as 2026-W48": {},
		"there is no week 54 in 2026; its weeks are 1 to 53":                             {Week: "2026-W54"},
		"7 forms are asked for; a quiz has 1 to 6":                                       {Week: "2026-W48", Forms: 7},
	} {
		if _, err := assemble.Assemble(context.Background(), b, plan, o); err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	if e := mustFail(t, b, plan, assemble.Options{Week: "2026-W48"}); len(e.Generate) != 1 || e.Generate[0].Count != 3 {
		t.Errorf("an empty bank lacks %v", e.Generate)
	}
}

// A search that is given no time says so instead of calling the plan impossible.
func TestNoTime(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 100, 1)
	plan := mustPlan(t, "forms = 2\n[[row]]\nskill = 'add-two-digit'\ncount = 6\n")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	q, err := assemble.Assemble(ctx, b, plan, assemble.Options{})
	if err == nil && q.Proved && q.Objective > 0 {
		t.Errorf("without time a quiz is proved")
	}
	if no := (*assemble.ImpossibleError)(nil); errors.As(err, &no) {
		t.Error("without time the plan is called impossible")
	}
}

// mustPlan reads a plan that holds no mistake.
func mustPlan(t *testing.T, text string) plan.Plan {
	t.Helper()
	asked, err := plan.Parse([]byte(text), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	return asked
}

func mustPacing(t *testing.T, text string) plan.Pacing {
	t.Helper()
	p, err := plan.ParsePacing([]byte(text), "pacing.toml")
	if err != nil {
		t.Fatal(err)
	}
	return p
}
