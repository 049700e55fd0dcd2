package search

// descend swaps while that lowers the cost, and returns the cost in the end.
func (w *swapper) descend(now int, stop func() bool) int {
	for w.left > 0 && !stop() {
		before := now
		for _, k := range w.p.rng.Perm(len(w.seats)) {
			now = w.replace(k, now)
			now = w.trade(k, now)
			if now == 0 {
				return now
			}
		}
		if now == before {
			break
		}
	}
	return now
}

// touched is the price of the forms that a seat belongs to, and of what all
// forms differ by.
func (w *swapper) touched(form int) int {
	if form != asShared {
		return w.price(form) + w.apart()
	}
	t := w.apart()
	for f := range w.forms {
		t += w.price(f)
	}
	return t
}

// replace puts the best unused candidate on seat k, if better than what sits
// there; among equals the choice falls by the seed.
func (w *swapper) replace(k, now int) int {
	s := &w.seats[k]
	if s.pinned || len(w.pool[s.row]) == 0 {
		return now
	}
	old := s.item
	base := w.touched(s.form) + w.uses(old)
	w.put(s.form, s.row, old, -1)
	best, gain := old, 0
	pool := w.pool[s.row]
	from := w.p.rng.IntN(len(pool))
	for n := range pool {
		item := pool[(from+n)%len(pool)]
		if w.used[item] || item == old || base-w.uses(item) <= gain { // even in a perfect form it gains nothing
			continue
		}
		w.left--
		w.put(s.form, s.row, item, 1)
		if g := base - w.touched(s.form) - w.uses(item); g > gain {
			best, gain = item, g
		}
		w.put(s.form, s.row, item, -1)
	}
	s.item = best
	w.put(s.form, s.row, best, 1)
	return now - gain
}

// trade exchanges the items of seat k and another one where that is better.
func (w *swapper) trade(k, now int) int {
	for l := range w.seats {
		a, b := &w.seats[k], &w.seats[l]
		if a.pinned || b.pinned || l == k || a.form == b.form && a.row == b.row || !w.fits(a.item, b.row) || !w.fits(b.item, a.row) {
			continue
		}
		w.left--
		before := w.both(a, b)
		w.exchange(a, b)
		if after := w.both(a, b); after < before {
			now += after - before
		} else {
			w.exchange(a, b)
		}
	}
	return now
}

func (w *swapper) both(a, b *seat) int {
	switch {
	case a.form == b.form || b.form == asShared:
		return w.touched(b.form)
	case a.form == asShared:
		return w.touched(a.form)
	}
	return w.price(a.form) + w.touched(b.form)
}

func (w *swapper) exchange(a, b *seat) {
	w.put(a.form, a.row, a.item, -1)
	w.put(b.form, b.row, b.item, -1)
	a.item, b.item = b.item, a.item
	w.put(a.form, a.row, a.item, 1)
	w.put(b.form, b.row, b.item, 1)
}

func (w *swapper) fits(item int32, row int) bool {
	_, ok := w.p.Items[item].seconds(row)
	return ok
}

// kick replaces a few items by any others, to leave a dead end.
func (w *swapper) kick() {
	for range 3 {
		s := &w.seats[w.p.rng.IntN(len(w.seats))]
		if s.pinned {
			continue
		}
		pool := w.pool[s.row]
		if len(pool) == 0 {
			continue
		}
		if item := pool[w.p.rng.IntN(len(pool))]; !w.used[item] {
			w.change(s, item)
		}
	}
}

// change puts another item on a seat.
func (w *swapper) change(s *seat, item int32) {
	w.put(s.form, s.row, s.item, -1)
	s.item = item
	w.put(s.form, s.row, item, 1)
}
