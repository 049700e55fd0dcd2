package search

import (
	"math"

	"evenhand/assemble/search/lp"
)

// root is the bound on the whole problem: the relaxation with one block, in
// which only the columns that matter were ever looked at closely.
type root struct {
	*relaxation
	bound   int // no solution has a smaller objective; none if there is no solution
	cert    lp.Certificate
	sum     int64   // the bound in the lp.Certificate's units
	reduced []int64 // smallest reduced cost of each group
}

// bound solves the relaxation. The sum of excesses is a whole number, so where
// it comes out broken it is first rounded up, if a program that minimises it
// alone proves that it may be.
func (p *problem) bound(stop func() bool) *root {
	r := &root{relaxation: p.relax(p.groups, []int{p.Forms})}
	r.seed()
	if r.sift(stop) == lp.Infeasible {
		r.bound = none
		return r
	}
	if p.goal {
		if e := r.Value(r.total); e-math.Floor(e) > 1e-6 {
			r.roundExcess(stop)
			if r.sift(stop) == lp.Infeasible {
				r.bound = none
				return r
			}
		}
	}
	r.conclude()
	return r
}

// seed includes the fixed items and some groups of few uses of every set.
func (r *root) seed() {
	chosen, _ := r.promising(20*(len(r.p.Rows)+len(r.p.Quotas)+2), func(i int) float64 { return float64(r.groups[i].uses) })
	for _, i := range chosen {
		r.include(i)
	}
}

// roundExcess raises the lower bound of the sum of excesses to what the rules
// allow at least.
func (r *root) roundExcess(stop func() bool) {
	for j := range r.Cols {
		r.Cols[j].Cost = 0
	}
	r.Cols[r.total].Cost = 1
	r.onlyMark = true
	if r.sift(stop) == lp.Optimal {
		c, sum := r.proof(r.Multipliers(), true)
		r.Cols[r.total].Lo = max(0, c.Ceil(sum))
	}
	r.onlyMark = false
	for j := range r.Cols {
		if c := &r.about[j]; c.form >= asShared {
			r.Cols[j].Cost = r.groups[c.tag].uses
		}
	}
	r.Cols[r.total].Cost = weight
}

// sift solves with the columns included, then includes those outside that
// could improve, until none could.
func (r *root) sift(stop func() bool) lp.Status {
	for {
		status := r.Solve(stop)
		y, costs := r.Multipliers(), true
		switch status {
		case lp.Stuck:
			return status
		case lp.Infeasible:
			if _, sum := r.proof(r.Ray(), false); sum > 0 {
				return status
			}
			y, costs = r.Ray(), false
		}
		added := r.improving(y, costs, status == lp.Optimal)
		cut := status == lp.Optimal && r.cutSupply()
		if !added && !cut {
			if status == lp.Infeasible {
				return lp.Stuck
			}
			return status
		}
	}
}

// improving includes the groups with the most negative reduced costs, a batch
// at a time. It reports false if there are none, or if the bound already
// reaches the objective that the program has without them, both rounded up.
func (r *root) improving(y []float64, costs, optimal bool) bool {
	scaled, batch := r.Scaled(y), 50+5*len(r.Rows)+len(r.groups)/100
	rest, kept := newRest[float64](r), lp.Heap[candidate]{}
	for i := range r.groups {
		if r.first[i] >= 0 {
			continue
		}
		c := candidate{group: i, d: rest.outside(i, scaled, float64(r.cost(&r.groups[i])*ones(costs)))}
		switch {
		case c.d >= -1e-7:
		case len(kept) < batch:
			kept.Push(c)
		case c.d < kept[0].d:
			kept[0] = c
			kept.Sink(0)
		}
	}
	if optimal && !r.onlyMark && r.ceil(r.objective()+rest.least()) >= r.ceil(r.objective()) {
		return false
	}
	for _, c := range kept {
		r.include(c.group)
	}
	return len(kept) > 0
}

// ceil rounds an objective up, as a bound, with some room for rounding errors.
func (r *root) ceil(objective float64) int { return r.p.round(int(math.Ceil(objective - 1e-3))) }

