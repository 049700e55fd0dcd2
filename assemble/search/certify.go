package search

import "math"

// none is a bound that no objective reaches: there is no solution at all.
const none = math.MaxInt

// certificate is a vector of row multipliers in whole numbers. For any
// multipliers y and any x with A·x = s,
//
//	c·x = (c − y·A)·x + y·s ≥ Σ_j min over the bounds of x_j + Σ_i min over the bounds of s_i,
//
// so the right side is a valid bound whatever rounding did to y. Here it is
// computed in whole numbers, in units of 2^−shift. (Safe bounds: Neumaier and
// Shcherbina, Mathematical Programming 99, 2004, from memory.)
type certificate struct {
	y     []int64
	shift int
	rows  int64 // Σ_i, the part of the slacks
	costs bool  // false: c counts as 0, and a positive bound proves infeasibility
}

// certify rounds floating multipliers, given in the scale of the rows, so that
// no sum over the columns can overflow; more is at least what columns outside
// the program can add.
func (s *simplex) certify(y []float64, costs bool, more float64) certificate {
	abs, total := make([]float64, len(y)), 1+more
	for i := range abs {
		r := &s.rows[i]
		abs[i] = math.Abs(y[i]) * r.scale
		total += (abs[i] + 1) * float64(max(-r.lo, r.up, r.lo, -r.up))
	}
	for j := range s.cols {
		c := &s.cols[j]
		t := float64(c.cost)
		for _, e := range c.entries {
			t += (abs[e.row]) * math.Abs(float64(e.val))
		}
		total += (t + 1) * float64(max(-c.lo, c.up))
	}
	cert := certificate{y: make([]int64, len(y)), costs: costs}
	cert.shift = min(40, 60-int(math.Ceil(math.Log2(total))))
	cert.shift = max(cert.shift, 0)
	unit := math.Ldexp(1, cert.shift)
	for i := range y {
		r := &s.rows[i]
		v := int64(math.Round(y[i] * r.scale * unit))
		cert.y[i] = v
		if v >= 0 {
			cert.rows += v * int64(r.lo)
		} else {
			cert.rows += v * int64(r.up)
		}
	}
	return cert
}

// reduced is the exact reduced cost of a column, in units of 2^−shift.
func (c *certificate) reduced(p *lpColumn) int64 {
	d := int64(0)
	if c.costs {
		d = int64(p.cost) << c.shift
	}
	for _, e := range p.entries {
		d -= int64(e.val) * c.y[e.row]
	}
	return d
}

// total is the bound in units of 2^−shift.
func (c *certificate) total(s *simplex) int64 {
	t := c.rows
	for j := range s.cols {
		p := &s.cols[j]
		if d := c.reduced(p); d >= 0 {
			t += d * int64(p.lo)
		} else {
			t += d * int64(p.up)
		}
	}
	return t
}

// ceil rounds a bound up to a whole objective.
func (c *certificate) ceil(total int64) int {
	return int((total + 1<<c.shift - 1) >> c.shift)
}

// bound is the objective that the program proves at its present multipliers.
func (s *simplex) bound() int {
	c := s.certify(s.ws.y, true, 0)
	return c.ceil(c.total(s))
}

// infeasible checks in whole numbers the proof that solve left in ws.rho.
func (s *simplex) infeasible() bool {
	c := s.certify(s.ws.rho, false, 0)
	return c.total(s) > 0
}
