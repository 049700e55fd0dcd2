package search

// candidate is a group outside the program and its reduced cost; the one that
// promises least comes first.
type candidate struct {
	group int
	d     float64
	tie   uint32
}

func (c candidate) before(o candidate) bool {
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
	return objective == none || r.groups[i].fixed != nil || r.p.round(r.cert.ceil(r.sum+max(0, r.reduced[i]))) < objective
}

// kernel gives the most promising groups, about size of them, and says whether
// these are all that could be part of something better than the objective:
// what the relaxation takes, and of the others the same number from each set
// that fills the same rows and counts in the same quotas.
func (r *root) kernel(size, objective int) (chosen []int, all bool) {
	sets, order := map[uint64]*heap[candidate]{}, []*heap[candidate]{}
	all = true
	for i := range r.groups {
		g := &r.groups[i]
		if !r.hopeful(i, objective) {
			continue
		}
		if g.fixed != nil || r.share(i) > 1e-9 {
			chosen = append(chosen, i)
			continue
		}
		set := sets[g.set]
		if set == nil {
			set = &heap[candidate]{}
			sets[g.set], order = set, append(order, set)
		}
		set.push(candidate{i, float64(r.reduced[i]), r.p.rng.Uint32()})
		if len(*set) > max(3, size/len(order)) {
			set.pop()
			all = false
		}
	}
	for _, set := range order {
		for len(*set) > max(3, size/len(order)) {
			set.pop()
			all = false
		}
		for _, c := range *set {
			chosen = append(chosen, c.group)
		}
	}
	return chosen, all
}
