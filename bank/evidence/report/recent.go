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

// MostlyRight says that the answers are enough to say so, and three in four or more of them right.
func (p Part) MostlyRight() bool {
	return p.Of >= leastSeen && float64(p.Right) >= mostly*float64(p.Of)
}

// Enough says that there are enough answers to say anything of a pupil.
func (p Part) Enough() bool { return p.Of >= leastSeen }
