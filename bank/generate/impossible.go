package generate

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
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
			return fmt.Errorf("no %s item has %s; %s", skill, wish, values(wish.Trait, seen[i]))
		}
	}
	return fmt.Errorf("no %s item has %s; each of these exists, but not all in one item: leave one out", skill, where)
}

// values says in words which values of a trait there are.
func values(trait task.Trait, seen map[string]bool) string {
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
		return trait.String() + " does not apply to them"
	case len(list) == 1:
		return fmt.Sprintf("there it is always %s", list[0])
	case rank(trait, list[len(list)-1]) > rank(trait, list[0]):
		return fmt.Sprintf("there it goes from %s to %s", list[0], list[len(list)-1])
	}
	return "there it is " + strings.Join(list[:len(list)-1], ", ") + " or " + list[len(list)-1]
}

// rank is the number of a value that has one, and 0 for other words.
func rank(trait task.Trait, value string) int {
	n, _ := trait.Number(value)
	return n
}
