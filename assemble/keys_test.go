package assemble_test

import (
	"testing"

	"evenhand/assemble"
)

// A form of comparisons has one of each key where the bank allows, and repeats keys only where
// it could not be made otherwise.
func TestKeysRepeatOnlyWhereTheyMust(t *testing.T) {
	b := newBank(t)
	addTasks(t, b, "47 ? 74", "23 ? 32", "12 ? 21", "51 ? 38", "81 ? 18", "62 ? 62")
	for count, most := range map[int]int{1: 1, 2: 1, 3: 1, 4: 3, 6: 3} {
		plan := assemble.Plan{Title: "Keys", Forms: 1, ShareRight: 75, Rows: []assemble.Row{{Skill: "compare-two-digit", Count: count}}}
		for seed := range uint64(5) {
			q, err := assemble.Assemble(t.Context(), b, plan, assemble.Options{Seed: seed})
			if err != nil {
				t.Fatalf("%d comparisons: %v", count, err)
			}
			keys, repeated := map[string]int{}, 0
			for _, placed := range q.Forms[0].Items {
				keys[placed.Item.Key]++
				repeated = max(repeated, keys[placed.Item.Key])
			}
			if repeated > most {
				t.Errorf("%d comparisons with seed %d: keys %v, want none more than %d times", count, seed, keys, most)
			}
		}
	}
}
