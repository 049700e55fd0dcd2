package search

import "math"

// simplex is a linear program
//
//	minimise c·x  with  A·x = s,  lo ≤ x ≤ up,  rlo ≤ s ≤ rup
//
// solved by the bounded dual simplex method. Every variable has two finite
// bounds, so that any basis is made dual feasible by moving variables to their
// other bound: no first phase is needed, and columns, rows and bounds may
// change at any time. There are few rows, so the basis inverse is kept dense.
// The matrix holds whole numbers; certify checks in whole numbers what is
// found here in floating point. (Dual simplex with bound flipping: Maros,
// Computational Techniques of the Simplex Method, 2003, from memory.)
type simplex struct {
	cols  []lpColumn
	rows  []lpRow
	basic []int32   // variable of each basis position: column j as j, slack of row i as ^i
	xb    []float64 // values of the basic variables
	inv   []float64 // basis inverse, row by row, len(rows)²
	ws    workspace
	since int // pivots since the inverse was computed afresh
	steps int // pivots so far, for the record and for limits
}

type entry struct {
	row int32
	val int32
}

type lpColumn struct {
	entries []entry
	lo, up  int
	cost    int     // what certify counts
	nudge   float64 // a little added to the cost in floating point, to break ties
	d       float64 // reduced cost
	at      int32   // position in the basis, or -1
	upper   bool    // stands at its upper bound when not in the basis
	tag     int32   // what the column stands for; the caller's business
	form    int16
	fit     int16
}

type lpRow struct {
	lo, up int
	scale  float64 // floating point works with scale times the row
	at     int32
	upper  bool
}

// workspace holds the vectors of one pivot.
type workspace struct {
	rho, rhoScaled, alphaCol, y, sum []float64
	alpha                            []float64 // by column
	breaks                           []breakpoint
}

const (
	primalTol = 1e-7
	dualTol   = 1e-9
	pivotTol  = 1e-7
)

type lpStatus int

const (
	lpOptimal lpStatus = iota
	lpInfeasible
	lpStuck // lost to rounding or stopped; nothing is known
)

