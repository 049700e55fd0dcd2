package calibration

import (
	"maps"
	"slices"

	"evenhand/bank"
	"evenhand/bank/evidence"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
)

// columns are the numbers that the model looks for: a level for each skill and a weight for
// each feature that some item has, with what every item holds of each.
type columns struct {
	skills  []standards.SkillID
	weights []standards.Weight
	rows    [][]float64 // by item: skills first
}

func columnsOf(items []results.Item) columns {
	var c columns
	traits := make([]task.Traits, len(items))
	skills := map[standards.SkillID]bool{}
	for i, item := range items {
		traits[i], skills[item.Skill] = traitsOf(item), true
	}
	c.skills = slices.Sorted(maps.Keys(skills))
	for _, weight := range standards.Weights() {
		if slices.ContainsFunc(traits, func(ts task.Traits) bool { return weight.Amount(ts) != 0 }) {
			c.weights = append(c.weights, weight)
		}
	}
	for i, item := range items {
		row := make([]float64, 0, len(c.skills)+len(c.weights))
		for _, skill := range c.skills {
			row = append(row, amount(item.Skill == skill))
		}
		for _, weight := range c.weights {
			row = append(row, weight.Amount(traits[i]))
		}
		c.rows = append(c.rows, row)
	}
	return c
}

// defaults are the columns' numbers in the default table, in logits.
func (c columns) defaults() (list []float64) {
	for _, skill := range c.skills {
		list = append(list, levelOf(skill))
	}
	for _, weight := range c.weights {
		list = append(list, weight.Logits)
	}
	return list
}

// answers counts those to items that have something of the column.
func (c columns) answers(column int, fit *evidence.Fit) (sum int) {
	for i, row := range c.rows {
		if row[column] != 0 {
			sum += fit.Items[i].Answers
		}
	}
	return sum
}

// levelOf is the difficulty of the skill's easiest tasks, in logits on the scale of all grades.
func levelOf(skill standards.SkillID) float64 {
	return standards.OnScale(skill, bank.LevelOf(skill)).Logits()
}

// usualOf is where the pupils of the skill's own grade stand on that scale.
func usualOf(skill standards.SkillID) float64 {
	return standards.Level(standards.GradeOf(skill)).Logits()
}

// traitsOf are those of the item's task; those of an item by hand are the usual ones of its
// skill, from which it is predicted.
func traitsOf(it results.Item) task.Traits {
	if asked, ok := it.Task(); ok {
		return asked.Traits()
	}
	return standards.Usual(it.Skill)
}

func amount(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}
