package search

// step tries one change and says whether it is taken: two seats exchange their items, one takes any
// other item, one takes an item that counts alike and gives nearly as many points, or two of a form do so that together
// the points stay about the same.
func (c *chain) step(heat float64) bool {
	a := &c.seats[c.below(len(c.seats))]
	if a.pinned {
		return false
	}
	switch kind := c.below(kindsOfStep); {
	case kind < exchanges:
		return c.exchange(heat, a)
	case kind < exchanges+anyItems:
		return c.take(heat, a, c.anyFor(a))
	case kind < exchanges+anyItems+nearItems:
		return c.take(heat, a, c.nearFor(a, c.points(a.item)))
	}
	b := &c.seats[c.below(len(c.seats))]
	if b.pinned || a == b || a.form != b.form {
		return false
	}
	toA := c.likeFor(a)
	if toA < 0 {
		return false
	}
	toB := c.nearFor(b, c.points(b.item)+c.points(a.item)-c.points(toA))
	if toB < 0 || toA == toB || toB == a.item {
		return false
	}
	return c.try(heat, a, b, toA, toB)
}

// points that a typical pupil can expect of an item.
func (c *chain) points(item int32) int { return int(c.items[item].points[typical]) }

// take puts an item on a seat, if there is one.
func (c *chain) take(heat float64, a *seat, item int32) bool {
	if item < 0 {
		return false
	}
	return c.try(heat, a, nil, item, 0)
}

// exchange is mostly with a seat of the same row.
func (c *chain) exchange(heat float64, a *seat) bool {
	b := &c.seats[c.below(len(c.seats))]
	if mates := c.mates[a.row]; len(mates) > 1 && c.below(4) > 0 {
		b = &c.seats[mates[c.below(len(mates))]]
	}
	if b.pinned || a == b || a.form == b.form && a.row == b.row ||
		c.secondsIn(a.item, b.row) < 0 || c.secondsIn(b.item, a.row) < 0 {
		return false
	}
	return c.try(heat, a, b, b.item, a.item)
}

// try puts an item on seat a, and another on b if there is one, form by form, and takes that back as soon as it is
// clear that the price rises by more than is accepted.
func (c *chain) try(heat float64, a, b *seat, toA, toB int32) bool {
	most, fall := heat*c.patience(), c.among // how far the price may rise, and what it can fall by at most from here on
	uses := c.items[toA].uses - c.items[a.item].uses
	if b != nil {
		uses += c.items[toB].uses - c.items[b.item].uses
	}
	rise := c.prices[byUse] * float64(uses)
	for f := range c.forms {
		if touches(a, f) || touches(b, f) {
			fall += c.forms[f].price
		}
	}
	f := 0
	for ; f < len(c.forms) && rise-fall < most; f++ {
		if touches(a, f) || touches(b, f) {
			fall -= c.forms[f].price
			rise += c.change(f, a, b, toA, toB)
		}
	}
	if rise-fall < most {
		unlike, uneven := c.apart()
		among := c.prices.among(unlike, uneven)
		if rise += among - c.among; rise < most {
			c.unlike, c.uneven, c.among = unlike, uneven, among
			c.uses += int(uses)
			c.sit(a, b, toA, toB)
			return true
		}
	}
	for f--; f >= 0; f-- {
		if touches(a, f) || touches(b, f) {
			c.takeBack(f, a, b, toA, toB)
		}
	}
	return false
}

func touches(s *seat, f int) bool { return s != nil && (s.form == f || s.form == asShared) }

// change counts the items that come to a form in the place of those that go, and gives what its price rises by.
func (c *chain) change(f int, a, b *seat, toA, toB int32) float64 {
	form := &c.forms[f]
	form.was = form.sums
	if touches(a, f) {
		c.replace(form, a.item, toA, a.row)
	}
	if touches(b, f) {
		c.replace(form, b.item, toB, b.row)
	}
	c.prices.weigh(&form.sums, &c.limits)
	return form.price - form.was.price
}

// takeBack undoes a change.
func (c *chain) takeBack(f int, a, b *seat, toA, toB int32) {
	form := &c.forms[f]
	if touches(a, f) {
		c.recount(form, toA, a.item)
	}
	if touches(b, f) {
		c.recount(form, toB, b.item)
	}
	form.sums = form.was
}

// sit puts the items on their seats.
func (c *chain) sit(a, b *seat, toA, toB int32) {
	c.used[a.item] = false
	if b != nil {
		c.used[b.item], c.used[toB] = false, true
		b.item = toB
	}
	c.used[toA] = true
	a.item = toA
}
