package search

import (
	"math"

	"evenhand/assemble/search/lp"
)

// candidate is a group outside the program and its reduced cost; the one that
// promises least comes first.
type candidate struct {
	group int
	d     float64
	tie   uint32
}

func (c candidate) Before(o candidate) bool {
	if c.d != o.d {
		return c.d > o.d
	}
	if c.tie != o.tie {
		return c.tie > o.tie
	}
	return c.group > o.group
}

// hopeful says whether a solution below the objective could use group i: a
// unit of a column raises the bound by its reduced cost.
func (r *root) hopeful(i, objective int) bool {
	return objective == none || r.groups[i].fixed != nil || r.p.round(r.cert.Ceil(r.sum+max(0, r.reduced[i]))) < objective
}

// kernel gives the most promising groups, about size of them: what the
// relaxation takes, and of those that could be part of something better than
// the objective the ones of smallest reduced cost. It says whether these are
// all that could.
func (r *root) kernel(size, objective int) (chosen []int, all bool) {
	return r.promising(size, func(i int) float64 {
		switch {
		case !r.hopeful(i, objective):
			return math.Inf(1)
		case r.share(i) > 1e-9:
			return math.Inf(-1)
		}
		return float64(r.reduced[i])
	})
}

// promising gives about size groups of the smallest price, the same number
// from each set that fills the same rows and counts in the same quotas, and
// says whether it left none out. Fixed items and those of price −∞ are always
// in, those of price +∞ never.
func (r *root) promising(size int, price func(group int) float64) (chosen []int, all bool) {
	sets, order := map[uint64]*lp.Heap[candidate]{}, []*lp.Heap[candidate]{}
	all = true
	for i := range r.groups {
		d := price(i)
		if math.IsInf(d, -1) || r.groups[i].fixed != nil {
			chosen = append(chosen, i)
			continue
		}
		if math.IsInf(d, 1) {
			continue
		}
		set := sets[r.groups[i].set]
		if set == nil {
			set = &lp.Heap[candidate]{}
			sets[r.groups[i].set], order = set, append(order, set)
		}
		c := candidate{i, d, r.p.rng.Uint32()}
		switch {
		case len(*set) < max(3, size/len(order)):
			set.Push(c)
			continue
		case (*set)[0].Before(c):
			(*set)[0] = c
			set.Sink(0)
		}
		all = false
	}
	for _, set := range order {
		for len(*set) > max(3, size/len(order)) {
			set.Pop()
			all = false
		}
		for _, c := range *set {
			chosen = append(chosen, c.group)
		}
	}
	return chosen, all
}