// addRow adds a row that no column enters yet, with its slack in the basis.
func (s *simplex) addRow(lo, up int, scale float64) int32 {
	m := len(s.rows)
	s.rows = append(s.rows, lpRow{lo: lo, up: up, scale: scale, at: int32(m)})
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

// addColumn adds a column at its lower bound, outside the basis.
func (s *simplex) addColumn(c lpColumn) int {
	c.at = -1
	s.cols = append(s.cols, c)
	return len(s.cols) - 1
}

// cut adds a row over existing columns, each with the value 1.
func (s *simplex) cut(columns []int, lo, up int) {
	r := s.addRow(lo, up, 1)
	for _, j := range columns {
		s.cols[j].entries = append(s.cols[j].entries, entry{r, 1})
	}
	m := len(s.rows)
	last := s.inv[(m-1)*m:]
	for _, j := range columns {
		if at := s.cols[j].at; at >= 0 {
			axpy(1, s.inv[int(at)*m:int(at)*m+m], last)
		}
	}
}

func axpy(a float64, x, y []float64) {
	for i, v := range x {
		y[i] += a * v
	}
}

// value is the present value of column j.
func (s *simplex) value(j int) float64 {
	c := &s.cols[j]
	if c.at >= 0 {
		return s.xb[c.at]
	}
	if c.upper {
		return float64(c.up)
	}
	return float64(c.lo)
}

// bounds of a basic variable, in the scale of floating point.
func (s *simplex) bounds(v int32) (lo, up float64) {
	if v >= 0 {
		return float64(s.cols[v].lo), float64(s.cols[v].up)
	}
	r := &s.rows[^v]
	return float64(r.lo) * r.scale, float64(r.up) * r.scale
}

// rowValue is the present value of row i, unscaled.
func (s *simplex) rowValue(i int) float64 {
	r := &s.rows[i]
	switch {
	case r.at >= 0:
		return s.xb[r.at] / r.scale
	case r.upper:
		return float64(r.up)
	}
	return float64(r.lo)
}

// refresh computes the multipliers, the reduced costs and the values afresh,
// moving every variable to the bound that its reduced cost asks for.
func (s *simplex) refresh() {
	s.price()
	for j := range s.cols {
		c := &s.cols[j]
		if c.at < 0 && (c.upper && c.d > 0 || !c.upper && c.d < 0) {
			c.upper = c.d < 0
		}
	}
	for i := range s.rows {
		if r := &s.rows[i]; r.at < 0 {
			r.upper = s.ws.y[i] < 0
		}
	}
	s.evaluate()
}

// price computes y = c_B·B⁻¹ and the reduced costs.
func (s *simplex) price() {
	m := len(s.rows)
	s.ws.y = zeros(s.ws.y, m)
	for i, v := range s.basic {
		if v >= 0 {
			if c := float64(s.cols[v].cost) + s.cols[v].nudge; c != 0 {
				axpy(c, s.inv[i*m:(i+1)*m], s.ws.y)
			}
		}
	}
	scaled := s.scaled(s.ws.y)
	for j := range s.cols {
		c := &s.cols[j]
		c.d = 0
		if c.at < 0 {
			c.d = float64(c.cost) + c.nudge - dot(c.entries, scaled)
		}
	}
}

// scaled gives the row vector v times the row scales, to meet whole entries.
func (s *simplex) scaled(v []float64) []float64 {
	s.ws.rhoScaled = zeros(s.ws.rhoScaled, len(s.rows))
	for i, x := range v {
		s.ws.rhoScaled[i] = x * s.rows[i].scale
	}
	return s.ws.rhoScaled
}

func dot(entries []entry, v []float64) float64 {
	t := 0.0
	for _, e := range entries {
		t += float64(e.val) * v[e.row]
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
func (s *simplex) evaluate() {
	m := len(s.rows)
	s.ws.sum = zeros(s.ws.sum, m)
	for j := range s.cols {
		if c := &s.cols[j]; c.at < 0 {
			if x := s.value(j); x != 0 {
				s.gather(c.entries, x, s.ws.sum)
			}
		}
	}
	for i := range s.rows {
		if r := &s.rows[i]; r.at < 0 {
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
func (s *simplex) gather(entries []entry, x float64, sum []float64) {
	for _, e := range entries {
		sum[e.row] += x * float64(e.val) * s.rows[e.row].scale
	}
}

// subtract takes B⁻¹·v from the basic values.
func (s *simplex) subtract(v []float64) {
	m := len(s.rows)
	for i := range m {
		t := 0.0
		for k, x := range s.inv[i*m : (i+1)*m] {
			t += x * v[k]
		}
		s.xb[i] -= t
	}
}

// invert computes the basis inverse afresh by elimination with row pivoting.
// It reports false if the basis is singular in floating point.
func (s *simplex) invert() bool {
	m := len(s.rows)
	a := make([]float64, m*m) // the basis, column k in column k
	for k, v := range s.basic {
		if v < 0 {
			a[int(^v)*m+k] = -1
			continue
		}
		for _, e := range s.cols[v].entries {
			a[int(e.row)*m+k] += float64(e.val) * s.rows[e.row].scale
		}
	}
	inv := make([]float64, m*m)
	for i := range m {
		inv[i*m+i] = 1
	}
	for k := range m {
		p := k
		for i := k + 1; i < m; i++ {
			if math.Abs(a[i*m+k]) > math.Abs(a[p*m+k]) {
				p = i
			}
		}
		if math.Abs(a[p*m+k]) < 1e-10 {
			return false
		}
		swapRows(a, m, k, p)
		swapRows(inv, m, k, p)
		eliminate(a, inv, m, k)
	}
	s.inv, s.since = inv, 0
	return true
}

func swapRows(a []float64, m, i, k int) {
	if i != k {
		for c := range m {
			a[i*m+c], a[k*m+c] = a[k*m+c], a[i*m+c]
		}
	}
}

func eliminate(a, inv []float64, m, k int) {
	f := 1 / a[k*m+k]
	for c := range m {
		a[k*m+c] *= f
		inv[k*m+c] *= f
	}
	for i := range m {
		if t := a[i*m+k]; i != k && t != 0 {
			axpy(-t, a[k*m:(k+1)*m], a[i*m:(i+1)*m])
			axpy(-t, inv[k*m:(k+1)*m], inv[i*m:(i+1)*m])
		}
	}
}
