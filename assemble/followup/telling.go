package followup

import (
	"slices"
	"strconv"
	"sync"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// canShow says that a wrong answer to the task can show one of the missteps.
func canShow(asked task.Task, kinds []*task.MisstepKind) bool {
	return slices.ContainsFunc(asked.Missteps(), func(m task.Misstep) bool {
		return slices.ContainsFunc(m.Kinds, func(kind *task.MisstepKind) bool { return slices.Contains(kinds, kind) })
	})
}

// A condition on a trait is found on so many items of a skill. It is worth having where it keeps at least such a
// share of those in which the misstep can show, and hardly any others.
const (
	tellingSample = 200
	leastKept     = 0.2
	mostOthers    = 0.05
)

// sample is made once for each skill: what is possible in it.
var sample sync.Map // standards.SkillID to []task.Task

func sampleOf(skill standards.SkillID) []task.Task {
	if tasks, ok := sample.Load(skill); ok {
		return tasks.([]task.Task)
	}
	made, err := generate.Make(generate.Request{Skill: skill, Count: tellingSample, Seed: 1})
	if err != nil {
		return nil // a skill of a colleague's own, for items by hand
	}
	sample.Store(skill, made.Tasks)
	return made.Tasks
}

// telling is a condition on the traits of a skill's items under which one of the missteps can nearly always
// show: regroups >= 1 for the new ten that is dropped. It is the one that leaves most such items; empty
// where the misstep shows in all of them, or no single trait tells.
func telling(skill standards.SkillID, kinds []*task.MisstepKind) standards.Where {
	if len(kinds) == 0 {
		return nil
	}
	var shows, not []task.Traits
	for _, asked := range sampleOf(skill) {
		if canShow(asked, kinds) {
			shows = append(shows, asked.Traits())
		} else {
			not = append(not, asked.Traits())
		}
	}
	if len(not) == 0 || len(shows) == 0 {
		return nil
	}
	best, most := standards.Condition{}, int(leastKept*float64(len(shows)))
	for _, c := range conditions(shows) {
		kept, others := holding(shows, c), holding(not, c)
		if kept > most && float64(others) <= mostOthers*float64(kept+others) {
			best, most = c, kept
		}
	}
	if best.Value == "" {
		return nil
	}
	return standards.Where{best}
}

func holding(all []task.Traits, c standards.Condition) (n int) {
	for _, traits := range all {
		if c.Holds(traits) {
			n++
		}
	}
	return n
}

// conditions are those that hold for some of the traits, the plainest first.
func conditions(seen []task.Traits) (list []standards.Condition) {
	for _, trait := range task.AllTraits() {
		var values []string
		for _, traits := range seen {
			if value := traits.Get(trait); value != "" && !slices.Contains(values, value) {
				values = append(values, value)
			}
		}
		slices.Sort(values)
		for _, value := range values {
			if _, err := strconv.Atoi(value); err == nil {
				list = append(list, standards.Condition{Trait: trait, Op: ">=", Value: value}, standards.Condition{Trait: trait, Op: "<=", Value: value})
			}
			list = append(list, standards.Condition{Trait: trait, Op: "=", Value: value})
		}
	}
	return list
}
