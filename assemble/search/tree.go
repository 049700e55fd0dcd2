package search

import (
	"math"
	"slices"
)

// tree is a branch and bound over some groups, with a block for each form.
type tree struct {
	*relaxation
	best    *incumbent
	stop    func() bool
	nodes   int
	limit   int          // most nodes, 0 for no limit
	halted  bool         // by the clock, the limit or a split
	split   map[int]bool // clash groups that must be told apart first
	classes []int        // forms of one class are still interchangeable
	next    int          // next unused class
}

func (p *problem) tree(groups []group, best *incumbent, floor, limit int, stop func() bool) *tree {
	blocks := make([]int, p.Forms)
	for b := range blocks {
		blocks[b] = 1
	}
	t := &tree{relaxation: p.relax(groups, blocks), best: best, stop: stop, limit: limit,
		split: map[int]bool{}, classes: make([]int, p.Forms), next: p.Forms}
	for i := range groups {
		t.include(i)
	}
	for _, x := range p.Fixed {
		if x.Form >= 0 {
			t.classes[x.Form] = x.Form + 1 // a class of its own, and none is 0
		}
	}
	t.next = p.Forms + 1
	if p.goal {
		t.cols[t.total].lo = min(floor, t.cols[t.total].up)
	}
	return t
}

// explore searches below the present bounds and returns a bound on every
// solution there. known is the bound of the parent.
func (t *tree) explore(known int) int {
	t.nodes++
	if t.halted = t.halted || t.stop() || t.limit > 0 && t.nodes > t.limit; t.halted {
		return known
	}
	bound, status := t.relaxed(known)
	if bound >= t.best.objective || t.halted {
		return bound
	}
	b, ok := branch{}, false
	if status == lpOptimal {
		if b, ok = t.choose(); !ok {
			t.leaf()
			if bound >= t.best.objective || t.halted {
				return bound
			}
		}
	}
	if !ok {
		if b, ok = t.anyBranch(); !ok {
			return none // every column is fixed and the leaf was looked at
		}
	}
	return t.divide(b, bound)
}

// relaxed solves the node's program, cutting in broken rules, and proves its
// bound.
func (t *tree) relaxed(known int) (int, lpStatus) {
	for {
		status := t.solve(t.stop)
		switch status {
		case lpInfeasible:
			if t.infeasible(t.columns()) {
				return none, status
			}
			return known, lpStuck
		case lpStuck:
			t.halted = t.halted || t.stop()
			t.restart()
			return known, status
		}
		t.price()
		known = max(known, t.bound())
		if known >= t.best.objective {
			return known, status
		}
		if supply, clash := t.cutSupply(), t.cutClashes(); !supply && !clash {
			return known, status
		}
	}
}

// restart goes back to the basis of slacks.
func (s *simplex) restart() {
	m := len(s.rows)
	for j := range s.cols {
		s.cols[j].at = -1
	}
	s.inv = make([]float64, m*m)
	for i := range m {
		s.rows[i].at, s.basic[i], s.inv[i*m+i] = int32(i), ^int32(i), -1
	}
	s.since = 0
}

// branch splits a node in two: columns or slacks of the forms of one class all
// at most low, or one of them at least low+1. As the forms of a class are
// alike, the one may be taken to be form.
type branch struct {
	form    int // or less than 0 for a column of no form
	column  int // or -1
	row     int // of the form's block, or -1
	low     int
	upFirst bool
}

// choose picks what to branch on: excesses first, then how many of a form
// count in a quota, then columns. It reports false if all is whole.
func (t *tree) choose() (branch, bool) {
	if t.p.goal {
		if b, ok := t.broken(t.total, -1); ok {
			return b, true
		}
		for f, j := range t.excess {
			if b, ok := t.broken(j, f); ok {
				return b, true
			}
		}
	}
	if b, ok := t.brokenQuota(); ok {
		return b, true
	}
	return t.brokenItem()
}

