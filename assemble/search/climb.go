package search

import (
	"maps"
	"sync/atomic"
)

// climb looks for the best choice among some groups.
type climb struct {
	p     *problem
	root  *root
	best  *incumbent
	split map[int]bool // clash groups that the tree tells apart
	stop  func() bool
	bound int   // no choice among the groups has a smaller objective
	floor int   // of the sum of what forms miss the mark by
	all   *tree // over all forms together, while it is open
	near  *near // over the forms apart, among few groups, while it is open
	blind bool  // such a tree ended before there was any choice

	keptForms, keptPlaces float64 // parts of a choice that a mending keeps
	oneCore               bool    // nothing is done at once
	atOnce                bool    // only what is soon done
	roomy                 bool    // trees over the forms apart look for the most room (see makeRoom)
}

// run tries what is soon done first: swaps, then a little of the tree over all
// forms together. Then it goes in rounds, each twice as long as the last: trees
// and sets of items to deal beside annealing, one on each core, then small trees
// around the best choice. When the bound of the tree over the forms apart stood still, it
// rests in the next round. At last, chains, sets to deal and the small tree near to the bound are all that goes on. It
// returns the bound proved over the groups. Unless they are all that matter, it gives up after some rounds.
func (c *climb) run(chosen []int, all bool) int {
	c.bound, c.floor = c.root.bound, c.root.floor()
	c.p.quickChoice(c.root, chosen, c.best, quickTries, c.stop)
	if c.pool(chosen, poolWork); c.best.objective <= c.bound || c.atOnce {
		return min(c.bound, c.best.objective)
	}
	t, bound, rests := c.apart(chosen), c.bound, false
	for round := 0; all || round < trialRounds; round++ {
		share, before := 1<<round, bound
		bound = max(bound, c.round(t, chosen, share, rests))
		if bound >= c.best.objective || c.best.objective <= c.bound || c.stop() {
			break
		}
		rests = !rests && bound == before
		if !c.atLast() {
			c.mend(chosen, share*mendings)
		}
	}
	return max(min(bound, c.best.objective), min(c.bound, c.best.objective))
}

// atLast says that only a choice at the bound could still be better, and a small tree near to it is open (see near).
func (c *climb) atLast() bool { return c.near != nil && c.best.objective <= c.root.bound+1 }

// both does two things at once, or one behind the other where there is one core for them.
func (c *climb) both(one, other func()) {
	if c.oneCore {
		one()
		other()
		return
	}
	done := make(chan bool)
	go func() {
		defer close(done)
		other()
	}()
	one()
	<-done
}

// round explores on one core the tree over the forms apart, and goes on with the tree over all forms together; on the
// other it anneals and deals sets of items, and where the tree rests it does so on both. Neither sees what the other
// finds before both are done, so that it doesn't matter which is faster; only once the best is proved, which the other
// can't better, that is left.
func (c *climb) round(t *tree, chosen []int, share int, rests bool) (bound int) {
	last := c.atLast()
	wide, _ := c.root.kernel(max(annealWidth, len(chosen)), c.best.objective)
	narrow, other := c.few(), c.few()
	seed := c.p.rng.Uint64()
	proved := atomic.Bool{}
	stop := func() bool { return proved.Load() || c.stop() }
	beside := c.apartFrom(seed, stop)
	c.both(func() {
		sets := variedSets
		switch bound = c.bound; {
		case rests && !last:
		case c.goNear(t, share*nearWork):
			bound, sets = c.bound, variedSets/2
		case !rests:
			bound = c.explore(t, chosen, share*treeWork)
		}
		if bound < c.best.objective {
			c.pool(chosen, share*poolWork)
		}
		if max(bound, c.bound) >= c.best.objective {
			proved.Store(true)
			return
		}
		if rests && !last {
			c.chains(afresh, wide, other, share*annealSteps, ^seed, stop)
		}
		c.vary(chosen, sets, share)
		proved.Store(max(bound, c.bound) >= c.best.objective)
	}, func() {
		beside.chains(amongFew, wide, narrow, share*annealSteps, seed, stop)
		beside.vary(chosen, variedSets, share)
	})
	c.best.take(beside.best.forms, beside.best.objective)
	return bound
}

// apartFrom is a copy to go on with at the same time, with random numbers of its own.
func (c *climb) apartFrom(seed uint64, stop func() bool) *climb {
	own := *c
	own.p, own.split, own.stop = c.p.withSeed(seed), maps.Clone(c.split), stop
	own.best = &incumbent{p: own.p, forms: c.best.forms, objective: c.best.objective}
	return &own
}

// few are the groups that a choice could hold which is much nearer to the bound than the best one, those that promise
// most if they are many.
func (c *climb) few() []int {
	aim := c.best.objective
	if c.root.bound < aim && aim < none {
		aim = c.root.bound + 1 + c.p.rng.IntN((aim-c.root.bound+1)/2)
	}
	few, _ := c.root.kernel(narrowWidth*c.p.Forms*c.p.size, aim)
	return few
}

func (c *climb) apart(chosen []int) *tree {
	blocks := make([]int, c.p.Forms)
	for b := range blocks {
		blocks[b] = 1
	}
	t := c.p.newTree(c.groups(chosen), blocks, c.best, c.floor, c.stop)
	if c.roomy {
		t.makeRoom()
	}
	return t
}

// groups are those chosen, split so far as clashes ask for it.
func (c *climb) groups(chosen []int) []group {
	groups := make([]group, len(chosen))
	for k, i := range chosen {
		groups[k] = c.p.groups[i]
	}
	return c.p.split(groups, c.split)
}

// explore searches for so much work, starting again with finer groups when
// clashes ask for it.
func (c *climb) explore(t *tree, chosen []int, work int) int {
	for {
		before := t.Work()
		bound := t.explore(c.bound, work)
		if work -= t.Work() - before; len(t.split) == 0 {
			return min(bound, c.best.objective)
		}
		maps.Copy(c.split, t.split)
		*t = *c.apart(chosen)
	}
}
