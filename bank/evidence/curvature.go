package evidence

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// errTraits is returned when the weights have no single best value.
var errTraits = errors.New("some traits can't be told apart in these papers: leave one out, or say what is believed about its weight")

// curvature is the curvature of the log-likelihood if abilities were known, less that of the
// belief. Weights and deviations hang together (each item's difficulty is a sum of both), but
// deviations only through the weights, so they are solved for one by one: an arrow matrix.
type curvature struct {
	m       *model
	info    []float64 // by item
	prior   float64   // 1/deviationSD²
	weights mat.Cholesky
	means   []float64
	logSD   float64
}

func (m *model) curvature(s settings, e *expectation) (*curvature, error) {
	c := &curvature{m: m, info: e.itemInfo, prior: precision(m.deviationSD), means: make([]float64, len(s.means))}
	for g, pupils := range m.groupPupils {
		c.means[g] = pupils*precision(s.sd()) + precision(m.belief.ClassSD)
	}
	c.logSD = 2 * m.pupils
	if !math.IsInf(m.belief.AbilityPupils, 1) {
		c.logSD += 2 * m.belief.AbilityPupils * squareOver(m.belief.AbilitySD, s.sd())
	}
	return c, c.factor()
}

// factor prepares the weights' part with the deviations solved for: X'CX + prior, where C
// is each item's information shared between the papers and the spread of deviations.
func (c *curvature) factor() error {
	k := len(c.m.belief.Weights)
	if k == 0 {
		return nil
	}
	sum := mat.NewSymDense(k, nil)
	for l, w := range c.m.belief.Weights {
		sum.SetSym(l, l, precision(w.SE))
	}
	for i, row := range c.m.traits {
		if share := c.throughWeights(i); share > 0 {
			sum.SymRankOne(sum, share, mat.NewVecDense(k, row))
		}
	}
	if !c.weights.Factorize(sum) || c.weights.Cond() > 1e13 {
		return errTraits
	}
	return nil
}

// throughWeights is info·prior/(info+prior), also when one of them is infinite.
func (c *curvature) throughWeights(i int) float64 {
	if math.IsInf(c.prior, 1) {
		return c.info[i]
	}
	return c.info[i] * c.held(i)
}

// held is the share of an item's difficulty that the belief about deviations holds on to:
// prior/(info+prior), and 0 for an item nothing is known of.
func (c *curvature) held(i int) float64 {
	switch {
	case math.IsInf(c.prior, 1):
		return 1
	case c.prior == 0:
		return 0
	}
	return c.prior / (c.info[i] + c.prior)
}

// variance is the variance an item's deviation has left when the weights are known.
func (c *curvature) variance(i int) float64 { return 1 / (c.info[i] + c.prior) }

// divide solves curvature × direction = slope.
func (c *curvature) divide(slope settings) settings {
	d := settings{
		weights: make([]float64, len(slope.weights)), deviations: make([]float64, len(slope.deviations)),
		means: c.divideMeans(slope.means),
	}
	if c.logSD > 0 {
		d.logSD = slope.logSD / c.logSD
	}
	if k := len(d.weights); k > 0 {
		right := append([]float64(nil), slope.weights...)
		for i, row := range c.m.traits {
			floats.AddScaled(right, -(1-c.held(i))*slope.deviations[i], row)
		}
		// Factorize has made sure of the condition; SolveVecTo has nothing else to complain of.
		_ = c.weights.SolveVecTo(mat.NewVecDense(k, d.weights), mat.NewVecDense(k, right))
	}
	for i, row := range c.m.traits {
		if c.info[i]+c.prior == 0 || math.IsInf(c.prior, 1) {
			continue
		}
		shift := 0.0
		for k, x := range row {
			shift += x * d.weights[k]
		}
		d.deviations[i] = slope.deviations[i]*c.variance(i) - (1-c.held(i))*shift
	}
	return d
}

// divideMeans moves the groups' means so that the mean over all pupils stays at 0.
func (c *curvature) divideMeans(slope []float64) []float64 {
	d := make([]float64, len(slope))
	over, under := 0.0, 0.0
	for g, pupils := range c.m.groupPupils {
		if pupils > 0 {
			d[g] = slope[g] / c.means[g]
			over += pupils * d[g]
			under += pupils * pupils / c.means[g]
		}
	}
	for g, pupils := range c.m.groupPupils {
		if pupils > 0 {
			d[g] -= over / under * pupils / c.means[g]
		}
	}
	return d
}
