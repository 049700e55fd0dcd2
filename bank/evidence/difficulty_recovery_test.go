package evidence_test

import (
	"fmt"
	"math"
	"testing"

	"evenhand/bank/evidence"
	"evenhand/testdata/outside"
)

// coverage counts how often a 95 % interval holds the truth.
type coverage struct{ held, all int }

func (c *coverage) count(e evidence.Estimate, truth float64) {
	c.all++
	if math.Abs(e.Value-truth) <= 1.959964*e.SE {
		c.held++
	}
}

func (c coverage) log(t *testing.T, what string) (share float64) {
	share = 100 * float64(c.held) / float64(c.all)
	t.Logf("%s: %.1f %% of %d intervals", what, share, c.all)
	return share
}

func (c coverage) check(t *testing.T, what string) {
	t.Helper()
	share := c.log(t, what)
	if share < 92 || share > 98 {
		t.Errorf("%s: 95 %% intervals hold the truth in %.1f %% of %d cases, want 92 to 98", what, share, c.all)
	}
}

// Known weights, difficulties, class means and spreads are found again, and the intervals
// are honest, whether the school is like the one the default table was made for or far off it:
// four classes, where each pupil sits 4 forms of 10 out of 8.
func TestRecovery(t *testing.T) {
	schools := 100
	switch {
	case outside.Longer():
		schools = 500
	case outside.Asked():
		schools = 200
	}
	for _, level := range []float64{-1.5, -1, 0, 1, 1.5} {
		t.Run(fmt.Sprintf("level %g", level), func(t *testing.T) { recovery(t, schools, level) })
	}
}

func recovery(t *testing.T, schools int, level float64) {
	var weights, items, beside, unused, classes, levels coverage
	abilitySD, deviationSD := 0.0, 0.0
	for seed := range schools {
		w := newWorld(uint64(seed), 90)
		w.level = level
		papers := w.school(t, 4, 25, 4, 10)
		fit, err := evidence.Difficulty(papers, w.traits, evidence.Usual(defaults), nil)
		if err != nil {
			t.Fatal(err)
		}
		for k, e := range fit.Weights {
			weights.count(e, w.weights[k])
		}
		for i, e := range fit.Items {
			items.count(e.Estimate, w.difficulty[i])
			beside.count(evidence.Estimate{Value: e.Value - fit.Level.Value, SE: e.Beside}, w.difficulty[i]-level)
		}
		for c, e := range fit.Classes {
			classes.count(e, w.classMean(c, 4))
		}
		levels.count(fit.Level, level)
		for i := 90; i < 100; i++ {
			w.addItem()
			unused.count(fit.Predict(w.traits[i]), w.difficulty[i])
		}
		abilitySD += fit.AbilitySD / float64(schools)
		deviationSD += fit.DeviationSD / float64(schools)
	}
	weights.check(t, "weights")
	items.check(t, "items")
	beside.check(t, "items beside the pupils")
	unused.check(t, "items never used")
	classes.check(t, "class means")
	levels.log(t, "level of the school")
	near(t, "mean ability sd", abilitySD, 1.1, 0.03)
	near(t, "mean deviation sd", deviationSD, 0.35, 0.03)
}

// A bank too large to count every link between items: 2,000 items, 1,000 pupils, a year.
func TestRecoveryWithoutLinks(t *testing.T) {
	var items coverage
	w := newWorld(7, 2000)
	belief := evidence.Usual(defaults)
	belief.Level = evidence.Estimate{} // one school is one draw of its level: look beside it
	fit, err := evidence.Difficulty(w.district(t, 2), w.traits, belief, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range fit.Items {
		items.count(e.Estimate, w.difficulty[i])
	}
	items.check(t, "items of a large bank")
	for k, e := range fit.Weights {
		near(t, "weight", e.Value, w.weights[k], 4*e.SE)
	}
	near(t, "ability sd", fit.AbilitySD, 1.1, 0.03)
}
