package assemble

import (
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
)

// Offered counts, for each row of the plan, the bank's ready items that may fill it in the week: of its
// skill, with its traits, not resting. Items that fit several rows count in each.
func Offered(b *bank.Bank, plan plan.Plan, week string) ([]int, error) {
	p, err := newProblem(b, plan, Options{Week: week})
	if err != nil {
		return nil, err
	}
	counts := make([]int, len(plan.Rows))
	var skills []standards.SkillID
	for _, row := range plan.Rows {
		skills = append(skills, row.Skill)
	}
	if len(skills) == 0 {
		return counts, nil
	}
	for group, err := range b.Groups(skills...) {
		if err != nil {
			return nil, err
		}
		if p.rests(group.LastWeek) {
			continue
		}
		for _, fit := range p.fits(group) {
			counts[fit.row] += group.Size
		}
	}
	return counts, nil
}
