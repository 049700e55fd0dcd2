package generate

import (
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// impossible says why no item of the skill has the wished traits: which wish alone
// can't be met, and what values there are, or that the wishes exclude each other.
func impossible(all space, skill standards.SkillID, where standards.Where) error {
	seen := make([]map[string]bool, len(where))
	for i := range seen {
		seen[i] = make(map[string]bool)
	}
	met := make([]bool, len(where))
	for asked := range all.ofSkill(skill) {
		traits := asked.Traits()
		for i, wish := range where {
			seen[i][traits.Get(wish.Trait)] = true
			met[i] = met[i] || wish.Holds(traits)
		}
	}
	for i, wish := range where {
		if !met[i] {
			return words.Errorf("no %s item has %s; %s", skill, wish, values(wish.Trait, seen[i]))
		}
	}
	return words.Errorf("no %s item has %s; each of these exists, but not all in one item: leave one out", skill, where)
}

// values says in words which values of a trait there are.
func values(trait task.Trait, seen map[string]bool) *words.Told {
	var list []string
	for value := range seen {
		if value != "" {
			list = append(list, value)
		}
	}
	slices.SortFunc(list, func(a, b string) int {
		return 2*(rank(trait, a)-rank(trait, b)) + strings.Compare(a, b)
	})
	switch {
	case len(list) == 0:
		return words.Sayf("%s does not apply to them", trait)
	case len(list) == 1:
		return words.Sayf("there it is always %s", words.Term(list[0]))
	case rank(trait, list[len(list)-1]) > rank(trait, list[0]):
		return words.Sayf("there it goes from %s to %s", list[0], list[len(list)-1])
	}
	said := make([]*words.Told, len(list))
	for i, value := range list {
		said[i] = words.Term(value)
	}
	last := len(list) - 1
	return words.Sayf("there it is %s or %s", words.Joined(said[:last], "%s, %s"), said[last])
}

// rank is the number of a value that has one, and 0 for other words.
func rank(trait task.Trait, value string) int {
	n, _ := trait.Number(value)
	return n
}
