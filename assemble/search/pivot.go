package search

import "math"

// breakpoint is where the reduced cost of a column (or slack, as ^i) passes
// zero when the leaving row's multiplier moves.
type breakpoint struct {
	ratio, alpha float64
	v            int32
}

// solve runs dual simplex pivots until the basis is optimal or the program is
// shown infeasible; then the multipliers that show it stay in ws.rho. stop is
// asked now and then; when it says so the answer is lpStuck.
func (s *simplex) solve(stop func() bool) lpStatus {
	s.refresh()
	fresh, limit := s.since == 0, s.steps+2000+50*len(s.rows)
	for {
		r := s.leaving()
		if r < 0 {
			if fresh {
				return lpOptimal
			}
			if !s.invert() {
				return lpStuck
			}
			s.refresh()
			fresh = true
			continue
		}
		if s.steps > limit || s.steps%32 == 0 && stop() {
			return lpStuck
		}
		status := s.pivot(r)
		if status == lpInfeasible && fresh || status == lpStuck && fresh {
			return status
		}
		fresh = false
		if status != lpOptimal || s.since >= 64 {
			if !s.invert() {
				return lpStuck
			}
			s.refresh()
			fresh = true
		}
	}
}

// leaving picks the basic variable to leave: the largest squared infeasibility
// over the squared length of its row of the inverse (dual steepest edge).
func (s *simplex) leaving() int {
	m, best, at := len(s.rows), 0.0, -1
	for i, v := range s.basic {
		lo, up := s.bounds(v)
		miss := max(lo-s.xb[i], s.xb[i]-up)
		if miss <= primalTol*(1+math.Abs(s.xb[i])*1e-3) {
			continue
		}
		norm := 0.0
		for _, x := range s.inv[i*m : (i+1)*m] {
			norm += x * x
		}
		if w := miss * miss / norm; w > best {
			best, at = w, i
		}
	}
	return at
}

// pivot lets basis position r leave. lpOptimal here means that the pivot was
// done.
func (s *simplex) pivot(r int) lpStatus {
	m := len(s.rows)
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
		return lpInfeasible
	}
	s.column(q.v)
	if alpha := s.ws.alphaCol[r]; math.Abs(alpha) < pivotTol || math.Abs(alpha-q.alpha) > 1e-6*(1+math.Abs(alpha)) {
		return lpStuck
	}
	s.moveDuals(q)
	s.exchange(r, q.v, sign)
	s.steps++
	s.since++
	return lpOptimal
}

// breakpoints collects the nonbasic variables whose reduced cost moves toward
// zero, and the pivot row in ws.alpha (columns); slacks follow from ws.rho.
func (s *simplex) breakpoints(sign float64) {
	rho := s.scaled(s.ws.rho)
	if cap(s.ws.alpha) < len(s.cols) {
		s.ws.alpha = make([]float64, len(s.cols), len(s.cols)+len(s.cols)/4)
	}
	s.ws.alpha = s.ws.alpha[:len(s.cols)]
	s.ws.breaks = s.ws.breaks[:0]
	for j := range s.cols {
		c := &s.cols[j]
		if c.at >= 0 {
			s.ws.alpha[j] = 0
			continue
		}
		a := dot(c.entries, rho)
		s.ws.alpha[j] = a
		if c.lo != c.up {
			s.offer(int32(j), a, c.d, c.upper, sign)
		}
	}
	for i := range s.rows {
		if r := &s.rows[i]; r.at < 0 && r.lo != r.up {
			s.offer(^int32(i), -s.ws.rho[i], s.ws.y[i], r.upper, sign)
		}
	}
}

func (s *simplex) offer(v int32, alpha, d float64, upper bool, sign float64) {
	if a := alpha * sign; !upper && a < -dualTol || upper && a > dualTol {
		s.ws.breaks = append(s.ws.breaks, breakpoint{math.Abs(d / alpha), alpha, v})
	}
}

// ratioTest passes breakpoints in order while the dual objective still grows,
// flips those passed to their other bound, and returns the one to enter. If it
// can pass them all the program is infeasible.
func (s *simplex) ratioTest(slope float64) (breakpoint, bool) {
	h := s.ws.breaks
	heapify(h)
	var passed []breakpoint
	for len(h) > 0 {
		b := h[0]
		h = pop(h)
		width := s.width(b.v)
		if slope -= math.Abs(b.alpha) * width; slope >= 0 {
			passed = append(passed, b)
			continue
		}
		b = steadiest(b, h, passed)
		for _, p := range passed {
			if p.v != b.v && p.ratio <= b.ratio {
				s.flip(p.v)
			}
		}
		return b, true
	}
	if slope > primalTol || len(passed) == 0 {
		return breakpoint{}, false
	}
	last := passed[len(passed)-1]
	for _, p := range passed[:len(passed)-1] {
		s.flip(p.v)
	}
	return last, true
}

