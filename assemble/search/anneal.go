package search

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"
)

// annealing looks for a good choice by simulated annealing: any exchange may
// happen, the less likely the more it costs and the later it is. Breaking a
// rule costs little at first and much in the end, and points count in
// thousandths, so that every step toward an even quiz is felt. (Kirkpatrick and
// others, Science 220, 1983, from memory.)
//
// It holds what it needs of the candidates in its own compact form.
type annealing struct {
	p     *problem
	items []compact
	rows  [][]int32 // candidates for each row, places in items
	seats []seat    // as they are at the start; their item is a place in items
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

// Prices of a chain. A thousandth of a point costs its part of a hundredth, so
// at hot a whole tenth of a point more is taken as easily as not, and at cold
// one use more hardly ever; warm moves no more than a hundredth or so. A broken rule begins at about a hundredth and ends
// above any gain in points that it could bring.
const (
	annealHot      = 20_000.0
	annealWarm     = 1000.0
	annealCold     = 0.25
	brokenAtFirst  = 3000.0
	brokenAtLast   = 2_000_000.0
	pricesChanged  = 256 // steps between changes of the prices
	thousandth     = weight / hundredth
	exchangesOneIn = 3 // of this many steps one exchanges two seats, the others take a new item
)

// newAnnealing takes the seats and the candidates of a swapper.
func (w *swapper) newAnnealing() *annealing {
	a := &annealing{p: w.p, rows: make([][]int32, len(w.p.Rows)), seats: slices.Clone(w.seats)}
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
			a.rows[r] = append(a.rows[r], add(i))
		}
	}
	for k := range a.seats {
		a.seats[k].item = add(a.seats[k].item)
	}
	a.held = len(clash)
	return a
}

// run anneals several chains of so many steps beside each other and gives the
// best choice that keeps all rules; among equals that of the first chain, so
// that it doesn't matter which is done first.
func (a *annealing) run(chains, steps, bound int, hot float64, seed uint64, stop func() bool) (forms [][]Place, objective int) {
	all := make([]*chain, chains)
	var wait sync.WaitGroup
	for k := range all {
		all[k] = a.newChain(rand.New(rand.NewPCG(seed, uint64(k))))
		wait.Add(1)
		go func() {
			defer wait.Done()
			all[k].anneal(steps, bound, hot, stop)
		}()
	}
	wait.Wait()
	best := all[0]
	for _, c := range all[1:] {
		if c.objective < best.objective {
			best = c
		}
	}
	if best.objective == none {
		return nil, none
	}
	return best.choice(), best.objective
}

// chain is one course of annealing.
type chain struct {
	*annealing
	rng   *rand.Rand
	seats []seat
	used  []bool
	forms []chainForm
	fine  float64

	best      []seat
	objective int
}

// chainForm counts what the rules of a form count.
type chainForm struct {
	quotas, same []int
	held         []uint8
	seconds      int
	clashes      int
	score        Points
	price        float64
	wrong        int
}

func (a *annealing) newChain(rng *rand.Rand) *chain {
	c := &chain{annealing: a, rng: rng, seats: slices.Clone(a.seats), used: make([]bool, len(a.items)), objective: none}
	for range a.p.Forms {
		c.forms = append(c.forms, chainForm{quotas: make([]int, len(a.p.Quotas)), same: make([]int, len(a.p.Same)), held: make([]uint8, a.held)})
	}
	for k := range c.seats {
		c.put(&c.seats[k], c.seats[k].item, 1)
	}
	return c
}

