package search

import (
	"slices"

	"evenhand/assemble/search/lp"
)

// tree is a branch and bound over some groups, with a block for each form. It
// takes the open node with the smallest bound, follows it down one side until
// that ends, and leaves the other sides open.
type tree struct {
	*relaxation
	best    *incumbent
	stop    func() bool
	nodes   int
	halted  bool // by the clock or a split
	open    lp.Heap[*node]
	split   map[int]bool // clash groups that must be told apart first
	classes []int        // forms of one class are still interchangeable
	atTop   []int        // classes at the top
	changed []change     // bounds that differ from the top
	next    int          // next unused class
	order   int          // nodes made so far
	kept    [64]keptBasis
	proof   lp.Certificate
	proved  int64 // the bound in its units
	blame   blame
	roomy   bool // see makeRoom
	most    int  // then, the row that bounds the objective

	found func(list []wanted, bound int) // takes the leaves, in a tree over all forms together
}

// node is a part of the tree: the side of a branch below its parent.
type node struct {
	parent *node
	branch
	high  bool // the side with at least low+1
	bound int  // of every solution here
	depth int
	order int
	fixed []change  // bounds that hold below it
	basis *lp.Basis // of its parent, or nil
}

// change remembers a bound to put back.
type change struct {
	column, row int // one of them is -1
	up          bool
	value       int
}

func (p *problem) newTree(groups []group, blocks []int, best *incumbent, floor int, stop func() bool) *tree {
	t := &tree{relaxation: p.relax(groups, blocks), best: best, stop: stop,
		split: map[int]bool{}, classes: make([]int, len(blocks))}
	for i := range groups {
		t.include(i)
	}
	for _, x := range p.Fixed {
		if x.Form >= 0 && len(blocks) == p.Forms {
			t.classes[x.Form] = x.Form + 1 // a class of its own, and none is 0
		}
	}
	t.atTop = slices.Clone(t.classes)
	if p.goal {
		t.Cols[t.total].Lo = min(floor, t.Cols[t.total].Up)
	}
	return t
}

// explore runs the search for so much work and returns a bound on every
// solution in the tree. It can be called again.
func (t *tree) explore(bound, work int) int {
	limit := t.Work() + work
	if t.nodes == 0 {
		t.open.Push(&node{bound: bound})
	}
	t.halted = false
	for n := t.take(); n != nil; {
		if t.stop() || t.Work() >= limit {
			t.open.Push(n)
			break
		}
		next := t.visit(n)
		if t.halted {
			t.open.Push(n)
			break
		}
		if n = next; n == nil {
			n = t.take()
		}
	}
	low := none
	for _, n := range t.open {
		low = min(low, n.bound)
	}
	return low
}

// take removes the open node with the smallest bound, the deepest among equals.
func (t *tree) take() *node {
	for len(t.open) > 0 {
		n := t.open.Pop()
		if n.bound < t.best.objective {
			return n
		}
	}
	return nil
}

// visit solves a node and returns the side to follow, or nil when it is done.
func (t *tree) visit(n *node) *node {
	t.nodes++
	if !t.enter(n) {
		return nil
	}
	if t.roomy {
		t.Rows[t.most].Up = t.best.objective - 1
	}
	t.prune()
	if n.basis != nil {
		t.GoBack(n.basis)
	}
	bound, status := t.relaxed(n.bound)
	n.bound = bound
	if bound >= t.best.objective {
		return nil
	}
	b, ok := branch{}, false
	if status == lp.Optimal {
		t.fix(n)
		if b, ok = t.choose(); !ok {
			t.leaf(bound)
		}
	}
	if t.halted || bound >= t.best.objective {
		return nil
	}
	if !ok {
		if b, ok = t.anyBranch(); !ok {
			return nil // every column is fixed and the leaf was looked at
		}
	}
	return t.divide(n, b)
}

// divide opens one side of a branch and returns the other.
func (t *tree) divide(n *node, b branch) *node {
	t.order += 2
	low := &node{parent: n, branch: b, bound: n.bound, depth: n.depth + 1, order: t.order}
	high := &node{parent: n, branch: b, high: true, bound: n.bound, depth: n.depth + 1, order: t.order + 1}
	if b.upFirst {
		low, high = high, low
	}
	t.keepBasis(high)
	t.open.Push(high)
	return low
}

// keepBasis lets a node begin with the present basis if it is soon entered: it is forgotten when as many others were
// kept after it as there is room for.
func (t *tree) keepBasis(n *node) {
	slot := &t.kept[n.order/2%len(t.kept)]
	slot.forget()
	slot.Keep(&t.Program)
	slot.of, n.basis = n, &slot.Basis
}

