package standards

import "evenhand/standards/task"

// ByHandIn is the difficulty that the catalogue of a number predicts for an item by hand of the
// skill. Up to number 4 that was the level of the skill, without any trait.
func ByHandIn(number int, skill SkillID) Difficulty {
	if number > 4 {
		return Predict(skill, Usual(skill))
	}
	for i, levels := range []map[SkillID]Difficulty{levels1, levels3, levels3, levels4} {
		if level, other := levels[skill]; other && number <= i+1 {
			return level
		}
	}
	return Predict(skill, task.Traits{})
}

// levels4 is the levels of catalogue 4 that are others since.
var levels4 = map[SkillID]Difficulty{
	"add-several":      -2400,
	"add-and-subtract": -1900,
}

// levels3 is the levels of catalogues 2 and 3 that are others since.
var levels3 = map[SkillID]Difficulty{
	"compare-groups":     -1900,
	"make-ten":           -2600,
	"pictures-of-sums":   -2400,
	"count-to-add":       -2500,
	"stories-within-10":  -2100,
	"length-stories":     -1800,
	"money-stories":      -1800,
	"two-step-stories":   -1100,
	"stories-within-100": -2000,
	"turn-around":        -2900,
	"balance-larger":     -1500,
	"add-ones":           -2400,
	"add-two-digit":      -2100,
	"add-past-100":       -1900,
	"add-several":        -2200,
	"add-within-1000":    -2200,
	"tens-and-ones":      -2200,
	"count-by-steps":     -2100,
	"add-larger":         -3000,
	"jump-number-line":   -1900,
}

// levels1 is the levels of catalogue 1.
var levels1 = map[SkillID]Difficulty{
	"count-dots":            -2300,
	"compare-groups":        -2400,
	"write-to-20":           -2000,
	"number-pairs":          -1500,
	"make-ten":              -1900,
	"subtract-tens":         -1500,
	"stories-within-10":     -1600,
	"length-stories":        -1100,
	"money-stories":         -1100,
	"two-step-stories":      -700,
	"stories-within-20":     -1500,
	"stories-within-100":    -1300,
	"facts-within-20":       -2200,
	"three-addends":         -1500,
	"missing-number":        -1700,
	"related-facts":         -1500,
	"true-or-false":         -1300,
	"turn-around":           -1400,
	"balance":               -900,
	"balance-larger":        -900,
	"missing-number-larger": -1400,
	"add-ones":              -1900,
	"add-tens":              -1700,
	"add-two-digit":         -1500,
	"add-past-100":          -1300,
	"expanded-form":         -1400,
	"add-several":           -1200,
	"add-within-1000":       -1500,
	"subtract-two-digit":    -1500,
	"subtract-regrouping":   -1500,
	"subtract-within-1000":  -1500,
	"add-and-subtract":      -1300,
	"tens-and-ones":         -1900,
	"hundreds-tens-ones":    -1500,
	"compare-within-10":     -2300,
	"compare-two-digit":     -1800,
	"compare-three-digit":   -1800,
	"count-on":              -1700,
	"count-by-steps":        -1500,
	"write-to-120":          -1700,
	"write-to-1000":         -1500,
	"number-names":          -1000,
	"odd-or-even":           -1800,
	"small-arrays":          -1700,
	"ten-more-less":         -1500,
	"hundred-more-less":     -1600,
	"count-coins":           -1300,
	"match-clocks":          -2000,
	"clock-hour":            -2000,
	"clock-half-hour":       -2000,
	"clock-quarter-hour":    -2000,
	"clock-five-minutes":    -2000,
}
