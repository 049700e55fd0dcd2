package lp

import "gonum.org/v1/gonum/floats"

// Program is a linear program
//
//	minimise c·x  with  A·x = s,  lo ≤ x ≤ up,  rlo ≤ s ≤ rup
//
// solved by the bounded dual simplex method. Every variable has two finite
// bounds, so that any basis is made dual feasible by moving variables to their
// other bound: no first phase is needed, and columns, rows and bounds may
// change at any time. There are few rows, so the basis inverse is kept dense.
// The matrix holds whole numbers; Certify checks in whole numbers what is
// found here in floating point. (Dual simplex with bound flipping: Maros,
// Computational Techniques of the Simplex Method, 2003, from memory.)
type Program struct {
	Cols  []Column
	Rows  []Row
	basic []int32   // variable of each basis position: column j as j, slack of row i as ^i
	xb    []float64 // values of the basic variables
	inv   []float64 // basis inverse, row by row, len(Rows)²
	ws    workspace
	since int // pivots since the inverse was computed afresh
	steps int // pivots so far, for limits
	drops int // times that rows were dropped
	work  int // numbers multiplied so far, about

	refutation Certificate
}

// Entry is a column's value in a row.
type Entry struct {
	Row int32
	Val int32
}

// Column is a variable. Entries are changed by AddColumn, Cut and DropRows
// only; bounds and costs may be set at any time between two calls of Solve.
type Column struct {
	Entries []Entry
	Lo, Up  int
	Cost    int     // what Certify counts
	Nudge   float64 // a little added to the cost in floating point, to break ties

	d     float64 // reduced cost
	at    int32   // position in the basis, or -1
	upper bool    // stands at its upper bound when not in the basis
}

// Row bounds the sum of its columns.
type Row struct {
	Lo, Up int

	scale float64 // floating point works with scale times the row
	at    int32
	upper bool
}

// workspace holds the vectors of one pivot.
type workspace struct {
	rho, rhoScaled, alphaCol, y, sum []float64
	alpha                            []float64 // by column
	breaks                           []breakpoint
	inv, square                      []float64 // to invert in
}

// What floating point can't tell from zero (common practice for scaled programs).
const (
	primalTol = 1e-7 // in a value, beyond its bound
	dualTol   = 1e-9 // in a reduced cost or a ratio
	pivotTol  = 1e-7 // in the element to divide by
)

// Status says how Solve ended.
type Status int

// How Solve can end.
const (
	Optimal Status = iota
	Infeasible
	Stuck // lost to rounding or stopped; nothing is known
)

// AddRow adds a row that no column enters yet, with its slack in the basis.
func (s *Program) AddRow(lo, up int, scale float64) int32 {
	m := len(s.Rows)
	s.Rows = append(s.Rows, Row{Lo: lo, Up: up, scale: scale, at: int32(m)})
	inv := make([]float64, (m+1)*(m+1))
	for i := range m {
		copy(inv[i*(m+1):], s.inv[i*m:(i+1)*m])
	}
	inv[(m+1)*(m+1)-1] = -1
	s.inv = inv
	s.basic = append(s.basic, ^int32(m))
	s.xb = append(s.xb, 0)
	return int32(m)
}

// AddColumn adds a column at its lower bound, outside the basis.
func (s *Program) AddColumn(c Column) int {
	c.at = -1
	s.Cols = append(s.Cols, c)
	return len(s.Cols) - 1
}

// Cut adds a row over existing columns, each with the value 1.
func (s *Program) Cut(columns []int, lo, up int) {
	r := s.AddRow(lo, up, 1)
	for _, j := range columns {
		s.Cols[j].Entries = append(s.Cols[j].Entries, Entry{r, 1})
	}
	m := len(s.Rows)
	last := s.inv[(m-1)*m:]
	for _, j := range columns {
		if at := s.Cols[j].at; at >= 0 {
			floats.Add(last, s.inv[int(at)*m:int(at)*m+m])
		}
	}
}

