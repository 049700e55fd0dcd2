package search

import (
	"math"
	"math/bits"
)

// pool searches a tree over all forms together: which items they hold, not yet
// which form holds which. It knows no symmetry between forms and has 1/F of
// the columns. What it proves bounds the forms apart as well.
func (c *climb) pool(chosen []int, work int) {
	if c.p.Forms == 1 || !c.p.goal {
		return
	}
	if c.all == nil {
		c.all = c.pooled(chosen, barelyLeaning, 0, dealSteps)
	}
	bound := c.all.explore(c.bound, work)
	c.bound = max(c.bound, min(bound, c.all.best.objective))
	if c.bound < none {
		c.floor = max(c.floor, (c.bound-c.p.mostUses+weight-1)/weight)
	}
}

// vary deals other sets of items than the first that reach the bound: any whose objective lies between the bound and
// the best choice's, by chance, and with the more room below the next hundredth the larger its weight. The forms can't
// be dealt from every set that is good for all of them together.
func (c *climb) vary(chosen []int, share int) {
	if c.p.Forms == 1 || !c.p.goal {
		return
	}
	for left := variedSets * share; left > 0 && c.best.objective > c.bound && !c.stop(); {
		times := 1 << c.p.rng.IntN(min(bits.Len(uint(share)), mostTimes))
		left -= times
		t := c.pooled(chosen, leastLean*math.Pow(mostLean/leastLean, c.p.rng.Float64()), leanByChance, times*dealSteps)
		if c.best.objective < none {
			t.atMost(c.bound + c.p.rng.IntN(c.best.objective-c.bound))
		}
		before := t.best.objective
		t.stop = func() bool { return c.stop() || t.best.objective < before }
		t.explore(c.bound, varyWork)
	}
}

// pooled makes a tree over all forms together. It deals each set of items that
// it finds; its best is an objective that the sets reach, the forms perhaps not.
func (c *climb) pooled(chosen []int, room, chance float64, steps int) *tree {
	reached := &incumbent{p: c.p, objective: c.best.objective}
	t := c.p.newTree(c.groups(chosen), []int{c.p.Forms}, reached, c.floor, c.stop)
	t.found = func(list []wanted, bound int) {
		reached.objective = bound
		c.p.deal(t.groups, list, c.best, bound, steps, c.stop)
	}
	t.lean(c.root, room, chance)
	return t
}

// lean adds a little to the costs of items in floating point: for each
// thousandth of a point toward the side where the root misses the mark, and by
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

// atMost lets the objective be so much at most. It is for a tree that has not begun.
func (t *tree) atMost(objective int) {
	row := t.AddRow(0, objective, 1)
	for j := range t.Cols {
		if c := &t.Cols[j]; c.Cost != 0 {
			c.Entries = append(c.Entries, at(row, int32(c.Cost)))
		}
	}
}
