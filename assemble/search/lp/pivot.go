package lp

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// breakpoint is where the reduced cost of a column (or slack, as ^i) passes
// zero when the leaving row's multiplier moves.
type breakpoint struct {
	ratio, alpha float64
	v            int32
}

// Solve runs dual simplex pivots until the basis is optimal or the program is
// shown infeasible; then the multipliers that prove it stay in ws.rho. stop is
// asked now and then; when it says so the answer is Stuck.
func (s *Program) Solve(stop func() bool) Status {
	s.refresh()
	limit := s.steps + 2000 + 50*len(s.Rows)
	for {
		done, status := true, Optimal
		if r := s.leaving(); r >= 0 {
			if s.steps >= limit || s.steps%32 == 0 && stop() {
				return Stuck
			}
			done, status = s.pivot(r)
		}
		switch {
		case done && status == Optimal && s.accurate(), done && status == Infeasible && s.infeasible():
			return status
		case done && s.since == 0:
			return Stuck
		case done || s.since >= 100:
			if !s.invert() {
				return Stuck
			}
			s.refresh()
		}
	}
}

// accurate says whether the present values meet the rows.
func (s *Program) accurate() bool {
	s.ws.sum = zeros(s.ws.sum, len(s.Rows))
	for j := range s.Cols {
		if x := s.Value(j); x != 0 {
			s.gather(s.Cols[j].Entries, x, s.ws.sum)
		}
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; math.Abs(s.ws.sum[i]-s.RowValue(i)*r.scale) > 1e-6 {
			return false
		}
	}
	return true
}

// leaving picks the basic variable to leave: the largest squared infeasibility
// over the squared length of its row of the inverse (dual steepest edge).
func (s *Program) leaving() int {
	m, best, at := len(s.Rows), 0.0, -1
	for i, v := range s.basic {
		lo, up := s.bounds(v)
		miss := max(lo-s.xb[i], s.xb[i]-up)
		if miss <= primalTol*(1+math.Abs(s.xb[i])*1e-3) {
			continue
		}
		row := s.inv[i*m : (i+1)*m]
		norm := floats.Dot(row, row)
		if w := miss * miss / norm; w > best {
			best, at = w, i
		}
	}
	return at
}

// entriesAColumn is how many entries a column has, about.
const entriesAColumn = 10

// Work is how many numbers were multiplied so far, about: it measures time,
// but is the same on every machine.
func (s *Program) Work() int { return s.work }

// pivot lets basis position r leave. It reports true if it could not: because
// the program is infeasible, or because rounding went too far (Stuck).
func (s *Program) pivot(r int) (done bool, status Status) {
	m := len(s.Rows)
	lo, up := s.bounds(s.basic[r])
	slope, sign := lo-s.xb[r], 1.0
	if slope < 0 {
		slope, sign = s.xb[r]-up, -1
	}
	s.ws.rho = append(s.ws.rho[:0], s.inv[r*m:(r+1)*m]...)
	s.breakpoints(sign)
	q, ok := s.ratioTest(slope)
	if !ok {
		for i := range s.ws.rho {
			s.ws.rho[i] *= -sign
		}
		return true, Infeasible
	}
	s.column(q.v)
	if alpha := s.ws.alphaCol[r]; math.Abs(alpha) < pivotTol || math.Abs(alpha-q.alpha) > 1e-6*(1+math.Abs(alpha)) {
		return true, Stuck
	}
	s.moveDuals(q)
	s.exchange(r, q.v, sign)
	s.steps++
	s.work += 3*m*m + entriesAColumn*len(s.Cols)
	s.since++
	return false, Optimal
}

// breakpoints collects the nonbasic variables whose reduced cost moves toward
// zero, and the pivot row in ws.alpha (columns); slacks follow from ws.rho.
func (s *Program) breakpoints(sign float64) {
	rho := s.Scaled(s.ws.rho)
	if cap(s.ws.alpha) < len(s.Cols) {
		s.ws.alpha = make([]float64, len(s.Cols), len(s.Cols)+len(s.Cols)/4)
	}
	s.ws.alpha = s.ws.alpha[:len(s.Cols)]
	s.ws.breaks = s.ws.breaks[:0]
	for j := range s.Cols {
		c := &s.Cols[j]
		if c.at >= 0 || c.Lo == c.Up { // what can't move has no say, nor needs its reduced cost
			s.ws.alpha[j] = 0
			continue
		}
		a := dot(c.Entries, rho)
		s.ws.alpha[j] = a
		s.offer(int32(j), a, c.d, c.upper, sign)
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.at < 0 && r.Lo != r.Up {
			s.offer(^int32(i), -s.ws.rho[i], s.ws.y[i], r.upper, sign)
		}
	}
}

func (s *Program) offer(v int32, alpha, d float64, upper bool, sign float64) {
	if a := alpha * sign; !upper && a < -dualTol || upper && a > dualTol {
		s.ws.breaks = append(s.ws.breaks, breakpoint{math.Abs(d / alpha), alpha, v})
	}
}

// ratioTest passes breakpoints in order while the dual objective still grows,
// flips those passed to their other bound, and returns the one to enter. If it
// can pass them all the program is infeasible.
func (s *Program) ratioTest(slope float64) (breakpoint, bool) {
	h := Heap[breakpoint](s.ws.breaks)
	h.order()
	var passed []breakpoint
	for len(h) > 0 {
		b := h.Pop()
		width := s.width(b.v)
		if slope -= math.Abs(b.alpha) * width; slope >= 0 {
			passed = append(passed, b)
			continue
		}
		b = steadiest(b, h, passed)
		s.flip(passed, b)
		return b, true
	}
	if slope > primalTol || len(passed) == 0 {
		return breakpoint{}, false
	}
	last := passed[len(passed)-1]
	s.flip(passed, last)
	return last, true
}