// steadiest prefers the largest pivot among breakpoints that lie together.
func steadiest(b breakpoint, ahead, passed []breakpoint) breakpoint {
	best := b
	for len(ahead) > 0 && ahead[0].ratio <= b.ratio+dualTol {
		if math.Abs(ahead[0].alpha) > math.Abs(best.alpha) {
			best = ahead[0]
		}
		ahead = pop(ahead)
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

func (s *simplex) width(v int32) float64 {
	lo, up := s.bounds(v)
	return up - lo
}

func (s *simplex) flip(v int32) {
	if v >= 0 {
		s.cols[v].upper = !s.cols[v].upper
	} else {
		s.rows[^v].upper = !s.rows[^v].upper
	}
}

// column computes B⁻¹·a for the entering variable.
func (s *simplex) column(v int32) {
	m := len(s.rows)
	s.ws.alphaCol = zeros(s.ws.alphaCol, m)
	if v < 0 {
		for i := range m {
			s.ws.alphaCol[i] = -s.inv[i*m+int(^v)]
		}
		return
	}
	for _, e := range s.cols[v].entries {
		x := float64(e.val) * s.rows[e.row].scale
		for i := range m {
			s.ws.alphaCol[i] += x * s.inv[i*m+int(e.row)]
		}
	}
}

// moveDuals updates the reduced costs and multipliers for entering q.
func (s *simplex) moveDuals(q breakpoint) {
	d := 0.0
	if q.v >= 0 {
		d = s.cols[q.v].d
	} else {
		d = s.ws.y[^q.v]
	}
	step := d / q.alpha
	for j := range s.cols {
		if a := s.ws.alpha[j]; a != 0 {
			s.cols[j].d -= step * a
		}
	}
	axpy(step, s.ws.rho, s.ws.y)
}

// exchange swaps entering v into basis position r, updating the inverse, and
// puts the leaving variable on the bound that it broke.
func (s *simplex) exchange(r int, v int32, sign float64) {
	m := len(s.rows)
	out := s.basic[r]
	if out >= 0 {
		s.cols[out].at, s.cols[out].upper = -1, sign < 0
		s.cols[out].d = s.leavingCost(out)
	} else {
		s.rows[^out].at, s.rows[^out].upper = -1, sign < 0
	}
	s.basic[r] = v
	if v >= 0 {
		s.cols[v].at, s.cols[v].d = int32(r), 0
	} else {
		s.rows[^v].at = int32(r)
		s.ws.y[^v] = 0
	}
	pivotRow := s.inv[r*m : (r+1)*m]
	f := 1 / s.ws.alphaCol[r]
	for k := range pivotRow {
		pivotRow[k] *= f
	}
	for i := range m {
		if a := s.ws.alphaCol[i]; i != r && a != 0 {
			axpy(-a, pivotRow, s.inv[i*m:(i+1)*m])
		}
	}
	s.evaluate()
}

// leavingCost is the reduced cost of a column that just left the basis.
func (s *simplex) leavingCost(j int32) float64 {
	t := float64(s.cols[j].cost) + s.cols[j].nudge
	for _, e := range s.cols[j].entries {
		t -= float64(e.val) * s.rows[e.row].scale * s.ws.y[e.row]
	}
	return t
}

// heapify and pop keep the breakpoints in a heap by ratio, the largest pivot
// first among equals.
func heapify(h []breakpoint) {
	for i := len(h)/2 - 1; i >= 0; i-- {
		sink(h, i)
	}
}

func pop(h []breakpoint) []breakpoint {
	n := len(h) - 1
	h[0], h[n] = h[n], h[0]
	sink(h[:n], 0)
	return h[:n]
}

func sink(h []breakpoint, i int) {
	for {
		c := 2*i + 1
		if c >= len(h) {
			return
		}
		if c+1 < len(h) && h[c+1].before(h[c]) {
			c++
		}
		if !h[c].before(h[i]) {
			return
		}
		h[i], h[c] = h[c], h[i]
		i = c
	}
}

func (b breakpoint) before(o breakpoint) bool {
	if b.ratio != o.ratio {
		return b.ratio < o.ratio
	}
	if x, y := math.Abs(b.alpha), math.Abs(o.alpha); x != y {
		return x > y
	}
	return b.v < o.v
}