// put adds an item to the counts of a seat's form, or of all, or takes it away
// (n = −1).
func (c *chain) put(s *seat, item int32, n int) {
	it := &c.items[item]
	c.used[item] = n > 0
	first, last := s.form, s.form
	if s.form == asShared {
		first, last = 0, len(c.forms)-1
	}
	for f := first; f <= last; f++ {
		form := &c.forms[f]
		form.seconds += n * int(it.seconds[s.row])
		form.score[0] += n * it.points[0]
		form.score[1] += n * it.points[1]
		form.score[2] += n * it.points[2]
		for _, q := range it.quotas {
			form.quotas[q] += n
		}
		for _, q := range it.same {
			form.same[q] += n
		}
		for _, k := range it.clashes {
			if n > 0 {
				if form.held[k] > 0 {
					form.clashes++
				}
				form.held[k]++
			} else {
				form.held[k]--
				if form.held[k] > 0 {
					form.clashes--
				}
			}
		}
	}
}

// weigh works out the price of a form without what it has in common with others.
func (c *chain) weigh(f int) {
	p, form := c.p, &c.forms[f]
	wrong := form.clashes
	for q, n := range form.quotas {
		if r := &p.Quotas[q]; n < r.AtLeast {
			wrong += r.AtLeast - n
		} else if n > r.AtMost {
			wrong += n - r.AtMost
		}
	}
	if over := form.seconds - p.MaxSeconds; p.MaxSeconds > 0 && over > 0 {
		wrong += (over + 29) / 30
	}
	form.wrong, form.price = wrong, c.fine*float64(wrong)
	if p.goal && p.ShareRight > 0 {
		if miss := max(form.score[typical]-p.markScore, p.markScore-form.score[typical]) - markTolerance*p.size; miss > 0 {
			form.price += float64(thousandth * miss)
		}
	}
}

// apart is the price of what forms differ by.
func (c *chain) apart() float64 {
	if len(c.forms) == 1 {
		return 0
	}
	price, p := 0.0, c.p
	for s := range p.Same {
		if p.Same[s].free {
			continue
		}
		low, high := c.forms[0].same[s], c.forms[0].same[s]
		for f := 1; f < len(c.forms); f++ {
			low, high = min(low, c.forms[f].same[s]), max(high, c.forms[f].same[s])
		}
		price += c.fine * float64(high-low)
	}
	if !p.goal {
		return price
	}
	free := evenTolerance * p.size
	for t := range Abilities {
		low, high := c.forms[0].score[t], c.forms[0].score[t]
		for f := 1; f < len(c.forms); f++ {
			v := c.forms[f].score[t]
			if v < low {
				low = v
			}
			if v > high {
				high = v
			}
		}
		if over := high - low - free; over > 0 {
			price += float64(thousandth * len(c.forms) * over)
		}
	}
	return price
}

// total weighs everything anew.
func (c *chain) total() float64 {
	sum := c.apart()
	for f := range c.forms {
		c.weigh(f)
		sum += c.forms[f].price
	}
	for _, s := range c.seats {
		sum += float64(c.items[s.item].uses)
	}
	return sum
}

// anneal runs the chain until its steps are used up or it reaches the bound.
func (c *chain) anneal(steps, bound int, hot float64, stop func() bool) {
	heat, now := hot, 0.0
	for k := range steps {
		if k%pricesChanged == 0 {
			if stop() || c.objective <= bound {
				return
			}
			part := float64(k) / float64(steps)
			heat = hot * math.Pow(annealCold/hot, part)
			c.fine = brokenAtFirst * math.Pow(brokenAtLast/brokenAtFirst, part)
			now = c.total()
		}
		next := c.step(now, heat)
		if next < now && next < float64(c.objective) {
			c.keep()
		}
		now = next
	}
}

// keep remembers the choice if it keeps all rules and is better than the best.
func (c *chain) keep() {
	objective, p := 0, c.p
	for f := range c.forms {
		if c.forms[f].wrong > 0 {
			return
		}
		objective += weight * p.off(c.forms[f].score[typical])
	}
	for s := range p.Same {
		for f := range c.forms {
			if c.forms[f].same[s] != c.forms[0].same[s] && !p.Same[s].free {
				return
			}
		}
	}
	for t := range Abilities {
		low, high := c.forms[0].score[t], c.forms[0].score[t]
		for f := range c.forms {
			low, high = min(low, c.forms[f].score[t]), max(high, c.forms[f].score[t])
		}
		objective += weight * len(c.forms) * p.uneven(low, high)
	}
	if !p.goal {
		objective = 0
	}
	for _, s := range c.seats {
		objective += c.items[s.item].uses
	}
	if objective < c.objective {
		c.objective, c.best = objective, append(c.best[:0], c.seats...)
	}
}

