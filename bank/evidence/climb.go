package evidence

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/floats"
)

const (
	settled   = 1e-7  // log-likelihood still to gain at which the climb stops,
	exactness = 1e-12 // or this share of it: beyond, sums of millions of papers are rounding
	recalled  = 12    // steps whose turn of the slope is remembered
	mostSteps = 400   // a climb this long has met a flat top and is stopped with an error
)

// move is one step of the climb: where it went, and how the slope turned.
type move struct {
	step, turn settings
	product    float64
}

// climb finds the settings of greatest log-likelihood less penalty, for the deviation sd as
// it stands, from s, where e is the expectation. It is the limited-memory quasi-Newton
// method (Nocedal 1980, Mathematics of Computation 35), set off with the curvature of the EM
// algorithm's maximisation step in place of a multiple of one (Jamshidian & Jennrich 1997,
// J. Royal Stat. Soc. B 59), which is nearly right for items but far too steep for what all
// of them share.
func (m *model) climb(s settings, e *expectation, progress Progress) (settings, *expectation, error) {
	var moves []move
	height, slope := e.logLikelihood-m.penalty(s), m.slope(s, e)
	for range mostSteps {
		curve, err := m.curvature(s, e)
		if err != nil {
			return s, e, err
		}
		direction := direct(slope, moves, curve)
		gain := slope.dot(direction) / 2
		m.steps++
		progress(m.steps, gain)
		if gain < max(settled, exactness*math.Abs(height)) {
			return s, e, nil
		}
		next, nextE, nextHeight, ok := m.walk(s, direction, height, gain)
		if !ok && len(moves) == 0 {
			return s, e, nil
		}
		if !ok {
			moves = nil
			continue
		}
		nextSlope := m.slope(next, nextE)
		moves = remember(moves, next.minus(s), slope.minus(nextSlope))
		s, e, height, slope = next, nextE, nextHeight, nextSlope
	}
	return s, e, errors.New("the difficulties did not settle: add papers that share items between classes, or believe more firmly in the trait weights")
}

// walk goes along the direction, half as far each time until the ground is higher.
func (m *model) walk(s, direction settings, height, gain float64) (settings, *expectation, float64, bool) {
	for length := 1.0; length > 1e-6; length /= 2 {
		next := s.plus(direction, length)
		e := m.expect(next, false)
		if h := e.logLikelihood - m.penalty(next); h >= height+1e-4*length*gain {
			return next, e, h, true
		}
	}
	return s, nil, height, false
}

func remember(moves []move, step, turn settings) []move {
	product := step.dot(turn)
	if product <= 0 {
		return moves
	}
	moves = append(moves, move{step, turn, product})
	return moves[max(0, len(moves)-recalled):]
}

// direct turns the slope into a direction: Nocedal's two loops.
func direct(slope settings, moves []move, curve *curvature) settings {
	along := make([]float64, len(moves))
	for k := len(moves) - 1; k >= 0; k-- {
		along[k] = moves[k].step.dot(slope) / moves[k].product
		slope = slope.plus(moves[k].turn, -along[k])
	}
	direction := curve.divide(slope)
	for k, mv := range moves {
		back := mv.turn.dot(direction) / mv.product
		direction = direction.plus(mv.step, along[k]-back)
	}
	return direction
}

func (s settings) plus(d settings, length float64) settings {
	add := func(a, b []float64) []float64 {
		sum := append([]float64(nil), a...)
		floats.AddScaled(sum, length, b)
		return sum
	}
	return settings{add(s.weights, d.weights), add(s.deviations, d.deviations), add(s.means, d.means), s.logSD + length*d.logSD}
}

func (s settings) minus(d settings) settings { return s.plus(d, -1) }

func (s settings) dot(d settings) float64 {
	sum := s.logSD * d.logSD
	for _, pair := range [][2][]float64{{s.weights, d.weights}, {s.deviations, d.deviations}, {s.means, d.means}} {
		for k, v := range pair[0] {
			sum += v * pair[1][k]
		}
	}
	return sum
}
