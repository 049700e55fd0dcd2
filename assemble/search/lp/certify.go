package lp

import "math"

// Certificate is a vector of row multipliers in whole numbers. For any
// multipliers y and any x with A·x = s,
//
//	c·x = (c − y·A)·x + y·s ≥ Σ_j min over the bounds of x_j + Σ_i min over the bounds of s_i,
//
// so the right side is a valid bound whatever rounding did to y. Here it is
// computed in whole numbers, in units of 2^−Shift. (Safe bounds: Neumaier and
// Shcherbina, Mathematical Programming 99, 2004, from memory.)
type Certificate struct {
	Y     []int64
	Shift int

	slacks int64 // Σ_i, their part of the bound
	costs  bool  // false: c counts as 0, and a positive bound proves infeasibility
}

// Certify rounds floating multipliers, given in the scale of the rows, so that
// no sum over the columns can overflow; more is at least what columns outside
// the program can add.
func (s *Program) Certify(y []float64, costs bool, more float64) Certificate {
	abs, total := make([]float64, len(y)), 1+more
	for i := range abs {
		r := &s.Rows[i]
		abs[i] = math.Abs(y[i]) * r.scale
		total += (abs[i] + 1) * float64(max(-r.Lo, r.Up, r.Lo, -r.Up))
	}
	for j := range s.Cols {
		c := &s.Cols[j]
		t := float64(c.Cost)
		for _, e := range c.Entries {
			t += (abs[e.Row]) * math.Abs(float64(e.Val))
		}
		total += (t + 1) * float64(max(-c.Lo, c.Up))
	}
	cert := Certificate{Y: make([]int64, len(y)), costs: costs}
	cert.Shift = min(40, 60-int(math.Ceil(math.Log2(total))))
	cert.Shift = max(cert.Shift, 0)
	unit := math.Ldexp(1, cert.Shift)
	for i := range y {
		r := &s.Rows[i]
		v := int64(math.Round(y[i] * r.scale * unit))
		cert.Y[i] = v
		if v >= 0 {
			cert.slacks += v * int64(r.Lo)
		} else {
			cert.slacks += v * int64(r.Up)
		}
	}
	return cert
}

// Reduced is the exact reduced cost of a column, in units of 2^−Shift.
func (c *Certificate) Reduced(p *Column) int64 {
	d := int64(0)
	if c.costs {
		d = int64(p.Cost) << c.Shift
	}
	for _, e := range p.Entries {
		d -= int64(e.Val) * c.Y[e.Row]
	}
	return d
}

// Total is the bound in units of 2^−Shift.
func (c *Certificate) Total(s *Program) int64 {
	t := c.slacks
	for j := range s.Cols {
		p := &s.Cols[j]
		if d := c.Reduced(p); d >= 0 {
			t += d * int64(p.Lo)
		} else {
			t += d * int64(p.Up)
		}
	}
	return t
}

// Ceil rounds a bound up to a whole objective.
func (c *Certificate) Ceil(total int64) int {
	return int((total + 1<<c.Shift - 1) >> c.Shift)
}

// Proof is the certificate of the present multipliers, for the objective.
func (s *Program) Proof() Certificate { return s.Certify(s.ws.y, true, 0) }

// Refutation is the certificate that the program is infeasible, after Solve said so.
func (s *Program) Refutation() Certificate { return s.refutation }

// infeasible checks in whole numbers the proof that solve left in ws.rho.
func (s *Program) infeasible() bool {
	s.refutation = s.Certify(s.ws.rho, false, 0)
	return s.refutation.Total(s) > 0
}
