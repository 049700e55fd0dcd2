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

func TestLSAT6MarginalLikelihood(t *testing.T) {
	belief := evidence.NoBelief(0)
	belief.DeviationSD, belief.DeviationItems = math.Inf(1), math.Inf(1)
	fit, err := evidence.Difficulty(lsat6(t), make([][]float64, 5), belief, nil)
	if err != nil {
		t.Fatal(err)
	}
	// Rizopoulos (2006), J. Stat. Software 17(5), LSAT data, one common slope, as printed
	// there (ability sd 1) and turned into the metric with slope 1.
	slope := 0.7551
	printed := []float64{-3.6153, -1.3224, -0.3176, -1.7301, -2.7802}
	metric := []float64{-2.7300, -0.9986, -0.2399, -1.3064, -2.0994}
	near(t, "ability sd", fit.AbilitySD, slope, 0.005)
	near(t, "log-likelihood", fit.LogLikelihood, -2466.938, 0.005)
	for i, item := range fit.Items {
		near(t, "difficulty", item.Value, metric[i], 0.005)
		near(t, "difficulty, ability sd 1", item.Value/fit.AbilitySD, printed[i], 0.005)
	}
}
