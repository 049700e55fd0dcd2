package assemble

import (
	"math"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards"
)

// abilityFor is how able the typical pupil of a quiz is, in thousandths of a logit on
// the one scale of standards.Level: what the options say of the class, else what is
// usual in the grade that the plan is for.
func abilityFor(p plan.Plan, o Options) int {
	if o.Ability != nil {
		return *o.Ability
	}
	return int(standards.Level(p.ForGrade()))
}

// apartOfPupils is how much weaker or stronger than the typical pupil the other
// two are for whom the forms are compared, in thousandths of a logit.
const apartOfPupils = 1000

// expected is what a weaker, a typical and a stronger pupil can expect of an item
// that has a difficulty for the typical one, in whole thousandths of a point, half
// up: 1000 / (1 + exp((d − θ) / 1000)). (The model of Rasch, 1960.)
func expected(d standards.Difficulty) search.Points {
	var p search.Points
	for t := range p {
		theta := apartOfPupils * (t - 1)
		p[t] = int(math.Floor(1000/(1+math.Exp(float64(int(d)-theta)/1000)) + 0.5))
	}
	return p
}

// Difficulty is the difficulty of an item for a typical one of the pupils that the quiz is for.
func (q Quiz) Difficulty(it bank.Item) standards.Difficulty { return difficultyFor(it, q.Ability) }

// difficultyFor is the difficulty of an item for a typical pupil of an ability.
func difficultyFor(it bank.Item, ability int) standards.Difficulty {
	return it.Difficulty().For(it.Skill, standards.Difficulty(ability))
}
