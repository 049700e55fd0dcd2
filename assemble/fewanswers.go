package assemble

import (
	"fmt"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/standards"
	"evenhand/standards/task"
)

// answer is one of the few that all items of a skill offer, such as <, = and >,
// and how many items of a form may have it.
type answer struct {
	skill standards.SkillID
	key   string
	most  int
}

// Name says which items the rule counts.
func (a answer) Name() string { return fmt.Sprintf("%s items whose answer is %s", a.skill, a.key) }

// fewAnswers lists what all items of a skill offer, if it is the same for all.
func fewAnswers(skill standards.SkillID) []string {
	s, ok := standards.Catalogue().Skill(skill)
	if !ok {
		return nil
	}
	return task.FixedAnswers(task.MustParse(s.Example))
}

// answersOf lists the answers that a form of the plan may hold too often: of n items
// that offer the same few, two thirds, rounded up, may have the same, so that
// ticking one thing throughout earns no more.
func answersOf(p plan.Plan) (list []answer) {
	for _, skill := range p.Skills() {
		n := asked(p, skill)
		if most := (2*n + 2) / 3; most < n {
			for _, key := range fewAnswers(skill) {
				list = append(list, answer{skill, key, most})
			}
		}
	}
	return list
}

// offersFewIn lists the skills of the plan whose items offer the same few answers.
func offersFewIn(p plan.Plan) map[standards.SkillID]bool {
	few := map[standards.SkillID]bool{}
	for _, skill := range p.Skills() {
		few[skill] = fewAnswers(skill) != nil
	}
	return few
}

// asked is how many items of a skill a form holds.
func asked(p plan.Plan, skill standards.SkillID) int {
	n := 0
	for _, r := range p.Rows {
		if r.Skill == skill {
			n += r.Count
		}
	}
	return n
}

// answerQuotas are the rules about answers; they stand behind those of the bands
// and of the quotas of the plan.
func (p *problem) answerQuotas() (quotas []search.Quota) {
	for _, a := range p.answers {
		q := search.Quota{Name: a.Name(), AtMost: a.most}
		for i, row := range p.plan.Rows {
			if row.Skill == a.skill {
				q.TwoThirdsOf = append(q.TwoThirdsOf, i)
			}
		}
		quotas = append(quotas, q)
	}
	return quotas
}

// answerQuota is the number of the quota that an item counts in by its answer, or −1.
func (p *problem) answerQuota(skill standards.SkillID, key string) int {
	at := slices.IndexFunc(p.answers, func(a answer) bool { return a.skill == skill && a.key == key })
	if at < 0 {
		return -1
	}
	return len(p.plan.Bands) + len(p.plan.Quotas) + at
}

// answersKnown says that the rules about answers hold in the model also when a row's count changes so: where
// it holds at most two items of a skill there are none.
func (p *problem) answersKnown(w search.Way) bool {
	if w.Kind != search.RowCount || w.To < w.From || !p.offersFew[p.plan.Rows[w.Index].Skill] {
		return true
	}
	return slices.ContainsFunc(p.answers, func(a answer) bool { return a.skill == p.plan.Rows[w.Index].Skill })
}
