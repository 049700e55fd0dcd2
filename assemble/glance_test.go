package assemble_test

import (
	"context"
	"fmt"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// What a glance at a large bank leaves out is found where it matters: the only items that a row may hold, and
// those without which no quiz is the best. The rules are checked item by item, apart from the program's own way.
func TestWhatAGlanceLeavesOutIsFound(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "subtract-within-1000", 4000, 1)
	addMade(t, b, "add-within-1000", 1500, 1)
	for _, rare := range leftOut(t, b, "subtract-within-1000", "add-within-1000") {
		q := mustGlance(t, b, `where = ["largest <= 150"]`, fmt.Sprintf(`where = ["largest = %s"]`, rare), 75, 0)
		if q.Objective != 0 {
			t.Errorf("with a largest number of %s the objective is %d, want 0", rare, q.Objective)
		}
	}
	best := mustGlance(t, b, "", "", 5, 0)
	for seed := range uint64(4) {
		if q := mustGlance(t, b, "", "", 5, seed); q.Objective != best.Objective || q.Objective == 0 {
			t.Errorf("seed %d is proved best at %d, seed 0 at %d", seed, q.Objective, best.Objective)
		}
	}
}

// leftOut gives some largest numbers of groups of the last skill that a glance with the seed 0 doesn't give.
func leftOut(t *testing.T, b *bank.Bank, skills ...standards.SkillID) (rare []string) {
	t.Helper()
	seen := map[string]bool{}
	portions := b.Portions(skills...)
	for p, err := range portions.Glance(0) {
		if err != nil {
			t.Fatal(err)
		}
		seen[portions.Largest(p)] = true
	}
	for g, err := range b.Groups(skills[len(skills)-1]) {
		if err != nil {
			t.Fatal(err)
		}
		if largest := g.Traits.Get(task.Largest); !seen[largest] && len(rare) < 5 {
			seen[largest] = true
			rare = append(rare, largest)
		}
	}
	if len(rare) == 0 {
		t.Fatal("a glance gives all")
	}
	return rare
}

func mustGlance(t *testing.T, b *bank.Bank, few, rare string, share int, seed uint64) assemble.Quiz {
	t.Helper()
	p, err := plan.Parse(fmt.Appendf(nil, `
title = "Friday check"
minutes = 60
forms = 1
share_right = %[1]d
[[row]]
skill = "subtract-within-1000"
count = 3
%[2]s
[[row]]
skill = "add-within-1000"
count = 1
%[3]s`, share, few, rare), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	o := assemble.Options{Seed: seed}
	q, err := assemble.Assemble(context.Background(), b, p, o)
	if err != nil {
		t.Fatal(err)
	}
	if err := broken(b, p, o, q); err != nil || !q.Proved {
		t.Fatalf("seed %d: %v, proved: %v", seed, err, q.Proved)
	}
	return q
}
