package assemble_test

import (
	"fmt"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
)

// However many comparisons a form holds, no sign is right for more than two thirds of them,
// rounded up, of any number of them; and where the bank can't give that, there is no quiz.
func TestNoAnswerTooOften(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 ? 74", "23 ? 32", "12 ? 21", "25 ? 52", "36 ? 63", "51 ? 38", "81 ? 18", "62 ? 62")
	for count, most := range map[int]int{1: 1, 2: 2, 3: 2, 4: 3, 6: 4, 7: 5} {
		plan := plan.Plan{Title: "Keys", Forms: 1, ShareRight: 75, Rows: []plan.Row{{Skill: "compare-two-digit", Count: count}}}
		for seed := range uint64(5) {
			q, err := assemble.Assemble(t.Context(), b, plan, assemble.Options{Seed: seed})
			if err != nil {
				t.Fatalf("%d comparisons: %v", count, err)
			}
			keys := map[string]int{}
			for _, placed := range q.Forms[0].Items {
				keys[placed.Item.Key]++
			}
			for key, n := range keys {
				if n > most {
					t.Errorf("%d comparisons with seed %d: %d times %s", count, seed, n, key)
				}
			}
		}
	}
	one := newBank(t)
	addTasks(t, one, "47 ? 74", "23 ? 32", "12 ? 21", "25 ? 52")
	plan := plan.Plan{Title: "Keys", Forms: 1, ShareRight: 75, Rows: []plan.Row{{Skill: "compare-two-digit", Count: 4}}}
	_, err := assemble.Assemble(t.Context(), one, plan, assemble.Options{})
	if err == nil || !strings.Contains(err.Error(), "compare-two-digit items whose answer is <: at most 3") {
		t.Errorf("%v", err)
	}
}

// Where nothing else is at stake, of two answers each is right equally often in every form.
func TestAnswersByTurns(t *testing.T) {
	b := newBank(t)
	for n := 20; n < 60; n++ {
		addTasks(t, b, fmt.Sprintf("odd or even: %d", n))
	}
	for _, forms := range []int{1, 3} {
		plan := plan.Plan{Title: "Keys", Forms: forms, ShareRight: 90, Rows: []plan.Row{{Skill: "odd-or-even", Count: 6}}}
		for seed := range uint64(8) {
			q, err := assemble.Assemble(t.Context(), b, plan, assemble.Options{Seed: seed})
			if err != nil {
				t.Fatal(err)
			}
			for _, form := range q.Forms {
				odd := 0
				for _, placed := range form.Items {
					if placed.Item.Key == "odd" {
						odd++
					}
				}
				if odd != 3 {
					t.Errorf("%d forms, seed %d: %d of 6 numbers of form %s are odd", forms, seed, odd, form.Name)
				}
			}
		}
	}
}
