package search

import (
	"cmp"
	"math"
	"slices"
)

// root is the bound on the whole problem: the relaxation with one block, in
// which only the columns that matter were ever looked at closely.
type root struct {
	*relaxation
	bound   int // no solution has a smaller objective; none if there is no solution
	cert    certificate
	sum     int64   // the bound in the certificate's units
	reduced []int64 // smallest reduced cost of each group
	ranked  []int   // groups by reduced cost
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

// seed includes the fixed items and a small sample of the groups.
func (r *root) seed() {
	for i := range r.groups {
		if r.groups[i].fixed != nil {
			r.include(i)
		}
	}
	want := 20 * (len(r.p.Rows) + len(r.p.Quotas) + 2)
	for k := 0; k < want && len(r.groups) > 0; k++ {
		if i := r.p.rng.IntN(len(r.groups)); r.first[i] < 0 {
			r.include(i)
		}
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
		c := r.certify(r.ws.y, true, r.all())
		r.cols[r.total].lo = max(0, c.ceil(c.total(r.all())))
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
			if r.infeasible(r.all()) {
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

// improving includes the groups with the most negative reduced costs.
func (r *root) improving(y []float64, costs bool) bool {
	scaled := r.scaled(y)
	type found struct {
		group int
		d     float64
	}
	var better []found
	for i := range r.groups {
		if r.first[i] >= 0 {
			continue
		}
		best := 0.0
		r.outside(i, func(c priced) bool {
			d := -dot(c.entries, scaled)
			if costs {
				d += float64(c.cost)
			}
			best = min(best, d)
			return true
		})
		if best < -1e-7 {
			better = append(better, found{i, best})
		}
	}
	slices.SortFunc(better, func(a, b found) int {
		return cmp.Or(cmp.Compare(a.d, b.d), cmp.Compare(a.group, b.group))
	})
	for _, f := range better[:min(len(better), 50+5*len(r.rows))] {
		r.include(f.group)
	}
	return len(better) > 0
}

// conclude computes the exact bound and ranks the groups.
func (r *root) conclude() {
	r.price()
	r.cert = r.certify(r.ws.y, true, r.all())
	r.sum = r.cert.total(r.all())
	r.bound = r.p.round(r.cert.ceil(r.sum))
	r.reduced = make([]int64, len(r.groups))
	r.ranked = make([]int, len(r.groups))
	for i := range r.groups {
		r.ranked[i] = i
		r.reduced[i] = r.cheapest(i)
	}
	r.p.rng.Shuffle(len(r.ranked), func(i, k int) { r.ranked[i], r.ranked[k] = r.ranked[k], r.ranked[i] })
	slices.SortStableFunc(r.ranked, func(i, k int) int { return cmp.Compare(r.reduced[i], r.reduced[k]) })
}

func (r *root) cheapest(i int) int64 {
	best := int64(math.MaxInt64)
	if r.first[i] < 0 {
		r.outside(i, func(c priced) bool { best = min(best, r.cert.reduced(c)); return true })
		return best
	}
	from, to := r.columnsOf(i)
	for j := from; j < to; j++ {
		c := &r.cols[j]
		best = min(best, r.cert.reduced(priced{c.entries, c.cost, c.lo, c.up}))
	}
	return best
}

// hopeful says whether a solution below the objective could use group i: a
// unit of a column raises the bound by its reduced cost.
func (r *root) hopeful(i, objective int) bool {
	return objective == none || r.groups[i].fixed != nil || r.p.round(r.cert.ceil(r.sum+max(0, r.reduced[i]))) < objective
}
