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

// Count counts exactly, by going through all of them: in about two seconds for the
// largest space, sums of three and four numbers, and in well under one for the others.
func Count(skill standards.SkillID, where standards.Where) (Possible, error) {
	var p Possible
	all, err := spaceOf(skill)
	if err != nil {
		return p, err
	}
	for asked := range all.ofSkill(skill) {
		if fits(asked, where) {
			p.Distinct++
			p.Presentations += ways(asked)
		}
	}
	return p, nil
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
