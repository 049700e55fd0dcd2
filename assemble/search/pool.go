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
		c.all = c.pooled(chosen, leaning{points: barelyLeaning}, dealSteps)
	}
	bound := c.all.explore(c.bound, work)
	c.bound = max(c.bound, min(bound, c.all.best.objective))
	if c.bound < none {
		c.floor = max(c.floor, (c.bound-c.p.mostUses+weight-1)/weight)
	}
}

// vary deals other sets of items than the first that reach the bound: any whose objective lies between the bound and
// the best choice's, mostly nearer to that, by chance, and with more room below the next hundredth and in the time. The
// forms can't be dealt from every set that is good for all of them together.
func (c *climb) vary(chosen []int, sets, share int) {
	if c.p.Forms == 1 || !c.p.goal {
		return
	}
	for left := sets * share; left > 0 && c.best.objective > c.bound && !c.stop(); {
		times := 1 << c.p.rng.IntN(min(bits.Len(uint(share)), mostTimes))
		left -= times
		l := leaning{points: c.p.someLean(), chance: leanByChance}
		if c.p.rng.IntN(2) == 0 {
			l.seconds = c.p.someLean()
		}
		t := c.pooled(chosen, l, times*dealSteps)
		if gap := c.best.objective - c.bound; c.best.objective < none {
			t.atMost(c.best.objective - 1 - int(math.Pow(c.p.rng.Float64(), nearTheBest)*float64(gap)))
		}
		before := t.best.objective
		t.stop = func() bool { return c.stop() || t.best.objective < before }
		t.explore(c.bound, varyWork)
	}
}

// pooled makes a tree over all forms together. It deals each set of items that
// it finds; its best is an objective that the sets reach, the forms perhaps not.
func (c *climb) pooled(chosen []int, l leaning, steps int) *tree {
	reached := &incumbent{p: c.p, objective: c.best.objective}
	t := c.p.newTree(c.groups(chosen), []int{c.p.Forms}, reached, c.floor, c.stop)
	t.found = func(list []wanted, bound int) {
		reached.objective = bound
		c.p.deal(t.groups, list, c.best, bound, steps, c.stop)
	}
	t.lean(c.root, l)
	return t
}

// leaning is what items cost more, in uses and in floating point only: for each thousandth of a point toward the side
// where the root misses the mark, for each second, and by chance.
type leaning struct{ points, seconds, chance float64 }

// someLean is any weight of a thousandth of a point or of a second.
func (p *problem) someLean() float64 {
	return leastLean * math.Pow(mostLean/leastLean, p.rng.Float64())
}

func (t *tree) lean(r *root, l leaning) {
	if high := r.stride() - 2; r.RowValue(high) < r.RowValue(high+1) {
		l.points = -l.points
	}
	for j := range t.Cols {
		if c := &t.about[j]; c.form >= asShared {
			g := &t.groups[c.tag]
			t.Cols[j].Nudge += l.points*float64(g.points[typical]-t.p.centre[typical]) +
				l.seconds*float64(g.fits[c.fit].Seconds) + l.chance*t.p.rng.Float64()
		}
	}
}

// atMost lets the objective be so much at most, by one more row. It is for a tree that has not begun.
func (t *tree) atMost(objective int) (row int32) {
	row = t.AddRow(0, objective, 1)
	for j := range t.Cols {
		if c := &t.Cols[j]; c.Cost != 0 {
			c.Entries = append(c.Entries, at(row, int32(c.Cost)))
		}
	}
	return row
}
