package evidence_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"evenhand/bank/evidence"
)

func TestAbility(t *testing.T) {
	difficulties := []float64{-1.5, -1, -0.4, 0, 0.2, 0.9, 1.6}
	for right := range len(difficulties) + 1 {
		// Bayes' rule, integrated by gonum's Legendre rule instead of ours.
		chance := func(theta float64) float64 {
			p := math.Exp(float64(right)*theta - (theta-0.5)*(theta-0.5)/(2*1.2*1.2))
			for _, b := range difficulties {
				p /= 1 + math.Exp(theta-b)
			}
			return p
		}
		power := func(k int) float64 {
			return quad.Fixed(func(x float64) float64 { return math.Pow(x, float64(k)) * chance(x) }, -12, 12, 400, nil, 0)
		}
		mean := power(1) / power(0)
		got := evidence.Ability(difficulties, right, 0.5, 1.2)
		near(t, "ability", got.Value, mean, 1e-6)
		near(t, "its standard error", got.SE, math.Sqrt(power(2)/power(0)-mean*mean), 1e-6)
	}
	nothing := evidence.Ability(nil, 0, 0.5, 1.2)
	near(t, "ability without a paper", nothing.Value, 0.5, 1e-9)
	near(t, "its standard error", nothing.SE, 1.2, 1e-9)
}

// The intervals of pupils' abilities hold the truth as often as they say.
func TestAbilityIntervals(t *testing.T) {
	var c coverage
	w := newWorld(13, 10)
	all := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}
	for range 4000 {
		ability := w.abilitySD * w.rng.NormFloat64()
		right := 0
		for _, ok := range w.sit(ability, all, nil).Right {
			if ok {
				right++
			}
		}
		c.count(evidence.Ability(w.difficulty, right, 0, w.abilitySD), ability)
	}
	c.check(t, "abilities")
}
