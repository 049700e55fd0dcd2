package bank_test

import (
	"slices"
	"testing"

	"evenhand/bank"
	"evenhand/standards"
)

func allGroups(t *testing.T, b *bank.Bank, skills ...standards.SkillID) []bank.Group {
	t.Helper()
	var list []bank.Group
	for g, err := range b.Groups(skills...) {
		must(t, err)
		list = append(list, g)
	}
	return list
}

// Every ready item is a member of exactly one group, which is like it.
func TestGroupsHoldEveryReadyItemOnce(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, sums(900)...)
	_, err := b.Retire(ids[17], "Ms. Reyes", "worn out", monday)
	must(t, err)
	must(t, b.RecordUse(ids[20:30], bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}))
	seen := map[string]bool{}
	for _, g := range allGroups(t, b) {
		members, err := b.Members(g, 7, 0)
		must(t, err)
		if len(members) != g.Size {
			t.Errorf("a group of %d has %d members", g.Size, len(members))
		}
		for _, m := range members {
			if seen[m.ID] {
				t.Errorf("item %s is in two groups", m.ID)
			}
			seen[m.ID] = true
			mustBeLike(t, b, g, m)
		}
	}
	if len(seen) != 899 || seen[ids[17]] {
		t.Errorf("%d items are in groups, want 899 without the retired one", len(seen))
	}
}

func mustBeLike(t *testing.T, b *bank.Bank, g bank.Group, m bank.Member) {
	t.Helper()
	it, err := b.Get(m.ID)
	must(t, err)
	uses, err := b.Uses(m.ID)
	must(t, err)
	if it.Skill != g.Skill || it.Look != g.Look || it.Traits != g.Traits || it.Seconds != g.Seconds ||
		it.Difficulty() != g.Difficulty || len(uses) != g.Uses || it.Task != m.Task || it.Key != m.Key {
		t.Errorf("%s is not like its group %+v", it.Task, g)
	}
}

func TestGroupsOfSomeSkills(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, sums(900)...)
	all := allGroups(t, b)
	skills := []standards.SkillID{"add-two-digit", "facts-within-20", "add-two-digit"}
	got := allGroups(t, b, skills...)
	var want []bank.Group
	for _, skill := range skills[:2] {
		for _, g := range all {
			if g.Skill == skill {
				want = append(want, g)
			}
		}
	}
	mustEqual(t, got, want)
}

func TestMembersBeginWhereTheSeedSays(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, sums(900)...)
	groups := allGroups(t, b)
	g := slices.MaxFunc(groups, func(a, b bank.Group) int { return a.Size - b.Size })
	first := map[string]bool{}
	for seed := range uint64(40) {
		some, err := b.Members(g, seed, 3)
		must(t, err)
		again, err := b.Members(g, seed, 3)
		must(t, err)
		mustEqual(t, again, some)
		if len(some) != 3 || some[0] == some[1] || some[1] == some[2] {
			t.Errorf("seed %d gives %+v", seed, some)
		}
		first[some[0].ID] = true
	}
	if len(first) < 3 {
		t.Errorf("40 seeds begin at %d members of %d only", len(first), g.Size)
	}
}

func TestAGroupThatIsNoMoreHasNoMembers(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	g := allGroups(t, b)[0]
	must(t, b.RecordUse([]string{id}, bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}))
	members, err := b.Members(g, 1, 10)
	must(t, err)
	if len(members) != 0 {
		t.Errorf("members are %+v", members)
	}
}
