package evidence

import "math"

// NoBelief lets the papers speak alone: maximum likelihood, as general statistics programs
// report it.
func NoBelief(traits int) Belief {
	b := Belief{AbilitySD: 1, DeviationSD: 0.5, ClassSD: math.Inf(1)}
	for range traits {
		b.Weights = append(b.Weights, Estimate{0, math.Inf(1)})
	}
	return b
}