// step tries one exchange and gives the price afterwards.
func (c *chain) step(now, heat float64) float64 {
	a := &c.seats[c.rng.IntN(len(c.seats))]
	if a.pinned {
		return now
	}
	if c.rng.IntN(exchangesOneIn) == 0 {
		b := &c.seats[c.rng.IntN(len(c.seats))]
		if b.pinned || a == b || a.form == b.form && a.row == b.row || c.items[a.item].seconds[b.row] < 0 || c.items[b.item].seconds[a.row] < 0 {
			return now
		}
		return c.try(now, heat, a, b, b.item, a.item)
	}
	pool := c.rows[a.row]
	if len(pool) == 0 {
		return now
	}
	item := pool[c.rng.IntN(len(pool))]
	if c.used[item] {
		return now
	}
	return c.try(now, heat, a, nil, item, 0)
}

// try puts an item on seat a, and another on b if there is one, and takes that
// back unless the rise of the price is accepted.
func (c *chain) try(now, heat float64, a, b *seat, toA, toB int32) float64 {
	before := c.priceOf(a, b)
	wasA, wasB := a.item, int32(0)
	c.put(a, wasA, -1)
	if b != nil {
		wasB = b.item
		c.put(b, wasB, -1)
		c.put(b, toB, 1)
		b.item = toB
	}
	c.put(a, toA, 1)
	a.item = toA
	c.weighAgain(a, b)
	rise := c.priceOf(a, b) - before + float64(c.items[toA].uses-c.items[wasA].uses)
	if b != nil {
		rise += float64(c.items[toB].uses - c.items[wasB].uses)
	}
	if rise <= 0 || c.rng.Float64() < math.Exp(-rise/heat) {
		return now + rise
	}
	c.put(a, toA, -1)
	if b != nil {
		c.put(b, toB, -1)
		c.put(b, wasB, 1)
		b.item = wasB
	}
	c.put(a, wasA, 1)
	a.item = wasA
	c.weighAgain(a, b)
	return now
}

// priceOf is the price of the forms of one or two seats and of what all differ by.
func (c *chain) priceOf(a, b *seat) float64 {
	price := c.apart()
	for f := range c.forms {
		if touches(a, f) || touches(b, f) {
			price += c.forms[f].price
		}
	}
	return price
}

func (c *chain) weighAgain(a, b *seat) {
	for f := range c.forms {
		if touches(a, f) || touches(b, f) {
			c.weigh(f)
		}
	}
}

func touches(s *seat, f int) bool { return s != nil && (s.form == f || s.form == asShared) }

// choice is the best choice of the chain.
func (c *chain) choice() [][]Place {
	forms := make([][]Place, len(c.forms))
	for k := range c.best {
		for f := range forms {
			if s := &c.best[k]; touches(s, f) {
				forms[f] = append(forms[f], Place{int(c.items[s.item].item), s.row})
			}
		}
	}
	for _, places := range forms {
		slices.SortFunc(places, comparePlaces)
	}
	return forms
}

// readyToAnneal seats a first choice among the groups; nil if there is none.
func (p *problem) readyToAnneal(r *root, groups []int) *swapper {
	w := p.newSwapper()
	w.fillPool(r, groups)
	if !w.seat(r) || len(w.seats) == 0 {
		return nil
	}
	return w
}

// dealtToAnneal seats a set of items that was found; nil if it can't be dealt.
func (p *problem) dealtToAnneal(r *root, groups []int, dealt func(*swapper)) *swapper {
	w := p.newSwapper()
	w.fillPool(r, groups)
	if dealt(w); !w.level() {
		return nil
	}
	return w
}
