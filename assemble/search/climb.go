package search

// climb looks for the best choice among some groups.
type climb struct {
	p     *problem
	root  *root
	best  *incumbent
	split map[int]bool // clash groups that the tree tells apart
	stop  func() bool
	bound int // no choice among the groups has a smaller objective
	floor int // of the sum of excesses
}

// run swaps a little, climbs the tree over all forms together and that over
// the forms apart a little, looks harder for good choices and climbs on. It
// returns the bound proved over the groups. Unless they are all that matter,
// it gives up after a while.
func (c *climb) run(chosen []int, all bool) int {
	c.p.quickChoice(c.root, chosen, c.best, 50_000, c.stop)
	if c.best.objective <= c.root.bound {
		return c.root.bound
	}
	c.pool(chosen)
	c.p.anneal(c.root, chosen, c.best, 2, annealShort, c.stop)
	if c.best.objective <= c.bound {
		return c.bound
	}
	if c.vary(chosen, 10, 30_000); c.best.objective <= c.bound {
		return c.bound
	}
	c.p.anneal(c.root, chosen, c.best, 2, annealLong, c.stop)
	t := c.apart(chosen)
	bound := c.explore(t, chosen, 100)
	if bound >= c.best.objective {
		return bound
	}
	c.mend(chosen, 30)
	for limit := 1000; all && bound < c.best.objective && !c.stop(); limit *= 2 {
		c.p.anneal(c.root, chosen, c.best, 2, annealLong, c.stop)
		bound = c.explore(t, chosen, t.nodes+limit)
	}
	return bound
}

// Steps of a chain: the short one is a fraction of a second and most often
// enough, the long one some seconds.
const (
	annealShort = 300_000
	annealLong  = 3_000_000
)

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

// explore searches up to a number of nodes, starting again with finer
// groups when clashes ask for it.
func (c *climb) explore(t *tree, chosen []int, limit int) int {
	for {
		bound := t.explore(c.bound, limit)
		if len(t.split) == 0 {
			return min(bound, c.best.objective)
		}
		for k := range t.split {
			c.split[k] = true
		}
		*t = *c.apart(chosen)
	}
}

// mend keeps a random part of the best choice and lets a small tree find the
// best rest, several times over, keeping less whenever that was soon done
// (neighbourhood search by branch and bound: Danna and others, Mathematical
// Programming 102, 2005, from memory).
func (c *climb) mend(chosen []int, rounds int) {
	part := 0.5
	for range rounds {
		if c.best.forms == nil || c.best.objective <= c.bound || c.stop() {
			return
		}
		t := c.apart(chosen)
		t.keep(c.best.forms, part)
		if t.explore(c.bound, 150) >= c.best.objective {
			part *= 0.85
		} else {
			part += 0.2 * (1 - part)
		}
		for k := range t.split {
			c.split[k] = true
		}
	}
}

// keep holds about a part of the items of a choice where they are.
func (t *tree) keep(forms [][]Place, part float64) {
	home := map[int]int{}
	for _, places := range forms {
		for _, x := range places {
			home[x.Item] = -1
		}
	}
	for i := range t.groups {
		for _, item := range t.groups[i].members {
			if _, ok := home[int(item)]; ok {
				home[int(item)] = i
			}
		}
	}
	for f, places := range forms {
		for _, x := range places {
			if i := home[x.Item]; i >= 0 && t.p.rng.Float64() < part {
				t.hold(i, x.Row, f)
			}
		}
	}
}

// hold makes a form take one more of a group in a row.
func (t *tree) hold(i, row, form int) {
	from, to := t.columnsOf(i)
	for j := from; j < to; j++ {
		c, a := &t.Cols[j], &t.about[j]
		if int(a.form) == form && t.groups[i].fits[a.fit].Row == row && c.Lo < c.Up {
			c.Lo++
		}
	}
}
