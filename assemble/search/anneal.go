package search

import (
	"math/rand/v2"
	"slices"
)

// annealing looks for a good choice by simulated annealing: any exchange may
// happen, the less likely the more it costs and the later it is. Rules may be
// broken at a price (see prices), and points count in thousandths, so that every
// step toward an even quiz is felt. (Kirkpatrick and others, Science 220, 1983,
// from memory.)
//
// It holds what it needs of the candidates in its own compact form.
type annealing struct {
	p     *problem
	items []compact
	rows  []ladder  // candidates for each row
	seats []seat    // as they are at the start; their item is a place in items
	mates [][]int32 // seats of each row that may change
	held  int       // how many clash groups there are
}

// compact is a candidate with its clash groups numbered anew.
type compact struct {
	item    int32
	points  Points
	uses    int
	quotas  []int
	same    []int
	clashes []int32
	seconds []int32 // by row, or −1 where it doesn't fit
}

// How a chain goes on. Heat is in uses: at hot one use more is taken one time in five, at cold hardly ever.
const (
	annealHot     = 0.6
	annealWarm    = 0.3 // keeps most of a choice
	annealCold    = 0.1
	pricesChanged = 256  // steps between changes of the prices
	hopeless      = 30.0 // a rise of so many times the heat is never taken

	// Of so many steps, how many exchange two seats, take any item, and take one nearby; the others change two seats.
	kindsOfStep, exchanges, anyItems, nearItems = 6, 2, 2, 1

	widestStep = 5 // a step nearby is at most 2 to this power along the ladder
)

// newAnnealing takes the seats and the candidates of a swapper.
func (w *swapper) newAnnealing() *annealing {
	a := &annealing{p: w.p, rows: make([]ladder, len(w.p.Rows)), seats: slices.Clone(w.seats)}
	place, clash := map[int32]int32{}, map[int]int32{}
	add := func(i int32) int32 {
		if at, ok := place[i]; ok {
			return at
		}
		it := &w.p.Items[i]
		c := compact{item: i, points: it.Points, uses: w.uses(i), quotas: it.Quotas, same: it.Same, seconds: make([]int32, len(w.p.Rows))}
		for r := range c.seconds {
			c.seconds[r] = -1
		}
		for _, f := range it.Fits {
			c.seconds[f.Row] = int32(f.Seconds)
		}
		for _, k := range it.Clashes {
			n, ok := clash[k]
			if !ok {
				n = int32(len(clash))
				clash[k] = n
			}
			c.clashes = append(c.clashes, n)
		}
		place[i] = int32(len(a.items))
		a.items = append(a.items, c)
		return place[i]
	}
	for r, pool := range w.pool {
		for _, i := range pool {
			a.rows[r].items = append(a.rows[r].items, add(i))
		}
	}
	for k := range a.seats {
		a.seats[k].item = add(a.seats[k].item)
	}
	a.held = len(clash)
	for r := range a.rows {
		a.rows[r].sort(a.items, w.p)
	}
	a.mates = make([][]int32, len(a.rows))
	for k, s := range a.seats {
		if !s.pinned {
			a.mates[s.row] = append(a.mates[s.row], int32(k))
		}
	}
	return a
}

// run anneals a chain of so many steps and gives the best choice that keeps all rules.
func (a *annealing) run(steps, bound int, hot float64, seed uint64, stop func() bool) (forms [][]Place, objective int) {
	c := a.newChain(rand.New(rand.NewPCG(seed, 0)))
	if c.anneal(steps, bound, hot, stop); c.objective == none {
		return nil, none
	}
	return c.choice(), c.objective
}
