package evidence_test

import (
	"math"
	"testing"

	"evenhand/bank/evidence"
)

func lsat6(t testing.TB) *evidence.Papers {
	papers := evidence.NewPapers(5)
	for _, row := range published(t, "lsat6.csv") {
		paper := evidence.Paper{Items: []int{0, 1, 2, 3, 4}}
		for _, cell := range row[:5] {
			paper.Right = append(paper.Right, cell == "1")
		}
		if count := number(t, row[5]); count > 0 {
			if err := papers.AddAlike(count, 0, paper); err != nil {
				t.Fatal(err)
			}
		}
	}
	return papers
}

// The test with one common slope, said in three ways: each item on its own; five traits, one
// an item, that items follow exactly; and with the ability's spread held at the printed one.
func TestLSAT6MarginalLikelihood(t *testing.T) {
	own := evidence.NoBelief(0)
	own.DeviationSD, own.DeviationItems = math.Inf(1), math.Inf(1)
	follow := evidence.NoBelief(5)
	follow.DeviationSD = 0
	held := own
	held.AbilitySD, held.AbilityPupils = 0.7551, math.Inf(1)
	each := [][]float64{{1, 0, 0, 0, 0}, {0, 1, 0, 0, 0}, {0, 0, 1, 0, 0}, {0, 0, 0, 1, 0}, {0, 0, 0, 0, 1}}
	for name, c := range map[string]struct {
		belief evidence.Belief
		traits [][]float64
	}{"own": {own, make([][]float64, 5)}, "traits": {follow, each}, "held": {held, make([][]float64, 5)}} {
		fit, err := evidence.Difficulty(lsat6(t), c.traits, c.belief, nil)
		if err != nil {
			t.Fatal(err)
		}
		// Rizopoulos (2006), J. Stat. Software 17(5), LSAT data, one common slope, as printed
		// there (ability sd 1) and turned into the metric with slope 1.
		slope := 0.7551
		printed := []float64{-3.6153, -1.3224, -0.3176, -1.7301, -2.7802}
		metric := []float64{-2.7300, -0.9986, -0.2399, -1.3064, -2.0994}
		near(t, name+": ability sd", fit.AbilitySD, slope, 0.005)
		near(t, name+": log-likelihood", fit.LogLikelihood, -2466.938, 0.005)
		for i, item := range fit.Items {
			near(t, name+": difficulty", item.Value, metric[i], 0.005)
			near(t, name+": difficulty, ability sd 1", item.Value/fit.AbilitySD, printed[i], 0.005)
		}
	}
}
