package standards

import (
	"sync"

	"evenhand/standards/task"
)

// Usual is the traits of a usual task of the skill, which are those of its example. An item
// whose mathematics isn't understood is as difficult as they make it: the skill's Base alone is
// the difficulty of no task that there is. They are empty for an unknown skill.
func Usual(skill SkillID) task.Traits { return usual()[skill] }

var usual = sync.OnceValue(func() map[SkillID]task.Traits {
	traits := make(map[SkillID]task.Traits, len(catalogue))
	for _, skill := range catalogue {
		traits[skill.ID] = task.MustParse(skill.Example).Traits()
	}
	return traits
})
