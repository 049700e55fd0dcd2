package assemble_test

import (
	"context"
	"errors"
	"slices"
	"testing"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards"

	"pgregory.net/rapid"
)

// drawGreedyPlan is a plan that asks for much, so that most banks lack for several of its rules.
func drawGreedyPlan(r *rapid.T) plan.Plan {
	asked := drawPlan(r)
	for i := range asked.Rows {
		asked.Rows[i].Count = rapid.IntRange(1, 7).Draw(r, "count of a row")
	}
	if rapid.Bool().Draw(r, "more rows") {
		row := plan.Row{Skill: rapid.SampledFrom(lawSkills).Draw(r, "skill"), Count: rapid.IntRange(1, 9).Draw(r, "count")}
		asked.Rows = append(asked.Rows, row)
	}
	if rapid.Bool().Draw(r, "a strict quota") {
		where := drawWhere(r, []string{"regroups = 2", "makes_ten = true", "past_noon = true", "doubles = true"})
		least := rapid.IntRange(1, 6).Draw(r, "least")
		asked.Quotas = append(asked.Quotas, plan.Quota{Where: where, AtLeast: least, AtMost: least + rapid.IntRange(0, 2).Draw(r, "and up to")})
	}
	return asked
}

// changed is the plan with some ways gone; rows left out are taken out at the end, so that the others keep their numbers.
func changed(t *rapid.T, asked plan.Plan, ways ...assemble.Way) plan.Plan {
	asked.Rows, asked.Bands, asked.Quotas = slices.Clone(asked.Rows), slices.Clone(asked.Bands), slices.Clone(asked.Quotas)
	bound := func(q assemble.Quota, least, most *int) {
		for i, b := range asked.Bands {
			if b.Band == q.Band && least != nil {
				asked.Bands[i].AtLeast = *least
			} else if b.Band == q.Band {
				asked.Bands[i].AtMost = *most
			}
		}
		for i, other := range asked.Quotas {
			if len(q.Where) > 0 && slices.Equal(other.Where, q.Where) && least != nil {
				asked.Quotas[i].AtLeast = *least
			} else if len(q.Where) > 0 && slices.Equal(other.Where, q.Where) {
				asked.Quotas[i].AtMost = *most
			}
		}
	}
	for _, w := range ways {
		switch w.Says.Sentence {
		case assemble.WayRow, assemble.WayOut:
			asked.Rows[w.Row].Count = w.To
		case assemble.WayLeast:
			bound(w.Says.Quota, &w.To, nil)
		case assemble.WayMost:
			bound(w.Says.Quota, nil, &w.To)
		case assemble.WayMinutes:
			asked.Minutes = w.To
		case assemble.WayOnce:
			asked.Forms = w.To
		case assemble.WaySame:
			asked.Same = slices.DeleteFunc(slices.Clone(asked.Same), func(c standards.Condition) bool { return c == w.Says.Quota.Where[0] })
		case assemble.WayShared:
			asked.Shared = w.To
		case assemble.WayRest:
			asked.Rest = w.To
		default:
			t.Fatalf("no plan can do this: %s", w)
		}
	}
	asked.Rows = slices.DeleteFunc(asked.Rows, func(row plan.Row) bool { return row.Count == 0 })
	return asked
}

// met says whether a plan can be met.
func met(t *rapid.T, b *bank.Bank, asked plan.Plan, o assemble.Options) bool {
	o.Limit = time.Second / 2 // any quiz will do
	_, err := assemble.Assemble(context.Background(), b, asked, o)
	var impossible *assemble.ImpossibleError
	if err != nil && !errors.As(err, &impossible) && !errors.Is(err, search.ErrNoTime) {
		t.Fatal(err)
	}
	return impossible == nil
}

// Whatever can't be kept together: with the first way out of every clash there is a quiz, and with
// any other way of one in its place, too. With the items made that are said to lack there is one as well
// where it said so, else what is left is soon mended by no items.
func TestWaysLeadOut(t *testing.T) {
	several, made, left := 0, 0, 0
	rapid.Check(t, func(r *rapid.T) {
		if rapid.IntRange(0, 7).Draw(r, "one in eight") > 0 {
			return // each takes long
		}
		b, asked := drawBank(t, r), drawGreedyPlan(r)
		o := assemble.Options{Week: "2026-W48", Limit: lawLimit}
		_, err := assemble.Assemble(context.Background(), b, asked, o)
		var e *assemble.ImpossibleError
		if !errors.As(err, &e) || e.CutShort {
			return
		}
		var first []assemble.Way
		for _, c := range e.Clashes {
			if len(c.Ways) == 0 && len(c.Generate) == 0 && len(asked.Rows) > len(e.Clashes) { // else no row would be left
				r.Fatalf("no way out of a clash:\n%v", e)
			}
			if len(c.Ways) == 0 {
				return // only items mend it
			}
			first = append(first, c.Ways[0])
		}
		if len(e.Clashes) > 1 {
			several++
		}
		for i, c := range e.Clashes {
			for k, way := range c.Ways {
				if k == 0 && i > 0 {
					continue // tried with the first clash
				}
				ways := slices.Clone(first)
				if ways[i] = way; !met(r, b, changed(r, asked, ways...), o) {
					r.Fatalf("%v do not do:\n%v", ways, e)
				}
			}
		}
		if len(e.Generate) == 0 {
			return
		}
		made++
		for tries := 0; len(e.Generate) > 0 && !e.CutShort; tries++ {
			fill(t, b, e.Generate)
			_, err = assemble.Assemble(context.Background(), b, asked, o)
			switch before := e; {
			case err == nil:
				return
			case before.ByMaking() || !errors.As(err, &e) || tries == 5:
				r.Fatalf("with the items made:\n%v\nbefore:\n%v", err, before)
			}
		}
		left++
	})
	t.Logf("%d plans with several clashes, %d that items help, %d of these not alone", several, made, left)
	if several == 0 || made == 0 {
		t.Error("the law was tried on one kind of plan only")
	}
}
