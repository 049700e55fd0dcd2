package assemble_test

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"

	"pgregory.net/rapid"
)

// wishes are conditions that some items of a skill fulfil.
var wishes = map[standards.SkillID][]string{
	"clock-hour":          {"past_noon = true", "past_noon != true"},
	"compare-two-digit":   {"largest > 60", "digits = 2"},
	"add-two-digit":       {"regroups = 1", "regroups >= 1", "makes_ten = true", "largest <= 80"},
	"subtract-regrouping": {"regroups = 1", "largest <= 80"},
	"add-past-100":        {"crosses_100 = true", "regroups = 1"},
	"match-clocks":        {"clock_step = hour"},
}

// lawSkills are skills with few keys (clocks, comparisons), with many, and with
// looks that only some tasks can take (bonds up to 100).
var lawSkills = []standards.SkillID{"clock-hour", "compare-two-digit", "add-two-digit", "subtract-regrouping", "add-past-100", "match-clocks"}

// drawBank makes a bank of a few dozen items, some of them used or measured.
func drawBank(t *testing.T, r *rapid.T) *bank.Bank {
	b := newBank(t)
	var ids []string
	for _, skill := range lawSkills {
		made, err := generate.Make(generate.Request{
			Skill: skill, Count: rapid.IntRange(1, 20).Draw(r, "items of "+string(skill)), Seed: rapid.Uint64Range(0, 9).Draw(r, "made with seed"),
		})
		if err != nil {
			t.Fatal(err)
		}
		var items []bank.Item
		for _, asked := range made.Tasks {
			item := bank.NewItem(asked, "", bank.Origin{Kind: "generated"})
			if rapid.IntRange(0, 3).Draw(r, "measured") == 0 {
				item.Measured = &bank.Measured{Difficulty: standards.Difficulty(rapid.IntRange(-2500, 1000).Draw(r, "difficulty")), StandardError: 200, Answers: 50}
			}
			items = append(items, item)
		}
		ids = append(ids, addItems(t, b, items...)...)
	}
	for back := range 3 {
		used := rapid.SliceOfDistinct(rapid.SampledFrom(ids), rapid.ID).Draw(r, "used")
		if len(used) > 0 {
			use(t, b, mustWeek("2026-W48").Add(-2*back-1).String(), used...)
		}
	}
	return b
}

func drawPlan(r *rapid.T) plan.Plan {
	asked := plan.Plan{
		Forms:      rapid.IntRange(1, 3).Draw(r, "forms"),
		ShareRight: rapid.SampledFrom([]int{60, 75, 85}).Draw(r, "share right"),
		Rest:       rapid.IntRange(0, 4).Draw(r, "rest"),
		Grade:      rapid.SampledFrom([]string{"", "", "K", "1", "2"}).Draw(r, "grade"),
		Minutes:    rapid.SampledFrom([]int{0, 4, 6, 9}).Draw(r, "minutes"),
	}
	for range rapid.IntRange(1, 3).Draw(r, "rows") {
		row := plan.Row{Skill: rapid.SampledFrom(lawSkills).Draw(r, "skill"), Count: rapid.IntRange(1, 2).Draw(r, "count")}
		if rapid.Bool().Draw(r, "where") {
			row.Where = drawWhere(r, wishes[row.Skill])
		}
		if skill, _ := standards.Catalogue().Skill(row.Skill); rapid.Bool().Draw(r, "looks") {
			row.Looks = []task.Look{rapid.SampledFrom(skill.Looks).Draw(r, "look")}
		}
		asked.Rows = append(asked.Rows, row)
	}
	if rapid.Bool().Draw(r, "band") {
		band := plan.BandCount{Band: rapid.SampledFrom(standards.Bands()).Draw(r, "band"), AtLeast: rapid.IntRange(0, 1).Draw(r, "at least")}
		band.AtMost = band.AtLeast + rapid.IntRange(0, 2).Draw(r, "and up to more")
		asked.Bands = append(asked.Bands, band)
	}
	if rapid.Bool().Draw(r, "quota") {
		where := drawWhere(r, []string{"regroups >= 1", "crosses_100 = true", "largest > 60", "hundred = 1"})
		asked.Quotas = append(asked.Quotas, plan.Quota{Where: where, AtLeast: rapid.IntRange(0, 1).Draw(r, "least"), AtMost: rapid.IntRange(2, 5).Draw(r, "most")})
	}
	asked.Shared = rapid.IntRange(0, 1).Draw(r, "shared")
	if rapid.Bool().Draw(r, "same") {
		asked.Same = drawWhere(r, []string{"regroups >= 1", "crosses_100 = true", "clock_step = hour"})
	}
	return asked
}

