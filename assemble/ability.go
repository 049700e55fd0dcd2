package assemble

import (
	"math"

	"evenhand/assemble/search"
	"evenhand/standards"
)

// ability is how able the typical pupil of a quiz is, in thousandths of a logit:
// what the options say of the class, else the usual level of the grade. The table
// of difficulty has one level for all grades so far, 0.
func ability(o Options) int {
	if o.Ability != nil {
		return *o.Ability
	}
	return 0
}

// apartOfPupils is how much weaker or stronger than the typical pupil the other
// two are for whom the forms are compared, in thousandths of a logit.
const apartOfPupils = 1000

// expected is what a weaker, a typical and a stronger pupil can expect of an item
// of a difficulty, in whole thousandths of a point, half up:
// 1000 / (1 + exp((d − θ) / 1000)). (The model of Rasch, 1960.)
func expected(d standards.Difficulty, ability int) search.Points {
	var p search.Points
	for t := range p {
		theta := ability + apartOfPupils*(t-1)
		p[t] = int(math.Floor(1000/(1+math.Exp(float64(int(d)-theta)/1000)) + 0.5))
	}
	return p
}

// bandFor is the band of a difficulty for pupils of an ability.
func bandFor(d standards.Difficulty, ability int) standards.Band {
	return (d - standards.Difficulty(ability)).Band()
}
