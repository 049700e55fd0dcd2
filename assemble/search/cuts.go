package search

import "slices"

// cutSupply adds, for each group of which more is taken than there is, the row
// that forbids it. It reports whether it added any.
func (r *relaxation) cutSupply() bool {
	taken := map[int]float64{}
	var order []int
	for j := range r.Cols {
		if c := &r.about[j]; c.form >= asShared {
			if x := r.Value(j); x > 1e-9 {
				if taken[int(c.tag)] == 0 {
					order = append(order, int(c.tag))
				}
				taken[int(c.tag)] += x
			}
		}
	}
	any := false
	for _, i := range order {
		if stock := len(r.groups[i].members); taken[i] > float64(stock)+1e-6 && !r.supply[i] {
			r.supply[i], any = true, true
			from, to := r.columnsOf(i)
			r.Cut(span(from, to), 0, stock)
			r.undo = append(r.undo, func() { delete(r.supply, i) })
		}
	}
	return any
}

func span(from, to int) []int {
	s := make([]int, 0, to-from)
	for j := from; j < to; j++ {
		s = append(s, j)
	}
	return s
}

// cutClashes adds, for each block and clash group of which more than one is
// taken for its forms, the row that forbids it.
func (r *relaxation) cutClashes() bool {
	taken := map[[2]int]float64{}
	var order [][2]int
	take := func(c, b int, x float64) {
		key := [2]int{c, b}
		if _, ok := taken[key]; !ok {
			order = append(order, key)
		}
		taken[key] += x
	}
	for j := range r.Cols {
		c := &r.about[j]
		if c.form < asShared {
			continue
		}
		x := r.Value(j)
		if x <= 1e-9 {
			continue
		}
		for _, k := range r.groups[c.tag].common {
			for b := range r.blocks {
				if c.form == asShared || int(c.form) == b {
					take(k, b, x)
				}
			}
		}
	}
	any := false
	for _, key := range order {
		if w := r.blocks[key[1]]; taken[key] > float64(w)+1e-6 && !r.clashed[key] {
			r.clashed[key], any = true, true
			r.Cut(r.clashing(key[0], key[1]), 0, w)
			r.undo = append(r.undo, func() { delete(r.clashed, key) })
		}
	}
	return any
}

// clashing lists the columns of a block that belong to a clash group.
func (r *relaxation) clashing(clash, block int) []int {
	var js []int
	for j := range r.Cols {
		c := &r.about[j]
		if (int(c.form) == block || c.form == asShared) && slices.Contains(r.groups[c.tag].common, clash) {
			js = append(js, j)
		}
	}
	return js
}

// prune takes out the cut rows that don't bind at present, once there are
// twice as many rows as after the last time: fewer rows, quicker pivots.
func (r *relaxation) prune() {
	base := len(r.Rows) - len(r.undo)
	if len(r.Rows) < max(base+20, 2*r.pruned) {
		return
	}
	var undo []func()
	keep := make([]bool, len(r.Rows))
	for i := range r.Rows {
		keep[i] = i < base || !r.Slack(i)
		switch {
		case i < base:
		case keep[i]:
			undo = append(undo, r.undo[i-base])
		default:
			r.undo[i-base]()
		}
	}
	r.undo = undo
	r.DropRows(keep)
	r.pruned = len(r.Rows)
}