// Value is the present value of column j.
func (s *Program) Value(j int) float64 {
	c := &s.Cols[j]
	if c.at >= 0 {
		return s.xb[c.at]
	}
	if c.upper {
		return float64(c.Up)
	}
	return float64(c.Lo)
}

// bounds of a basic variable, in the scale of floating point.
func (s *Program) bounds(v int32) (lo, up float64) {
	if v >= 0 {
		return float64(s.Cols[v].Lo), float64(s.Cols[v].Up)
	}
	r := &s.Rows[^v]
	return float64(r.Lo) * r.scale, float64(r.Up) * r.scale
}

// RowValue is the present value of row i, unscaled.
func (s *Program) RowValue(i int) float64 {
	r := &s.Rows[i]
	switch {
	case r.at >= 0:
		return s.xb[r.at] / r.scale
	case r.upper:
		return float64(r.Up)
	}
	return float64(r.Lo)
}

// refresh computes the multipliers, the reduced costs and the values afresh,
// moving every variable to the bound that its reduced cost asks for.
func (s *Program) refresh() {
	s.Price()
	for j := range s.Cols {
		c := &s.Cols[j]
		if c.at < 0 && (c.upper && c.d > 0 || !c.upper && c.d < 0) {
			c.upper = c.d < 0
		}
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.at < 0 {
			r.upper = s.ws.y[i] < 0
		}
	}
	s.evaluate()
}

// Price computes y = c_B·B⁻¹ and the reduced costs.
func (s *Program) Price() {
	m := len(s.Rows)
	s.ws.y = zeros(s.ws.y, m)
	for i, v := range s.basic {
		if v >= 0 {
			if c := float64(s.Cols[v].Cost) + s.Cols[v].Nudge; c != 0 {
				floats.AddScaled(s.ws.y, c, s.inv[i*m:(i+1)*m])
			}
		}
	}
	scaled := s.Scaled(s.ws.y)
	for j := range s.Cols {
		c := &s.Cols[j]
		c.d = 0
		if c.at < 0 {
			c.d = float64(c.Cost) + c.Nudge - dot(c.Entries, scaled)
		}
	}
}

// Scaled gives the row vector v times the row scales, to meet whole entries.
func (s *Program) Scaled(v []float64) []float64 {
	s.ws.rhoScaled = zeros(s.ws.rhoScaled, len(s.Rows))
	for i, x := range v {
		s.ws.rhoScaled[i] = x * s.Rows[i].scale
	}
	return s.ws.rhoScaled
}

func dot(entries []Entry, v []float64) float64 {
	t := 0.0
	for _, e := range entries {
		t += float64(e.Val) * v[e.Row]
	}
	return t
}

func zeros(v []float64, n int) []float64 {
	if cap(v) < n {
		return make([]float64, n, n+n/2)
	}
	v = v[:n]
	clear(v)
	return v
}

// evaluate computes the basic variables from the others: x_B = −B⁻¹·N·x_N.
func (s *Program) evaluate() {
	m := len(s.Rows)
	s.ws.sum = zeros(s.ws.sum, m)
	for j := range s.Cols {
		if c := &s.Cols[j]; c.at < 0 {
			if x := s.Value(j); x != 0 {
				s.gather(c.Entries, x, s.ws.sum)
			}
		}
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.at < 0 {
			lo, up := s.bounds(^int32(i))
			if r.upper {
				lo = up
			}
			s.ws.sum[i] -= lo
		}
	}
	clear(s.xb)
	s.subtract(s.ws.sum)
}

// gather adds x times a column to a scaled row vector.
func (s *Program) gather(entries []Entry, x float64, sum []float64) {
	for _, e := range entries {
		sum[e.Row] += x * float64(e.Val) * s.Rows[e.Row].scale
	}
}

// subtract takes B⁻¹·v from the basic values.
func (s *Program) subtract(v []float64) {
	m := len(s.Rows)
	for i := range m {
		s.xb[i] -= floats.Dot(s.inv[i*m:(i+1)*m], v)
	}
}
