package evidence

import (
	"math"
	"testing"
)

// The lean is the slope, by log ability sd, of what integrating over the items' deviations adds to the
// log-likelihood: -½ Σ log(1 + sd² Iᵢ), Laplace's approximation (Bates, Mächler, Bolker & Walker 2015,
// Journal of Statistical Software 67(1)). Here that sum is worked out on both sides of the spread.
func TestLeanIsTheSlopeOfLaplacesTerm(t *testing.T) {
	papers := NewPapers(3)
	for _, line := range [][]bool{{true, true, false}, {true, false, false}, {false, false, false}, {true, true, true}, {false, true, false}} {
		if err := papers.AddAlike(4, 0, Paper{Items: []int{0, 1, 2}, Right: line}); err != nil {
			t.Fatal(err)
		}
	}
	m := newModel(papers, [][]float64{{1}, {1}, {1}}, Belief{Weights: []Estimate{{0, 2}}, DeviationSD: 0.7})
	s := settings{weights: []float64{-0.4}, deviations: []float64{-1, 0, 1}, means: make([]float64, papers.groups), logSD: 0.1}
	term := func(logSD float64) (sum float64) {
		s := s
		s.logSD = logSD
		for _, info := range m.expect(s, false).itemInfo {
			sum -= math.Log(1+0.7*0.7*info) / 2
		}
		return sum
	}
	const step = 0.05
	want := (term(s.logSD+step) - term(s.logSD-step)) / (2 * step)
	if got := m.leanAt(s, m.expect(s, false)); math.Abs(got-want) > 0.02*math.Abs(want) {
		t.Errorf("the lean is %.5f, the slope %.5f", got, want)
	}
}
