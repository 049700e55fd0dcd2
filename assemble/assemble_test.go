package assemble_test

import (
	"context"
	"testing"

	"evenhand/assemble"
	"evenhand/standards"
)

func TestExamplePlanFromABank(t *testing.T) {
	b := newBank(t)
	for _, skill := range []standards.SkillID{"add-two-digit", "subtract-regrouping", "tens-and-ones", "clock-half-hour"} {
		addMade(t, b, skill, 60, 7)
	}
	plan := mustPlan(t, assemble.ExamplePlan())
	o := assemble.Options{Seed: 1, Week: "2026-W48"}
	q, err := assemble.Assemble(context.Background(), b, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	if err := broken(b, plan, o, q); err != nil {
		t.Error(err)
	}
}
