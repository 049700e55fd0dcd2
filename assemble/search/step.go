package search

// step tries one change and says whether it is taken: two seats exchange their items, one takes any
// other item, one takes an item that counts alike and gives nearly as many points, or two of a form do so that together
// the points stay about the same. If another seat has the item to be taken, the two exchange theirs.
func (c *chain) step(heat float64) bool {
	k := c.below(len(c.seats))
	a := &c.seats[k]
	if a.pinned {
		return false
	}
	if c.settled {
		return c.exchange(heat, k, c.partner(a))
	}
	switch kind := c.below(kindsOfStep); {
	case kind < exchanges:
		return c.exchange(heat, k, c.partner(a))
	case kind < exchanges+anyItems:
		return c.take(heat, k, c.anyFor(a))
	case kind < exchanges+anyItems+nearItems:
		return c.take(heat, k, c.nearFor(a, c.points(a.item)))
	}
	l := c.below(len(c.seats))
	b := &c.seats[l]
	if b.pinned || k == l || a.form != b.form {
		return false
	}
	toA := c.free(c.likeFor(a))
	if toA < 0 {
		return false
	}
	toB := c.free(c.nearFor(b, c.points(b.item)+c.points(a.item)-c.points(toA)))
	if toB < 0 || toA == toB || toB == a.item {
		return false
	}
	return c.try(heat, k, l, toA, toB)
}

// points that a typical pupil can expect of an item.
func (c *chain) points(item int32) int { return int(c.items[item].points[typical]) }

// take puts an item on a seat, if there is one, or exchanges it for the seat's own where another seat has it.
func (c *chain) take(heat float64, k int, item int32) bool {
	switch {
	case item < 0:
		return false
	case c.seatOf[item] >= 0:
		return c.exchange(heat, k, int(c.seatOf[item]))
	}
	return c.try(heat, k, nobody, item, 0)
}

// partner for an exchange is mostly a seat of the same row.
func (c *chain) partner(a *seat) int {
	if mates := c.mates[a.row]; len(mates) > 1 && c.below(4) > 0 {
		return int(mates[c.below(len(mates))])
	}
	return c.below(len(c.seats))
}

// exchange lets two seats exchange their items.
func (c *chain) exchange(heat float64, k, l int) bool {
	a, b := &c.seats[k], &c.seats[l]
	if b.pinned || k == l || a.form == b.form && a.row == b.row ||
		c.secondsIn(a.item, b.row) < 0 || c.secondsIn(b.item, a.row) < 0 {
		return false
	}
	return c.try(heat, k, l, b.item, a.item)
}

// nobody is no seat.
const nobody = -1

// try puts an item on seat k, and another on l unless that is nobody, form by form, and takes that back as soon as it
// is clear that the price rises by more than is accepted.
func (c *chain) try(heat float64, k, l int, toA, toB int32) bool {
	a, b := &c.seats[k], (*seat)(nil)
	if l != nobody {
		b = &c.seats[l]
	}
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
			c.sit(k, l, toA, toB)
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
func (c *chain) sit(k, l int, toA, toB int32) {
	c.seatOf[c.seats[k].item] = nobody
	if l != nobody {
		c.seatOf[c.seats[l].item] = nobody
		c.seats[l].item, c.seatOf[toB] = toB, int32(l)
	}
	c.seats[k].item, c.seatOf[toA] = toA, int32(k)
}
