package assemble_test

import (
	"testing"

	"evenhand/assemble"
	"evenhand/standards"
	"evenhand/standards/task"
)

// A row that varies its looks shows all of them, and an item the same way whatever the seed.
func TestVaryTakesLooksByTurns(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 30, 1)
	plan := mustPlan(t, "[[row]]\nskill = 'add-two-digit'\ncount = 8\nlooks = ['bond', 'column', 'sentence']\nvary = true\n")
	counts, shown := map[task.Look]int{}, map[string]task.Look{}
	for seed := range uint64(6) {
		q, err := assemble.Assemble(t.Context(), b, plan, assemble.Options{Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		for _, placed := range q.Forms[0].Items {
			item := placed.Item
			counts[item.Look]++
			if before, ok := shown[item.ID]; ok && before != item.Look {
				t.Errorf("%s is shown as %s and as %s", item.Task, before, item.Look)
			}
			shown[item.ID] = item.Look
			if want := standards.Seconds(item.Skill, item.Look); item.Seconds != want {
				t.Errorf("%s as %s takes %d seconds, want %d", item.Task, item.Look, item.Seconds, want)
			}
		}
	}
	if len(counts) != 3 {
		t.Errorf("looks %v, want all three", counts)
	}
}
