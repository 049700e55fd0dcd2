package generate

import (
	"iter"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Possible says how many items of a skill can have the wished traits.
type Possible struct {
	Distinct      int // items: 47 + 36 and 36 + 47 are one
	Presentations int // ways to show them: 47 + 36 and 36 + 47 are two
}

// ofSkill is the tasks of the space that the catalogue gives to the skill.
func (s space) ofSkill(skill standards.SkillID) iter.Seq[task.Task] {
	return func(yield func(task.Task) bool) {
		for i := range s.size {
			asked := s.at(i)
			if asked != nil && standards.SkillOf(asked) == skill && !yield(asked) {
				return
			}
		}
	}
}

func fits(asked task.Task, where standards.Where) bool {
	return len(where) == 0 || where.Holds(asked.Traits())
}
