package evidence

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// settledSpread is the relative change of a spread that no longer matters.
const settledSpread = 1e-3

// refine brings the deviation sd and the lean up to the present fit, and says whether that
// was a move worth another climb. Items held to their traits, or all on their own, have no
// spread to look for.
func (m *model) refine(s settings, e *expectation) bool {
	if m.deviationSD == 0 || math.IsInf(m.deviationSD, 1) {
		return false
	}
	sdBefore, leanBefore := m.deviationSD, m.lean
	if !math.IsInf(m.belief.DeviationItems, 1) {
		m.deviationSD = m.likeliestDeviation(s, e)
	}
	m.lean = m.leanAt(s, e)
	moved := math.Abs(m.lean-leanBefore) / (1 + 2*m.pupils)
	return moved > settledSpread || math.Abs(math.Log(m.deviationSD/sdBefore)) > settledSpread
}

// leanAt is a slope by log ability sd that the items' deviations add because they are in
// doubt themselves. Integrating over them takes ½ Σ log(1 + sd² Iᵢ) off the log-likelihood
// (Laplace's approximation, as in lme4: Bates et al. 2015, J. Stat. Software 67), with Iᵢ
// the item's information, which falls when ability spreads. Without this slope the ability
// sd comes out some percent too small when items have few answers. It moves slowly, so it
// is taken between climbs, from a small change, and held during one.
func (m *model) leanAt(s settings, e *expectation) (slope float64) {
	const change = 1e-3
	s.logSD += change
	wider := m.expect(s, false)
	for i, info := range e.itemInfo {
		slope -= (wider.itemInfo[i] - info) / change / (info + precision(m.deviationSD)) / 2
	}
	return slope
}

// measured is what the papers say about the items' deviations, at the present fit: like one
// measurement y = u + slope/information of each, with variance 1/information.
type measured struct {
	squares, noise []float64
	traits         [][]float64 // only those with a belief about their weight
	weights        []float64   // 1/SE² of these beliefs
	belief         Belief
}

func (m *model) likeliestDeviation(s settings, e *expectation) float64 {
	d := measured{belief: m.belief}
	for _, w := range m.belief.Weights {
		if !math.IsInf(w.SE, 1) {
			d.weights = append(d.weights, precision(w.SE))
		}
	}
	for i, answers := range m.papers.answered {
		if answers > 0 {
			info := e.itemInfo[i] - e.itemLost[i]
			y := s.deviations[i] + e.itemSlope[i]/info
			d.squares, d.noise = append(d.squares, y*y), append(d.noise, 1/info)
			d.traits = append(d.traits, m.believedTraits(i))
		}
	}
	if len(d.squares) == 0 {
		return m.deviationSD
	}
	return d.likeliestSD()
}

func (m *model) believedTraits(i int) (row []float64) {
	for k, w := range m.belief.Weights {
		if !math.IsInf(w.SE, 1) {
			row = append(row, m.traits[i][k])
		}
	}
	return row
}

// likeliestSD halves the range of log variances until the likelihood's slope is 0.
func (d measured) likeliestSD() float64 {
	low, high := math.Log(1e-6), math.Log(1e4)
	for range 40 {
		middle := (low + high) / 2
		if d.slope(math.Exp(middle)) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Exp((low + high) / 4)
}

// slope is twice the derivative of the log-likelihood by the deviations' variance v: each
// measurement is normal with variance v + noise, and the belief counts as further items.
// Weights with a belief are integrated over, which adds the trace of A⁻¹ X'(v+noise)⁻²X with
// A = X'(v+noise)⁻¹X + belief (Patterson & Thompson 1971, Biometrika 58: restricted maximum
// likelihood, when the belief is weak). Weights without one are taken at their best, as
// maximum likelihood does.
func (d measured) slope(v float64) float64 {
	sd := d.belief.DeviationSD
	slope := d.belief.DeviationItems * (sd*sd/v - 1) / v
	k := len(d.weights)
	known, turn := mat.NewSymDense(max(k, 1), nil), mat.NewSymDense(max(k, 1), nil)
	for i, square := range d.squares {
		all := v + d.noise[i]
		slope += (square/all - 1) / all
		if k > 0 {
			row := mat.NewVecDense(k, d.traits[i])
			known.SymRankOne(known, 1/all, row)
			turn.SymRankOne(turn, 1/(all*all), row)
		}
	}
	return slope + d.trace(known, turn)
}

// trace is that of (known + belief)⁻¹ turn.
func (d measured) trace(known, turn *mat.SymDense) (sum float64) {
	for l, w := range d.weights {
		known.SetSym(l, l, known.At(l, l)+math.Min(w, pinned))
	}
	var factor mat.Cholesky
	if len(d.weights) == 0 || !factor.Factorize(known) {
		return 0
	}
	var solved mat.Dense
	if factor.SolveTo(&solved, turn) != nil {
		return 0
	}
	return mat.Trace(&solved)
}