// objective is c·x at the present values.
func (r *root) objective() float64 {
	t := 0.0
	for j := range r.Cols {
		if c := &r.Cols[j]; c.Cost != 0 {
			t += float64(c.Cost) * r.Value(j)
		}
	}
	return t
}

// proof is the exact bound of given multipliers over all columns.
func (r *root) proof(y []float64, costs bool) (lp.Certificate, int64) {
	more := 0.0
	for _, v := range r.Scaled(y) {
		more += math.Abs(v)
	}
	widest := float64(r.p.Forms * max(1000, r.p.slowest))
	more = (more*widest + largest) * float64(len(r.p.Items)*(len(r.p.Rows)+1))
	c := r.Certify(y, costs, more)
	rest := newRest[int64](r)
	for i := range r.groups {
		if r.first[i] < 0 {
			rest.outside(i, c.Y, int64(r.cost(&r.groups[i])*ones(costs))<<c.Shift)
		}
	}
	return c, c.Total(&r.Program) + rest.least()
}

// rest sums up what the columns outside the program can take from a bound, row
// by row, the shared ones last.
type rest[T int64 | float64] struct {
	*root
	sum    []T // if every column with a negative reduced cost were taken whole
	lowest []T // the most negative reduced cost
}

func newRest[T int64 | float64](r *root) *rest[T] {
	return &rest[T]{r, make([]T, len(r.p.Rows)+1), make([]T, len(r.p.Rows)+1)}
}

// least is at most what they can change the objective by: as many as fit the
// row, each at the lowest reduced cost, or all that there are.
func (s *rest[T]) least() T {
	t := T(0)
	for i := range s.sum {
		_, up := s.p.sharedRange()
		if i < len(s.p.Rows) {
			_, up = s.p.rowRange(i)
			up *= s.p.Forms
		}
		t += max(s.sum[i], s.lowest[i]*T(up))
	}
	return t
}

func (s *rest[T]) take(at int, d T, up int) {
	if d < 0 {
		s.sum[at] += d * T(up)
		s.lowest[at] = min(s.lowest[at], d)
	}
}

// outside gives the smallest reduced cost that the columns of group i would
// have, and counts them.
func (s *rest[T]) outside(i int, y []T, cost T) T {
	p, g := s.p, &s.groups[i]
	at := len(p.Rows)
	common := T(0)
	for _, q := range g.quotas {
		common += y[at+q]
	}
	at += len(p.Quotas)
	for _, s := range g.same {
		common += y[at+s]
	}
	at += len(p.Same)
	if p.goal {
		common += T(p.miss(g)) * (y[at+1] - y[at+2])
	}
	best := cost
	for k, fit := range g.fits {
		worth := common + y[fit.Row]
		if p.MaxSeconds > 0 {
			worth += T(fit.Seconds) * y[at]
		}
		d := cost - worth
		s.take(fit.Row, d, s.upTo(g, fit, 0))
		if k == 0 || d < best {
			best = d
		}
		if p.Shared > 0 {
			d = cost - T(p.Forms)*worth - y[s.shared]
			s.take(len(p.Rows), d, s.upTo(g, fit, asShared))
			best = min(best, d)
		}
	}
	return best
}

// conclude computes the exact bound and reduced costs.
func (r *root) conclude() {
	r.Price()
	r.cert, r.sum = r.proof(r.Multipliers(), true)
	r.bound = r.p.round(r.cert.Ceil(r.sum))
	r.reduced = make([]int64, len(r.groups))
	rest := newRest[int64](r)
	for i := range r.groups {
		r.reduced[i] = r.cheapest(i, rest)
	}
}

func (r *root) cheapest(i int, rest *rest[int64]) int64 {
	if r.first[i] < 0 {
		return rest.outside(i, r.cert.Y, int64(r.cost(&r.groups[i]))<<r.cert.Shift)
	}
	best := int64(math.MaxInt64)
	for j, to := r.columnsOf(i); j < to; j++ {
		best = min(best, r.cert.Reduced(&r.Cols[j]))
	}
	return best
}
