package search

import (
	"math"
	"slices"
)

// chain is one course of annealing.
type chain struct {
	*annealing
	dice
	seats  []seat
	seatOf []int32 // by item, or nobody
	forms  []chainForm
	prices prices
	most   prices // that they may become
	limits limits
	uses   int

	unlike, uneven int32   // what forms break by their differences
	among          float64 // its price

	best      []seat
	objective int
	bestUses  int
}

// newChain begins with the seats as they are; point is the most that a thousandth of a point may cost.
func (a *annealing) newChain(seed dice, point float64) *chain {
	c := &chain{annealing: a, dice: seed, seats: slices.Clone(a.seats), seatOf: slices.Repeat([]int32{nobody}, len(a.items)),
		prices: firstPrices(), most: mostPrices(point), limits: a.p.limits(), objective: none, bestUses: none}
	for range a.p.Forms {
		form := chainForm{counts: make([]int32, len(a.broken)), held: make([]uint8, a.p.clashes)}
		for q := range a.broken {
			form.quotas += a.broken[q][0]
		}
		c.forms = append(c.forms, form)
	}
	for k := range c.seats {
		s := &c.seats[k]
		c.seatOf[s.item] = int32(k)
		c.uses += int(c.items[s.item].uses)
		first, last := c.formsOf(s)
		for f := first; f <= last; f++ {
			c.put(&c.forms[f], s.item, s.row)
		}
	}
	return c
}

// formsOf are the first and the last form that a seat belongs to.
func (c *chain) formsOf(s *seat) (first, last int) {
	if s.form == asShared {
		return 0, len(c.forms) - 1
	}
	return s.form, s.form
}

// anneal runs the chain until its steps are used up or it reaches the bound.
func (c *chain) anneal(steps, bound int, hot float64, stop func() bool) {
	heat := hot
	for k := range steps {
		if k%pricesChanged == 0 {
			if stop() || c.objective <= bound {
				return
			}
			heat = hot * math.Pow(annealCold/hot, float64(k)/float64(steps))
			b := c.broken()
			c.prices.adapt(&b, &c.most)
			if c.objective/weight > bound/weight { // points count first
				c.prices[byUse] = 1
			}
			c.weighAll()
			c.keep()
		}
		if c.step(heat) {
			c.keep()
		}
	}
}

// weighAll weighs everything anew.
func (c *chain) weighAll() {
	c.unlike, c.uneven = c.apart()
	c.among = c.prices.among(c.unlike, c.uneven)
	for f := range c.forms {
		c.prices.weigh(&c.forms[f].sums, &c.limits)
	}
}

// broken is all that is broken at present.
func (c *chain) broken() breaches {
	b := breaches{bySame: int(c.unlike), byUneven: int(c.uneven), byUse: max(0, c.uses-(c.bestUses-1))}
	for f := range c.forms {
		c.forms[f].breaches(&c.limits, &b)
	}
	return b
}

// keep remembers the choice if it keeps all rules and is better than the best.
func (c *chain) keep() {
	if c.unlike > 0 || c.uses >= c.objective {
		return
	}
	for f := range c.forms {
		if s := &c.forms[f]; s.clashes|s.quotas != 0 || s.seconds > c.limits.seconds {
			return
		}
	}
	objective, p := c.uses, c.p
	if p.goal {
		for f := range c.forms {
			objective += weight * p.off(int(c.forms[f].score[typical]))
		}
		for t := range Abilities {
			low, high := c.scoreRange(t)
			objective += weight * len(c.forms) * p.uneven(int(low), int(high))
		}
	}
	if objective < c.objective {
		c.objective, c.bestUses, c.best = objective, c.uses, append(c.best[:0], c.seats...)
	}
}

// choice is the best choice of the chain.
func (c *chain) choice() [][]Place {
	forms := make([][]Place, len(c.forms))
	for k := range c.best {
		s := &c.best[k]
		first, last := c.formsOf(s)
		for f := first; f <= last; f++ {
			forms[f] = append(forms[f], Place{int(c.items[s.item].item), s.row})
		}
	}
	for _, places := range forms {
		slices.SortFunc(places, comparePlaces)
	}
	return forms
}