// steadiest prefers the largest pivot among breakpoints that lie together.
func steadiest(b breakpoint, ahead Heap[breakpoint], passed []breakpoint) breakpoint {
	best := b
	for len(ahead) > 0 && ahead[0].ratio <= b.ratio+dualTol {
		if a := ahead.Pop(); math.Abs(a.alpha) > math.Abs(best.alpha) {
			best = a
		}
	}
	if math.Abs(best.alpha) < 1e-5 {
		for _, p := range passed {
			if p.ratio >= b.ratio-1e-7 && math.Abs(p.alpha) > math.Abs(best.alpha) {
				best = p
			}
		}
	}
	return best
}

func (s *Program) width(v int32) float64 {
	lo, up := s.bounds(v)
	return up - lo
}

// flip moves the variables passed on the way to b to their other bound.
func (s *Program) flip(passed []breakpoint, b breakpoint) {
	s.ws.sum = zeros(s.ws.sum, len(s.Rows))
	any := false
	for _, p := range passed {
		if p.v == b.v || p.ratio > b.ratio {
			continue
		}
		any = true
		if p.v < 0 {
			r := &s.Rows[^p.v]
			r.upper = !r.upper
			s.ws.sum[^p.v] -= float64(r.Up-r.Lo) * r.scale * sign(r.upper)
			continue
		}
		c := &s.Cols[p.v]
		c.upper = !c.upper
		s.gather(c.Entries, float64(c.Up-c.Lo)*sign(c.upper), s.ws.sum)
	}
	if any {
		s.subtract(s.ws.sum)
	}
}

func sign(up bool) float64 {
	if up {
		return 1
	}
	return -1
}

// column computes B⁻¹·a for the entering variable.
func (s *Program) column(v int32) {
	m := len(s.Rows)
	s.ws.alphaCol = zeros(s.ws.alphaCol, m)
	if v < 0 {
		for i := range m {
			s.ws.alphaCol[i] = -s.inv[i*m+int(^v)]
		}
		return
	}
	for _, e := range s.Cols[v].Entries {
		x := float64(e.Val) * s.Rows[e.Row].scale
		for i := range m {
			s.ws.alphaCol[i] += x * s.inv[i*m+int(e.Row)]
		}
	}
}

// moveDuals updates the reduced costs and multipliers for entering q.
func (s *Program) moveDuals(q breakpoint) {
	d := 0.0
	if q.v >= 0 {
		d = s.Cols[q.v].d
	} else {
		d = s.ws.y[^q.v]
	}
	step := d / q.alpha
	for j := range s.Cols {
		if a := s.ws.alpha[j]; a != 0 {
			s.Cols[j].d -= step * a
		}
	}
	floats.AddScaled(s.ws.y, step, s.ws.rho)
}

// exchange swaps entering v into basis position r, and moves the leaving
// variable to the bound that it broke: the lower one if side is 1.
func (s *Program) exchange(r int, v int32, side float64) {
	out := s.basic[r]
	bound, up := s.bounds(out)
	if side < 0 {
		bound = up
	}
	step := (s.xb[r] - bound) / s.ws.alphaCol[r]
	floats.AddScaled(s.xb, -step, s.ws.alphaCol)
	s.xb[r] = s.standing(v) + step
	if out >= 0 {
		s.Cols[out].at, s.Cols[out].upper = -1, side < 0
		s.Cols[out].d = s.leavingCost(out)
	} else {
		s.Rows[^out].at, s.Rows[^out].upper = -1, side < 0
	}
	s.basic[r] = v
	if v >= 0 {
		s.Cols[v].at, s.Cols[v].d = int32(r), 0
	} else {
		s.Rows[^v].at = int32(r)
		s.ws.y[^v] = 0
	}
	s.updateInverse(r)
}

// standing is the bound at which a nonbasic variable stands, scaled.
func (s *Program) standing(v int32) float64 {
	lo, up := s.bounds(v)
	if v >= 0 && s.Cols[v].upper || v < 0 && s.Rows[^v].upper {
		return up
	}
	return lo
}

func (s *Program) updateInverse(r int) {
	m := len(s.Rows)
	pivotRow := s.inv[r*m : (r+1)*m]
	floats.Scale(1/s.ws.alphaCol[r], pivotRow)
	for i := range m {
		if a := s.ws.alphaCol[i]; i != r && a != 0 {
			floats.AddScaled(s.inv[i*m:(i+1)*m], -a, pivotRow)
		}
	}
}

// leavingCost is the reduced cost of a column that just left the basis.
func (s *Program) leavingCost(j int32) float64 {
	t := float64(s.Cols[j].Cost) + s.Cols[j].Nudge
	for _, e := range s.Cols[j].Entries {
		t -= float64(e.Val) * s.Rows[e.Row].scale * s.ws.y[e.Row]
	}
	return t
}

// before puts the largest pivot first among equal ratios.
func (b breakpoint) Before(o breakpoint) bool {
	if b.ratio != o.ratio {
		return b.ratio < o.ratio
	}
	if x, y := math.Abs(b.alpha), math.Abs(o.alpha); x != y {
		return x > y
	}
	return b.v < o.v
}
