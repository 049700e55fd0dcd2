package search

import (
	"maps"
	"math"
)

// mend keeps a part of the best choice and lets a small tree find the best rest,
// several times over: some whole forms, and beside it on the other core a random
// part of all places; neither sees what the other finds before both are done.
// (Neighbourhood search by branch and bound: Danna and others, Mathematical
// Programming 102, 2005, from memory.)
func (c *climb) mend(chosen []int, rounds int) {
	wide, _ := c.root.kernel(max(mendWidth, len(chosen)), c.best.objective)
	for range rounds {
		if c.best.forms == nil || c.best.objective <= c.bound || c.stop() {
			return
		}
		pair := []*mending{c.mending(wide, &c.keptForms), c.mending(wide, &c.keptPlaces)}
		c.both(func() {
			if c.p.Forms > 1 {
				pair[0].keepForms().run()
			}
		}, func() { pair[1].keepPlaces().run() })
		for _, m := range pair {
			c.best.take(m.best.forms, m.best.objective)
			maps.Copy(c.split, m.split)
		}
	}
}

// mending is a small tree around a choice, with random numbers of its own.
type mending struct {
	*tree
	bound int
	part  *float64 // of the choice that is kept
}

func (c *climb) mending(groups []int, part *float64) *mending {
	own := *c
	own.p = c.p.withSeed(c.p.rng.Uint64())
	own.best = &incumbent{p: own.p, forms: c.best.forms, objective: c.best.objective}
	return &mending{own.apart(groups), c.bound, part}
}

// run explores the tree. Next time less is kept if this was soon done, else more.
func (m *mending) run() {
	if m.explore(m.bound, mendWork) >= m.best.objective {
		*m.part *= keepLess
	} else {
		*m.part += keepMore * (1 - *m.part)
	}
}

// keepForms keeps whole forms, all but one at most.
func (m *mending) keepForms() *mending {
	n := m.p.Forms
	order, held := m.p.rng.Perm(n), min(n-1, int(math.Round(*m.part*float64(n))))
	kept := func(f int) bool { return order[f] < held }
	m.hold(m.best.forms, kept)
	m.settle(kept)
	return m
}

// keepPlaces keeps places by chance.
func (m *mending) keepPlaces() *mending {
	m.hold(m.best.forms, func(int) bool { return m.p.rng.Float64() < *m.part })
	return m
}

// hold keeps those places of a choice that kept names. That makes forms unlike, so
// none stands for another any more.
func (t *tree) hold(forms [][]Place, kept func(form int) bool) {
	for f := range t.atTop {
		t.atTop[f] = f + 1
	}
	home, stands := map[int]int{}, map[int]int{}
	for _, places := range forms {
		for _, x := range places {
			home[x.Item] = -1
			stands[x.Item]++
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
			switch i := home[x.Item]; {
			case i < 0 || !kept(f):
			case stands[x.Item] == 1:
				t.oneMore(i, x.Row, f)
			case f == 0: // a shared one
				t.oneMore(i, x.Row, asShared)
			}
		}
	}
}

// settle leaves the forms that are kept whole no other choice.
func (t *tree) settle(kept func(form int) bool) {
	for j := range t.Cols {
		if a := &t.about[j]; a.form >= 0 && kept(int(a.form)) {
			t.Cols[j].Up = t.Cols[j].Lo
		}
	}
}

// oneMore makes a form, or all of them, take one more of a group in a row.
func (t *tree) oneMore(i, row, form int) {
	from, to := t.columnsOf(i)
	for j := from; j < to; j++ {
		c, a := &t.Cols[j], &t.about[j]
		if int(a.form) == form && t.groups[i].fits[a.fit].Row == row && c.Lo < c.Up {
			c.Lo++
		}
	}
}