func drawWhere(r *rapid.T, wishes []string) standards.Where {
	text := rapid.SampledFrom(wishes).Draw(r, "condition")
	where, err := standards.ParseWhere([]string{text})
	if err != nil {
		r.Fatal(err)
	}
	return where
}

// Every quiz that comes out keeps every rule; the same seed gives the same quiz,
// another seed one that is as good, and a wider rule never a worse one.
func TestLaws(t *testing.T) {
	impossible, made, best := 0, 0, 0
	rapid.Check(t, func(r *rapid.T) {
		b, plan := drawBank(t, r), drawPlan(r)
		o := assemble.Options{Seed: rapid.Uint64().Draw(r, "seed"), Week: "2026-W48", Limit: lawLimit}
		if rapid.Bool().Draw(r, "a class") {
			level := rapid.IntRange(0, 3500).Draw(r, "level")
			o.Ability = &level
		}
		q, err := assemble.Assemble(context.Background(), b, plan, o)
		if no := (*assemble.ImpossibleError)(nil); errors.As(err, &no) {
			impossible++
			return
		}
		if err != nil {
			r.Fatal(err)
		}
		if err := broken(b, plan, o, q); err != nil {
			r.Fatal(err)
		}
		if !q.Proved {
			return // within the limit; the laws below are about the best quiz
		}
		made++
		if q.Objective == 0 {
			best++
		}
		again, err := assemble.Assemble(context.Background(), b, plan, o)
		if err != nil || again.Proved && !reflect.DeepEqual(q, again) {
			r.Fatalf("the same seed gives another quiz (%v)", err)
		}
		other := o
		other.Seed++
		if same, proved := objective(t, b, plan, other); proved && same != q.Objective {
			r.Fatalf("another seed gives objective %d instead of %d", same, q.Objective)
		}
		loose, what := loosen(r, plan)
		if wider, proved := objective(t, b, loose, o); wider < 0 || proved && wider > q.Objective {
			r.Fatalf("with %s the objective is %d instead of %d", what, wider, q.Objective)
		}
	})
	t.Logf("%d quizzes, %d with objective 0, %d plans impossible", made, best, impossible)
	if made == best || impossible == 0 {
		t.Error("the laws were tried on one kind of plan only")
	}
}

// lawLimit keeps one hard draw from holding up the tests.
const lawLimit = 5 * time.Second

// objective is that of the best quiz, and whether it is proved; −1 when there is
// none.
func objective(t *testing.T, b *bank.Bank, plan plan.Plan, o assemble.Options) (int, bool) {
	t.Helper()
	q, err := assemble.Assemble(context.Background(), b, plan, o)
	if no := (*assemble.ImpossibleError)(nil); errors.As(err, &no) {
		return -1, true
	}
	if err != nil {
		t.Fatal(err)
	}
	return q.Objective, q.Proved
}

// loosen widens one rule of a plan and says which.
func loosen(r *rapid.T, asked plan.Plan) (plan.Plan, string) {
	switch rapid.IntRange(0, 5).Draw(r, "loosen") {
	case 0:
		asked.Bands = nil
		return asked, "no bands"
	case 1:
		asked.Quotas = nil
		return asked, "no quotas"
	case 2:
		asked.Minutes = 0
		return asked, "no limit of minutes"
	case 3:
		asked.Rest = max(0, asked.Rest-2)
		return asked, fmt.Sprintf("rest %d", asked.Rest)
	case 4:
		asked.Same = nil
		return asked, "nothing the same"
	}
	rows := append([]plan.Row(nil), asked.Rows...)
	rows[0].Where, rows[0].Looks = nil, nil
	asked.Rows = rows
	return asked, "an open row 1"
}
