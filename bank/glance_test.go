package bank_test

import (
	"slices"
	"testing"

	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
)

// A glance at a large bank gives some groups of every kind, each once, and the same wherever the bank is kept; at a
// small bank it gives all.
func TestAGlance(t *testing.T) {
	b := tempBank(t)
	add := func(skill standards.SkillID, n int) {
		made, err := generate.Make(generate.Request{Skill: skill, Count: n, Seed: 1})
		must(t, err)
		var items []bank.Item
		for _, asked := range made.Tasks {
			items = append(items, bank.NewItem(asked, "", bank.Origin{Kind: "generated", Seed: 1}))
		}
		mustAdd(t, b, items...)
	}
	add("add-past-100", 300)
	all := glanced(t, b.Portions().All())
	small := b.Portions()
	mustEqual(t, glanced(t, small.Glance(1)), all)
	if !small.Whole() {
		t.Error("a glance leaves out some of 300 items")
	}
	add("subtract-within-1000", 4000)
	add("add-within-1000", 1000)
	skills := []standards.SkillID{"add-past-100", "subtract-within-1000", "add-within-1000"}
	large := b.Portions(skills...)
	all = glanced(t, large.All())
	kinds := kindsOf(all)
	elsewhere := b.AsIfTakenBack(bank.Earlier{Title: "Never given", Week: "2026-W47"}).Portions(skills...)
	var before []bank.Portion
	for seed := range uint64(5) {
		some := glanced(t, large.Glance(seed))
		mustEqual(t, glanced(t, large.Glance(seed)), some)
		mustEqual(t, inFull(elsewhere, glanced(t, elsewhere.Glance(seed))), inFull(large, some))
		if large.Whole() || len(some) >= len(all) || slices.Equal(some, before) {
			t.Errorf("seed %d gives %d of %d groups, whole: %v", seed, len(some), len(all), large.Whole())
		}
		mustEqual(t, kindsOf(some), kinds)
		seen := map[bank.Portion]bool{}
		for _, p := range some {
			if seen[p] || !slices.Contains(all, p) {
				t.Errorf("seed %d gives %+v, which was given before or is no group", seed, p)
			}
			seen[p] = true
		}
		before = some
	}
}

func glanced(t *testing.T, portions func(func(bank.Portion, error) bool)) (list []bank.Portion) {
	t.Helper()
	for p, err := range portions {
		must(t, err)
		list = append(list, p)
	}
	return list
}

func inFull(ps *bank.Portions, portions []bank.Portion) (groups []bank.Group) {
	for _, p := range portions {
		groups = append(groups, ps.Group(p))
	}
	return groups
}

func kindsOf(portions []bank.Portion) map[uint32]bool {
	kinds := map[uint32]bool{}
	for _, p := range portions {
		kinds[p.Kind] = true
	}
	return kinds
}
