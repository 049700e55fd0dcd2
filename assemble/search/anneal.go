package search

import "slices"

// annealing looks for a good choice by simulated annealing: any exchange may
// happen, the less likely the more it costs and the later it is. Rules may be
// broken at a price (see prices), and points count in thousandths, so that every
// step toward an even quiz is felt. (Kirkpatrick and others, Science 220, 1983,
// from memory.)
//
// It holds what it needs of the candidates in its own compact form.
type annealing struct {
	p       *problem
	items   []compact
	seconds []int32   // of each item, row by row, or −1 where it doesn't fit
	counts  []uint64  // of each item, in words of 64: the quotas that it counts in, then the sets of Same
	words   int       // that an item has
	broken  [][]int32 // for each of these and each number of items by how much it is broken; sets are compared elsewhere
	rows    []ladder  // candidates for each row
	seats   []seat    // as they are at the start; their item is a place in items
	mates   [][]int32 // seats of each row that may change
	settled bool      // there are no candidates but those on seats
}

// compact is a candidate.
type compact struct {
	item    int32
	uses    int32
	points  [Abilities]int32
	clashes []int32
}

// How a chain goes on. Heat is in uses: at hot one use more is taken one time in twelve, at cold hardly ever.
const (
	annealHot     = 0.4
	annealWarm    = 0.3 // keeps most of a choice
	annealCold    = 0.1
	pricesChanged = 256 // steps between changes of the prices

	// Of so many steps, how many exchange two seats, take any item, and take one nearby; the others change two seats.
	kindsOfStep, exchanges, anyItems, nearItems = 6, 2, 2, 1

	widestStep = 5 // a step nearby is at most 2 to this power along the ladder
)

// newAnnealing takes the seats and the candidates of a swapper.
func (w *swapper) newAnnealing() *annealing {
	a := &annealing{p: w.p, rows: make([]ladder, len(w.p.Rows)), seats: slices.Clone(w.seats)}
	a.words = (len(a.p.Quotas) + len(a.p.Same) + 63) / 64
	place := map[int32]int32{}
	add := func(i int32) int32 {
		at, ok := place[i]
		if !ok {
			at = int32(len(a.items))
			place[i] = at
			a.add(i, int32(w.uses(i)))
		}
		return at
	}
	a.settled = w.pool == nil
	for r, pool := range w.pool {
		for _, i := range pool {
			a.rows[r].items = append(a.rows[r].items, add(i))
		}
	}
	for k := range a.seats {
		a.seats[k].item = add(a.seats[k].item)
	}
	a.breaking()
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

// add adds a candidate.
func (a *annealing) add(item, uses int32) {
	it := &a.p.Items[item]
	c := compact{item: item, uses: uses}
	for t := range c.points {
		c.points[t] = int32(it.Points[t])
	}
	for _, k := range it.Clashes {
		c.clashes = append(c.clashes, int32(k))
	}
	a.items = append(a.items, c)
	for r := range a.p.Rows {
		seconds, ok := it.seconds(r)
		if !ok {
			seconds = -1
		}
		a.seconds = append(a.seconds, int32(seconds))
	}
	counts := make([]uint64, a.words)
	for _, q := range it.Quotas {
		counts[q/64] |= 1 << (q % 64)
	}
	for _, s := range it.Same {
		s += len(a.p.Quotas)
		counts[s/64] |= 1 << (s % 64)
	}
	a.counts = append(a.counts, counts...)
}

// breaking works out by how much each number of items would break each quota.
func (a *annealing) breaking() {
	for _, q := range a.p.Quotas {
		broken := make([]int32, a.p.size+1)
		for n := range broken {
			broken[n] = int32(max(0, q.AtLeast-n, n-q.AtMost))
		}
		a.broken = append(a.broken, broken)
	}
	for range a.p.Same {
		a.broken = append(a.broken, make([]int32, a.p.size+1))
	}
}

// secondsIn is how long an item takes in a row, or −1 where it doesn't fit.
func (a *annealing) secondsIn(item int32, row int) int {
	return int(a.seconds[int(item)*len(a.rows)+row])
}
