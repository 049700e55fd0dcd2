package search

import "sync/atomic"

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

	keptForms, keptPlaces float64 // parts of a choice that a mending keeps
}

// run tries what is soon done first: swaps, then a little of the tree over all
// forms together. Then it goes in rounds, each twice as long as the last: the
// tree over the forms apart beside annealing, one on each core, sets of items
// to deal, and small trees around the best choice. It returns the bound
// proved over the groups. Unless they are all that matter, it gives up after
// some rounds.
func (c *climb) run(chosen []int, all bool) int {
	c.bound, c.floor = c.root.bound, c.root.floor()
	c.p.quickChoice(c.root, chosen, c.best, quickTries, c.stop)
	if c.pool(chosen, poolWork); c.best.objective <= c.bound {
		return c.bound
	}
	t, bound := c.apart(chosen), c.bound
	for round := 0; all || round < trialRounds; round++ {
		share := 1 << round
		bound = max(bound, c.round(t, chosen, share))
		if bound >= c.best.objective || c.best.objective <= c.bound || c.stop() {
			break
		}
		if c.pool(chosen, share*poolWork); c.best.objective <= c.bound {
			break
		}
		c.vary(chosen, variedSets, share*dealTries)
		c.mend(chosen, share*mendings)
	}
	return max(min(bound, c.best.objective), min(c.bound, c.best.objective))
}

// round explores the tree over the forms apart and anneals at the same time;
// neither sees what the other finds before both are done, so that it doesn't
// matter which is faster; only once the tree has proved its best, which the chains
// can't better, they are left.
func (c *climb) round(t *tree, chosen []int, share int) (bound int) {
	wide, _ := c.root.kernel(max(annealWidth, len(chosen)), c.best.objective)
	narrow, _ := c.root.kernel(narrowWidth*c.p.Forms*c.p.size, c.best.objective)
	seed, before := c.p.rng.Uint64(), *c.best
	var forms [][]Place
	objective, done, proved := none, make(chan bool), atomic.Bool{}
	stop := func() bool { return proved.Load() || c.stop() }
	beside := *c
	beside.best = &before
	go func() {
		defer close(done)
		forms, objective = beside.chains(wide, narrow, share*annealSteps, seed, stop)
	}()
	bound = c.explore(t, chosen, share*treeWork)
	proved.Store(bound >= c.best.objective)
	<-done
	if objective < c.best.objective {
		c.best.offer(forms, c.p.goal)
	}
	return bound
}

func (c *climb) apart(chosen []int) *tree {
	blocks := make([]int, c.p.Forms)
	for b := range blocks {
		blocks[b] = 1
	}
	return c.p.newTree(c.groups(chosen), blocks, c.best, c.floor, c.stop)
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
		for k := range t.split {
			c.split[k] = true
		}
		*t = *c.apart(chosen)
	}
}
