package search

import "math"

// pool searches a tree over all forms together: which items they hold, not yet
// which form holds which. It knows no symmetry between forms and has 1/F of
// the columns. What it proves bounds the forms apart as well.
func (c *climb) pool(chosen []int) {
	c.bound, c.floor = c.root.bound, c.root.floor()
	if c.p.Forms == 1 || !c.p.goal {
		return
	}
	t := c.pooled(chosen, 1e-7, 0, 20_000)
	bound := t.explore(c.bound, 400)
	c.bound = max(c.bound, min(bound, t.best.objective))
	if c.bound < none {
		c.floor = max(c.floor, (c.bound-c.p.mostUses+weight-1)/weight)
	}
}

// vary deals other sets of items than the first that reach the bound: by
// chance, and with the more room below their excess the larger its weight. The
// forms can't be dealt from every set that is good for all of them together.
func (c *climb) vary(chosen []int, rounds, tries int) {
	if c.p.Forms == 1 || !c.p.goal {
		return
	}
	for range rounds {
		if c.best.objective <= c.bound || c.stop() {
			return
		}
		t := c.pooled(chosen, 1e-4*math.Pow(1000, c.p.rng.Float64()), 0.1, tries)
		before := t.best.objective
		t.stop = func() bool { return c.stop() || t.best.objective < before }
		t.explore(c.bound, 100)
	}
}

// pooled makes a tree over all forms together. It deals each set of items that
// it finds; its best is an objective that the sets reach, the forms perhaps not.
func (c *climb) pooled(chosen []int, room, chance float64, tries int) *tree {
	reached := &incumbent{p: c.p, objective: c.best.objective}
	t := c.p.newTree(c.groups(chosen), []int{c.p.Forms}, reached, c.floor, c.stop)
	t.found = func(list []wanted, bound int) {
		reached.objective = bound
		c.p.deal(t.groups, list, c.best, bound, tries, c.stop)
	}
	t.lean(c.root, room, chance)
	return t
}

// lean adds a little to the costs of items in floating point: for each
// thousandth of a logit toward the side where the root's excess is, and by
// chance.
func (t *tree) lean(r *root, room, chance float64) {
	if high := r.stride() - 2; r.RowValue(high) < r.RowValue(high+1) {
		room = -room
	}
	for j := range t.Cols {
		if c := &t.about[j]; c.form >= asShared {
			t.Cols[j].Nudge += room*float64(t.groups[c.tag].points[typical]-t.p.centre[typical]) + chance*t.p.rng.Float64()
		}
	}
}
