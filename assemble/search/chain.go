package search

import (
	"math"
	"math/rand/v2"
	"slices"
)

// chain is one course of annealing.
type chain struct {
	*annealing
	rng    *rand.Rand
	seats  []seat
	used   []bool
	forms  []chainForm
	prices prices
	among  priced // what forms differ by

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
	priced
}

// priced are breaches and their price.
type priced struct {
	broken breaches
	price  float64
}

func (a *annealing) newChain(rng *rand.Rand) *chain {
	c := &chain{annealing: a, rng: rng, seats: slices.Clone(a.seats), used: make([]bool, len(a.items)), prices: firstPrices(), objective: none}
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

// weigh works out what a form breaks for itself.
func (c *chain) weigh(f int) {
	p, form := c.p, &c.forms[f]
	b := &form.broken
	b[byClash], b[byQuota] = form.clashes, 0
	for q, n := range form.quotas {
		if r := &p.Quotas[q]; n < r.AtLeast {
			b[byQuota] += r.AtLeast - n
		} else if n > r.AtMost {
			b[byQuota] += n - r.AtMost
		}
	}
	if p.MaxSeconds > 0 {
		b[bySecond] = max(0, form.seconds-p.MaxSeconds)
	}
	if p.goal && p.ShareRight > 0 {
		b[byMark] = max(0, max(form.score[typical]-p.markScore, p.markScore-form.score[typical])-markTolerance*p.size)
	}
	form.price = c.prices.of(b)
}

// apart works out what forms break by their differences.
func (c *chain) apart() {
	if len(c.forms) == 1 {
		return
	}
	p, b := c.p, &c.among.broken
	b[bySame], b[byUneven] = 0, 0
	for s := range p.Same {
		if p.Same[s].free {
			continue
		}
		low, high := c.forms[0].same[s], c.forms[0].same[s]
		for f := 1; f < len(c.forms); f++ {
			low, high = min(low, c.forms[f].same[s]), max(high, c.forms[f].same[s])
		}
		b[bySame] += high - low
	}
	for t := 0; p.goal && t < Abilities; t++ {
		low, high := c.lowHigh(t)
		b[byUneven] += len(c.forms) * max(0, high-low-evenTolerance*p.size)
	}
	c.among.price = c.prices.of(b)
}

// lowHigh are the lowest and the highest score of the forms for a pupil.
func (c *chain) lowHigh(t int) (low, high int) {
	low, high = c.forms[0].score[t], c.forms[0].score[t]
	for f := 1; f < len(c.forms); f++ {
		v := c.forms[f].score[t]
		if v < low {
			low = v
		}
		if v > high {
			high = v
		}
	}
	return low, high
}

// total weighs everything anew.
func (c *chain) total() float64 {
	c.apart()
	sum := c.among.price
	for f := range c.forms {
		c.weigh(f)
		sum += c.forms[f].price
	}
	for _, s := range c.seats {
		sum += float64(c.items[s.item].uses)
	}
	return sum
}

// broken is all that is broken at present.
func (c *chain) broken() breaches {
	b := c.among.broken
	for f := range c.forms {
		b.add(&c.forms[f].broken)
	}
	return b
}

// anneal runs the chain until its steps are used up or it reaches the bound.
func (c *chain) anneal(steps, bound int, hot float64, stop func() bool) {
	heat, now := hot, 0.0
	for k := range steps {
		if k%pricesChanged == 0 {
			if stop() || c.objective <= bound {
				return
			}
			heat = hot * math.Pow(annealCold/hot, float64(k)/float64(steps))
			if k > 0 {
				b := c.broken()
				c.prices.adapt(&b)
			}
			now = c.total()
		}
		next := c.step(now, heat)
		if next != now && next < float64(c.objective) {
			c.keep()
		}
		now = next
	}
}

// keep remembers the choice if it keeps all rules and is better than the best.
func (c *chain) keep() {
	if !c.among.broken.keepRules() {
		return
	}
	for f := range c.forms {
		if !c.forms[f].broken.keepRules() {
			return
		}
	}
	objective, p := 0, c.p
	if p.goal {
		for f := range c.forms {
			objective += weight * p.off(c.forms[f].score[typical])
		}
		for t := range Abilities {
			low, high := c.lowHigh(t)
			objective += weight * len(c.forms) * p.uneven(low, high)
		}
	}
	for _, s := range c.seats {
		objective += c.items[s.item].uses
	}
	if objective < c.objective {
		c.objective, c.best = objective, append(c.best[:0], c.seats...)
	}
}

// step tries one change and gives the price afterwards: two seats exchange their items, one takes any other item,
// one takes an item that counts alike and gives nearly as many points, or two of a form do so that together the
// points stay about the same.
func (c *chain) step(now, heat float64) float64 {
	a := &c.seats[c.rng.IntN(len(c.seats))]
	if a.pinned {
		return now
	}
	switch kind := c.rng.IntN(kindsOfStep); {
	case kind < exchanges:
		return c.exchange(now, heat, a)
	case kind < exchanges+anyItems:
		return c.take(now, heat, a, c.anyFor(a))
	case kind < exchanges+anyItems+nearItems:
		return c.take(now, heat, a, c.nearFor(a, c.points(a)))
	}
	b := &c.seats[c.rng.IntN(len(c.seats))]
	if b.pinned || a == b || a.form != b.form {
		return now
	}
	toA := c.likeFor(a)
	if toA < 0 {
		return now
	}
	toB := c.nearFor(b, c.points(b)+c.points(a)-c.items[toA].points[typical])
	if toB < 0 || toA == toB || toB == a.item {
		return now
	}
	return c.try(now, heat, a, b, toA, toB)
}

func (c *chain) points(s *seat) int { return c.items[s.item].points[typical] }

// take puts an item on a seat, if there is one.
func (c *chain) take(now, heat float64, a *seat, item int32) float64 {
	if item < 0 {
		return now
	}
	return c.try(now, heat, a, nil, item, 0)
}

// exchange is mostly with a seat of the same row.
func (c *chain) exchange(now, heat float64, a *seat) float64 {
	b := &c.seats[c.rng.IntN(len(c.seats))]
	if mates := c.mates[a.row]; len(mates) > 1 && c.rng.IntN(4) > 0 {
		b = &c.seats[mates[c.rng.IntN(len(mates))]]
	}
	if b.pinned || a == b || a.form == b.form && a.row == b.row || c.items[a.item].seconds[b.row] < 0 || c.items[b.item].seconds[a.row] < 0 {
		return now
	}
	return c.try(now, heat, a, b, b.item, a.item)
}

// try puts an item on seat a, and another on b if there is one, and takes that
// back unless the rise of the price is accepted.
func (c *chain) try(now, heat float64, a, b *seat, toA, toB int32) float64 {
	before, among := c.priceOf(a, b), c.among
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
	c.apart()
	rise := c.priceOf(a, b) - before + float64(c.items[toA].uses-c.items[wasA].uses)
	if b != nil {
		rise += float64(c.items[toB].uses - c.items[wasB].uses)
	}
	if rise <= 0 || rise < heat*hopeless && c.rng.Float64() < math.Exp(-rise/heat) {
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
	c.among = among
	return now
}

// priceOf is the price of the forms of one or two seats and of what all differ by.
func (c *chain) priceOf(a, b *seat) float64 {
	price := c.among.price
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
