package report

import "evenhand/standards"

// Recent is how a pupil did on the last weeks' papers, in all and by skill.
func (p Pupil) Recent() (all Part, bySkill map[standards.SkillID]Part) {
	bySkill = map[standards.SkillID]Part{}
	for _, a := range p.recent {
		all.add(a.right)
		part := bySkill[a.skill]
		part.add(a.right)
		bySkill[a.skill] = part
	}
	return all, bySkill
}
