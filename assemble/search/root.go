package search

import "math"

// root is the bound on the whole problem: the relaxation with one block, in
// which only the columns that matter were ever looked at closely.
type root struct {
	*relaxation
	bound   int // no solution has a smaller objective; none if there is no solution
	cert    certificate
	sum     int64   // the bound in the certificate's units
	reduced []int64 // smallest reduced cost of each group
}

// bound solves the relaxation. The sum of excesses is a whole number, so where
// it comes out broken it is first rounded up, if a program that minimises it
// alone proves that it may be.
func (p *problem) bound(stop func() bool) *root {
	r := &root{relaxation: p.relax(p.groups, []int{p.Forms})}
	r.seed()
	if r.sift(stop) == lpInfeasible {
		r.bound = none
		return r
	}
	if p.goal {
		if e := r.value(r.total); e-math.Floor(e) > 1e-6 {
			r.roundExcess(stop)
			if r.sift(stop) == lpInfeasible {
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
	for j := range r.cols {
		r.cols[j].cost = 0
	}
	r.cols[r.total].cost = 1
	r.onlyExcess = true
	if r.sift(stop) == lpOptimal {
		c, sum := r.proof(r.ws.y, true)
		r.cols[r.total].lo = max(0, c.ceil(sum))
	}
	r.onlyExcess = false
	for j := range r.cols {
		if c := &r.cols[j]; c.form >= asShared {
			c.cost = r.groups[c.tag].uses
		}
	}
	r.cols[r.total].cost = 1000
}

// sift solves with the columns included, then includes those outside that
// could improve, until none could.
func (r *root) sift(stop func() bool) lpStatus {
	for {
		status := r.solve(stop)
		y, costs := r.ws.y, true
		switch status {
		case lpStuck:
			return status
		case lpInfeasible:
			if _, sum := r.proof(r.ws.rho, false); sum > 0 {
				return status
			}
			y, costs = r.ws.rho, false
		}
		added := r.improving(y, costs)
		cut := status == lpOptimal && r.cutSupply()
		if !added && !cut {
			if status == lpInfeasible {
				return lpStuck
			}
			return status
		}
	}
}

// improving includes the groups with the most negative reduced costs, a batch
// at a time. It reports false if there are none.
func (r *root) improving(y []float64, costs bool) bool {
	scaled, batch := r.scaled(y), 50+5*len(r.rows)+len(r.groups)/100
	var kept heap[candidate]
	for i := range r.groups {
		if r.first[i] >= 0 {
			continue
		}
		c := candidate{group: i, d: outside(r, i, scaled, float64(r.cost(&r.groups[i])*ones(costs)), nil)}
		switch {
		case c.d >= -1e-7:
		case len(kept) < batch:
			kept.push(c)
		case c.d < kept[0].d:
			kept[0] = c
			kept.sink(0)
		}
	}
	for _, c := range kept {
		r.include(c.group)
	}
	return len(kept) > 0
}

// proof is the exact bound of given multipliers over all columns.
func (r *root) proof(y []float64, costs bool) (certificate, int64) {
	more := 0.0
	for _, v := range r.scaled(y) {
		more += math.Abs(v)
	}
	widest := float64(r.p.Forms * max(r.p.farOff, r.p.slowest, 1))
	more = (more*widest + largest) * float64(len(r.p.Items)*(len(r.p.Rows)+1))
	c := r.certify(y, costs, more)
	sum := c.total(&r.simplex)
	for i := range r.groups {
		if r.first[i] < 0 {
			outside(r, i, c.y, int64(r.cost(&r.groups[i])*ones(costs))<<c.shift, &sum)
		}
	}
	return c, sum
}

// outside gives the smallest reduced cost that the columns of group i would
// have, and adds what they take from a bound to sum.
func outside[T int64 | float64](r *root, i int, y []T, cost T, sum *T) T {
	g := &r.groups[i]
	at := len(r.p.Rows)
	quotas := T(0)
	for _, q := range g.quotas {
		quotas += y[at+q]
	}
	at += len(r.p.Quotas)
	if r.p.goal {
		quotas += T(g.difficulty) * (y[at+1] - y[at+2])
	}
	best := cost
	for k, fit := range g.fits {
		worth := quotas + y[fit.Row]
		if r.p.MaxSeconds > 0 {
			worth += T(fit.Seconds) * y[at]
		}
		d := cost - worth
		if k == 0 || d < best {
			best = d
		}
		if sum != nil && d < 0 {
			*sum += d * T(r.upTo(g, fit, 0))
		}
		if r.p.Shared > 0 {
			d := cost - T(r.p.Forms)*worth - y[r.shared]
			best = min(best, d)
			if sum != nil && d < 0 {
				*sum += d * T(r.upTo(g, fit, asShared))
			}
		}
	}
	return best
}

// conclude computes the exact bound and reduced costs.
func (r *root) conclude() {
	r.price()
	r.cert, r.sum = r.proof(r.ws.y, true)
	r.bound = r.p.round(r.cert.ceil(r.sum))
	r.reduced = make([]int64, len(r.groups))
	for i := range r.groups {
		r.reduced[i] = r.cheapest(i)
	}
}

func (r *root) cheapest(i int) int64 {
	if r.first[i] < 0 {
		return outside(r, i, r.cert.y, int64(r.cost(&r.groups[i]))<<r.cert.shift, nil)
	}
	best := int64(math.MaxInt64)
	for j, to := r.columnsOf(i); j < to; j++ {
		best = min(best, r.cert.reduced(&r.cols[j]))
	}
	return best
}
