package lp

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// Multipliers gives the row multipliers of the present basis, in the scale of
// the rows, as Certify takes them.
func (s *Program) Multipliers() []float64 { return s.ws.y }

// Ray gives the multipliers that prove the program infeasible, after Solve said so.
func (s *Program) Ray() []float64 { return s.ws.rho }

// Basic gives the number of basic variables, and Variable the one in a
// position with its value: column j as j, the slack of row i as ^i.
func (s *Program) Basic() int { return len(s.basic) }

// Variable is described with Basic.
func (s *Program) Variable(position int) (v int32, x float64) {
	return s.basic[position], s.xb[position]
}

// Slack says whether row i is slack at present: then it may be dropped.
func (s *Program) Slack(i int) bool { return s.Rows[i].at >= 0 }

// Restart goes back to the basis of slacks.
func (s *Program) Restart() {
	m := len(s.Rows)
	for j := range s.Cols {
		s.Cols[j].at = -1
	}
	s.inv = make([]float64, m*m)
	for i := range m {
		s.Rows[i].at, s.basic[i], s.inv[i*m+i] = int32(i), ^int32(i), -1
	}
	s.since = 0
}

// Basis is a basis to go back to.
type Basis struct {
	basic []int32
	inv   []float64
	since int
	drops int
}

// Keep makes it the present one of a program.
func (b *Basis) Keep(s *Program) {
	b.basic, b.inv = append(b.basic[:0], s.basic...), append(b.inv[:0], s.inv...)
	b.since, b.drops = s.since, s.drops
}

// GoBack takes up a basis again; of rows added since, the slacks come into it. Where rows were dropped it does nothing.
func (s *Program) GoBack(b *Basis) {
	if b.drops != s.drops {
		return
	}
	for j := range s.Cols {
		s.Cols[j].at = -1
	}
	for i := range s.Rows {
		s.Rows[i].at = -1
	}
	old, m := len(b.basic), len(s.Rows)
	for k := range s.basic {
		v := ^int32(k)
		if k < old {
			v = b.basic[k]
		}
		s.basic[k] = v
		if v >= 0 {
			s.Cols[v].at = int32(k)
		} else {
			s.Rows[^v].at = int32(k)
		}
	}
	if s.since = b.since; old == m {
		copy(s.inv, b.inv)
		return
	}
	clear(s.inv)
	for k := old; k < m; k++ {
		s.inv[k*m+k] = -1
	}
	for k := range old {
		row := s.inv[k*m : (k+1)*m]
		copy(row, b.inv[k*old:(k+1)*old])
		if v := b.basic[k]; v >= 0 {
			for _, e := range s.Cols[v].Entries {
				if int(e.Row) >= old {
					floats.AddScaled(s.inv[int(e.Row)*m:int(e.Row)*m+m], float64(e.Val)*s.Rows[e.Row].scale, row)
				}
			}
		}
	}
}

// Penalties gives the rise of the objective by unit step down and up of the
// variable in a basis position, until the next basis.
func (s *Program) Penalties(position int) (down, up float64) {
	m := len(s.Rows)
	inv := s.inv[position*m : (position+1)*m]
	rho := s.Scaled(inv)
	down, up = math.Inf(1), math.Inf(1)
	meet := func(alpha, d float64, upper bool) {
		switch ratio := math.Abs(d / alpha); {
		case math.Abs(alpha) < dualTol:
		case (alpha > 0) != upper: // rises from its bound: the basic variable falls
			down = min(down, ratio)
		default:
			up = min(up, ratio)
		}
	}
	for j := range s.Cols {
		if c := &s.Cols[j]; c.at < 0 && c.Lo != c.Up {
			meet(dot(c.Entries, rho), c.d, c.upper)
		}
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.at < 0 && r.Lo != r.Up {
			meet(-inv[i], s.ws.y[i], r.upper)
		}
	}
	return down, up
}