// keptBasis is a basis that a node begins with.
type keptBasis struct {
	lp.Basis
	of *node
}

func (b *keptBasis) forget() {
	if b.of != nil {
		b.of.basis, b.of = nil, nil
	}
}

// enter sets the bounds that hold at a node. It reports false if they leave
// nothing.
func (t *tree) enter(n *node) bool {
	t.takeBack(0)
	copy(t.classes, t.atTop)
	t.next = t.p.Forms + 1
	return t.apply(n)
}

// apply narrows the bounds from the top down to n.
func (t *tree) apply(n *node) bool {
	if n.parent == nil {
		return true
	}
	if !t.apply(n.parent) {
		return false
	}
	for _, x := range n.parent.fixed {
		if !t.set(x.column, x.row, x.up, x.value) {
			return false
		}
	}
	if n.form >= 0 && n.high {
		t.classes[n.form] = t.next
		t.next++
	}
	return t.narrowForms(n)
}

// narrowForms sets the bounds of a side of a branch: in its form or, where all of its class have at most so many, in all.
func (t *tree) narrowForms(n *node) bool {
	if n.form < 0 || n.high {
		return t.narrow(n, n.form)
	}
	for f, c := range t.classes {
		if c == t.classes[n.form] && !t.narrow(n, f) {
			return false
		}
	}
	return true
}

// takeBack puts back the bounds changed, but for so many.
func (t *tree) takeBack(kept int) {
	for i := len(t.changed) - 1; i >= kept; i-- {
		c := &t.changed[i]
		lo, up := t.limits(c.column, c.row)
		if c.up {
			lo = up
		}
		*lo = c.value
	}
	t.changed = t.changed[:kept]
}

// narrow sets one bound of a branch in a form, and reports whether anything is
// left between the bounds.
func (t *tree) narrow(n *node, form int) bool {
	column, row := n.column, n.row
	if column >= 0 { // a group's columns lie form by form, and so do the excesses
		column += form - n.form
	} else {
		row += (form - n.form) * t.stride()
	}
	if n.high {
		return t.set(column, row, false, n.low+1)
	}
	return t.set(column, row, true, n.low)
}

// set narrows a bound of a column, or of a row, and reports whether anything is left.
func (t *tree) set(column, row int, up bool, value int) bool {
	lo, high := t.limits(column, row)
	switch {
	case up && *high > value:
		t.changed = append(t.changed, change{column, row, true, *high})
		*high = value
	case !up && *lo < value:
		t.changed = append(t.changed, change{column, row, false, *lo})
		*lo = value
	}
	return *lo <= *high
}

// limits gives the bounds of a column, or of a row if column is -1.
func (t *tree) limits(column, row int) (lo, up *int) {
	if column >= 0 {
		return &t.Cols[column].Lo, &t.Cols[column].Up
	}
	return &t.Rows[row].Lo, &t.Rows[row].Up
}

func (n *node) Before(o *node) bool {
	if n.bound != o.bound {
		return n.bound < o.bound
	}
	if n.depth != o.depth {
		return n.depth > o.depth
	}
	return n.order < o.order
}

// relaxed solves the node's program, cutting in broken rules, and proves its
// bound.
func (t *tree) relaxed(known int) (int, lp.Status) {
	for {
		status := t.Solve(t.stop)
		switch status {
		case lp.Infeasible:
			t.learn(t.Refutation())
			return none, status
		case lp.Stuck:
			t.halted = t.halted || t.stop()
			t.Restart()
			return known, status
		}
		t.Price()
		t.proof = t.Proof()
		t.proved = t.proof.Total(&t.Program)
		if !t.roomy {
			known = max(known, t.p.round(t.proof.Ceil(t.proved)))
		}
		if known >= t.best.objective {
			t.learn(t.proof)
			return known, status
		}
		if supply, clash := t.cutSupply(), t.cutClashes(); !supply && !clash {
			return known, status
		}
	}
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

// anyBranch halves the range of the first column that is not fixed.
func (t *tree) anyBranch() (branch, bool) {
	for j := range t.Cols {
		if c := &t.Cols[j]; c.Lo < c.Up {
			form := int(t.about[j].form)
			switch t.about[j].form {
			case asOff:
				form = int(t.about[j].tag)
			case asSame, asUneven, asLow, asTotal:
				form = noForm
			case asRoom:
				continue
			}
			return branch{form: form, column: j, row: -1, low: (c.Lo + c.Up) / 2}, true
		}
	}
	return branch{}, false
}
