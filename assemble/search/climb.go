package search

// climb looks for the best choice among some groups.
type climb struct {
	p     *problem
	root  *root
	best  *incumbent
	split map[int]bool // clash groups that the tree tells apart
	stop  func() bool
}

// run swaps a little, climbs the tree a little, looks harder for good choices
// and climbs on. It returns the bound proved over the groups. Unless they are
// all that matter, it gives up after a while.
func (c *climb) run(chosen []int, all bool) int {
	c.p.start(c.root, chosen, c.best, 50_000, c.stop)
	if c.best.objective <= c.root.bound {
		return c.root.bound
	}
	t := c.tree(chosen)
	bound := c.explore(t, chosen, 100)
	if bound >= c.best.objective {
		return bound
	}
	c.p.start(c.root, chosen, c.best, 300_000, c.stop)
	c.p.anneal(c.root, chosen, c.best, 300_000, c.stop)
	c.mend(chosen, 30)
	if all {
		bound = c.explore(t, chosen, 0)
	}
	return bound
}

func (c *climb) tree(chosen []int) *tree {
	groups := make([]group, len(chosen))
	for k, i := range chosen {
		groups[k] = c.p.groups[i]
	}
	return c.p.tree(c.p.split(groups, c.split), c.best, c.root.floor(), c.stop)
}

// explore searches up to a number of nodes (0: all), starting again with finer
// groups when clashes ask for it.
func (c *climb) explore(t *tree, chosen []int, limit int) int {
	for {
		bound := t.explore(c.root.bound, limit)
		if len(t.split) == 0 {
			return min(bound, c.best.objective)
		}
		for k := range t.split {
			c.split[k] = true
		}
		*t = *c.tree(chosen)
	}
}

// mend keeps a random part of the best choice and lets a small tree find the
// best rest, several times over, keeping less whenever that was soon done
// (neighbourhood search by branch and bound: Danna and others, Mathematical
// Programming 102, 2005, from memory).
func (c *climb) mend(chosen []int, rounds int) {
	part := 0.5
	for range rounds {
		if c.best.forms == nil || c.best.objective <= c.root.bound || c.stop() {
			return
		}
		t := c.tree(chosen)
		t.keep(c.best.forms, part)
		if t.explore(c.root.bound, 150) >= c.best.objective {
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
		c := &t.cols[j]
		if int(c.form) == form && t.groups[i].fits[c.fit].Row == row && c.lo < c.up {
			c.lo++
		}
	}
}