func (t *tree) broken(j, form int) (branch, bool) {
	x := t.value(j)
	low := math.Floor(x + 1e-6)
	return branch{form: form, column: j, row: -1, low: int(low)}, x-low > 1e-6
}

func (t *tree) brokenQuota() (best branch, ok bool) {
	worst := 1e-6
	for f := range t.blocks {
		for q := range t.p.Quotas {
			i := f*t.stride() + len(t.p.Rows) + q
			x := t.rowValue(i)
			low := math.Floor(x + 1e-6)
			if off := min(x-low, low+1-x); off > worst {
				worst, ok = off, true
				best = branch{form: f, column: -1, row: i, low: int(low), upFirst: x-low > 0.5}
			}
		}
	}
	return best, ok
}

func (t *tree) brokenItem() (best branch, ok bool) {
	most := 1e-6
	for i := range t.rows {
		j := t.basic[i]
		if j < 0 || t.cols[j].form < asShared {
			continue
		}
		x := t.xb[i]
		low := math.Floor(x + 1e-6)
		if off := x - low; off > most {
			most, ok = off, true
			best = branch{form: int(t.cols[j].form), column: int(j), row: -1, low: int(low), upFirst: true}
		}
	}
	return best, ok
}

// anyBranch halves the range of the first column that is not fixed.
func (t *tree) anyBranch() (branch, bool) {
	for j := range t.cols {
		if c := &t.cols[j]; c.lo < c.up {
			form := int(c.form)
			if c.form == asExcess {
				form = int(c.tag)
			}
			return branch{form: form, column: j, row: -1, low: (c.lo + c.up) / 2}, true
		}
	}
	return branch{}, false
}

// divide explores both sides of a branch and returns the smaller bound.
func (t *tree) divide(b branch, bound int) int {
	low, high := bound, bound
	if b.upFirst {
		high = t.up(b, bound)
		low = t.down(b, bound)
	} else {
		low = t.down(b, bound)
		high = t.up(b, bound)
	}
	return min(low, high)
}

func (t *tree) down(b branch, bound int) int {
	forms := []int{b.form}
	if b.form >= 0 {
		forms = forms[:0]
		for f, c := range t.classes {
			if c == t.classes[b.form] {
				forms = append(forms, f)
			}
		}
	}
	saved := make([]int, len(forms))
	for k, f := range forms {
		up := t.upper(b, f)
		saved[k] = *up
		*up = min(*up, b.low)
	}
	result := none
	if t.possible(b, forms) {
		result = t.explore(bound)
	}
	for k, f := range forms {
		*t.upper(b, f) = saved[k]
	}
	return result
}

// possible says whether a branch left every range with something in it.
func (t *tree) possible(b branch, forms []int) bool {
	return !slices.ContainsFunc(forms, func(f int) bool { return *t.upper(b, f) < *t.lower(b, f) })
}

func (t *tree) up(b branch, bound int) int {
	lo := t.lower(b, b.form)
	saved := *lo
	class := 0
	if b.form >= 0 {
		class = t.classes[b.form]
		t.classes[b.form] = t.next
		t.next++
	}
	*lo = max(*lo, b.low+1)
	result := none
	if t.possible(b, []int{b.form}) {
		result = t.explore(bound)
	}
	*t.lower(b, b.form) = saved
	if b.form >= 0 {
		t.classes[b.form] = class
	}
	return result
}

// upper and lower give the branch's bounds in another form of the class.
func (t *tree) upper(b branch, form int) *int {
	if b.column >= 0 {
		return &t.cols[t.twin(b, form)].up
	}
	return &t.rows[b.row+(form-b.form)*t.stride()].up
}

func (t *tree) lower(b branch, form int) *int {
	if b.column >= 0 {
		return &t.cols[t.twin(b, form)].lo
	}
	return &t.rows[b.row+(form-b.form)*t.stride()].lo
}

// twin is the branch's column in another form: a group's columns lie form by
// form, and so do the excesses.
func (t *tree) twin(b branch, form int) int { return b.column + form - b.form }
