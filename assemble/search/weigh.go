package search

import "math/bits"

// chainForm counts what the rules of a form count.
type chainForm struct {
	sums
	was    sums    // before the step that is tried
	counts []int32 // of each quota, then of each set of Same
	held   []uint8 // items of each clash group
}

// sums are what a form breaks for itself, and what the rules for it sum up.
type sums struct {
	score   [Abilities]int32
	seconds int32
	quotas  int32 // by how much quotas are broken
	clashes int32 // items too many in clash groups
	price   float64
}

// limits are what a form may have at no price.
type limits struct {
	seconds   int32
	low, high int32 // a typical pupil's score
	apart     int32 // that the scores of two forms may be
}

// endless is more than any sum.
const endless = 1 << 30

// limits of a form: where nothing is asked, endless any.
func (p *problem) limits() limits {
	l := limits{seconds: endless, low: -endless, high: endless, apart: endless}
	if p.MaxSeconds > 0 {
		l.seconds = int32(min(p.MaxSeconds, endless))
	}
	if p.goal && p.ShareRight > 0 {
		l.low, l.high = int32(p.markScore-markTolerance*p.size), int32(p.markScore+markTolerance*p.size)
	}
	if p.goal {
		l.apart = int32(evenTolerance * p.size)
	}
	return l
}

// put adds an item to a form.
func (c *chain) put(form *chainForm, item int32, row int) {
	form.seconds += int32(c.secondsIn(item, row))
	for t, p := range c.items[item].points {
		form.score[t] += p
	}
	for w := range c.words {
		c.count(form, w, c.counts[int(item)*c.words+w], 1)
	}
	for _, k := range c.items[item].clashes {
		form.hold(k)
	}
}

// count adds n to the counts whose bits are set in a word.
func (a *annealing) count(form *chainForm, word int, set uint64, n int32) {
	for ; set != 0; set &= set - 1 {
		q := 64*word + bits.TrailingZeros64(set)
		before := form.counts[q]
		form.counts[q] = before + n
		form.quotas += a.broken[q][before+n] - a.broken[q][before]
	}
}

// hold adds an item to a clash group.
func (form *chainForm) hold(k int32) {
	if form.held[k] > 0 {
		form.clashes++
	}
	form.held[k]++
}

// release takes one away.
func (form *chainForm) release(k int32) {
	form.held[k]--
	if form.held[k] > 0 {
		form.clashes--
	}
}

// replace counts an item in the place of another.
func (c *chain) replace(form *chainForm, out, in int32, row int) {
	o, i := &c.items[out], &c.items[in]
	form.seconds += int32(c.secondsIn(in, row) - c.secondsIn(out, row))
	form.score[0] += i.points[0] - o.points[0]
	form.score[1] += i.points[1] - o.points[1]
	form.score[2] += i.points[2] - o.points[2]
	c.recount(form, out, in)
}

// recount does so in quotas, sets and clash groups.
func (c *chain) recount(form *chainForm, out, in int32) {
	for w := range c.words {
		if o, i := c.counts[int(out)*c.words+w], c.counts[int(in)*c.words+w]; o != i {
			c.count(form, w, o&^i, -1)
			c.count(form, w, i&^o, 1)
		}
	}
	for _, k := range c.items[out].clashes {
		form.release(k)
	}
	for _, k := range c.items[in].clashes {
		form.hold(k)
	}
}

// breaches adds what a form breaks for itself.
func (s *sums) breaches(l *limits, b *breaches) {
	b[byClash] += int(s.clashes)
	b[byQuota] += int(s.quotas)
	b[bySecond] += int(max(0, s.seconds-l.seconds))
	b[byMark] += int(max(0, s.score[typical]-l.high, l.low-s.score[typical]))
}

// apart works out what forms break by their differences.
func (c *chain) apart() (unlike, uneven int32) {
	for s := range c.p.Same {
		if !c.p.Same[s].free {
			unlike += c.unlikeIn(len(c.p.Quotas) + s)
		}
	}
	for t := range Abilities {
		low, high := c.scoreRange(t)
		uneven += max(0, high-low-c.limits.apart)
	}
	return unlike, uneven * int32(len(c.forms))
}

// unlikeIn is by how much the forms differ in a count.
func (c *chain) unlikeIn(count int) int32 {
	low := c.forms[0].counts[count]
	high := low
	for f := 1; f < len(c.forms); f++ {
		v := c.forms[f].counts[count]
		low, high = min(low, v), max(high, v)
	}
	return high - low
}

// scoreRange are the lowest and the highest score of the forms for a pupil.
func (c *chain) scoreRange(t int) (low, high int32) {
	low = c.forms[0].score[t]
	high = low
	for f := 1; f < len(c.forms); f++ {
		v := c.forms[f].score[t]
		low, high = min(low, v), max(high, v)
	}
	return low, high
}
