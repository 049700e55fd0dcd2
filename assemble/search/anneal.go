package search

import "math"

// anneal looks for a good choice by simulated annealing: any swap may happen,
// the less likely the more it costs and the later it is. Breaking a rule costs
// little at first and much in the end. (Kirkpatrick and others, Science 220,
// 1983, from memory.)
func (p *problem) anneal(r *root, groups []int, best *incumbent, tries int, stop func() bool) {
	w := p.newSwapper()
	w.fillPool(r, groups)
	if !w.seat(r) || len(w.seats) == 0 {
		return
	}
	const hot, cold = 3000.0, 0.2
	now := w.cost()
	for k := range tries {
		if k%256 == 0 && stop() || best.objective <= r.bound {
			return
		}
		part := float64(k) / float64(tries)
		heat := hot * math.Pow(cold/hot, part)
		w.fine = 2000 + int(40_000*part)
		if k%256 == 0 {
			now = w.cost()
		}
		now = w.step(now, heat)
		if now < best.objective && w.sound() {
			best.offer(w.result(), p.goal)
		}
	}
}

// step tries one random swap and returns the cost afterwards.
func (w *swapper) step(now int, heat float64) int {
	a := &w.seats[w.p.rng.IntN(len(w.seats))]
	if a.pinned {
		return now
	}
	if w.p.rng.IntN(3) == 0 {
		return w.shuffle(a, now, heat)
	}
	pool := w.pool[a.row]
	if len(pool) == 0 {
		return now
	}
	item, old := pool[w.p.rng.IntN(len(pool))], a.item
	if w.used[item] {
		return now
	}
	before := w.touched(a.form) + w.uses(old)
	w.change(a, item)
	if rise := w.touched(a.form) + w.uses(item) - before; w.accept(rise, heat) {
		return now + rise
	}
	w.change(a, old)
	return now
}

// shuffle tries to exchange the items of a seat and a random other one.
func (w *swapper) shuffle(a *seat, now int, heat float64) int {
	b := &w.seats[w.p.rng.IntN(len(w.seats))]
	if a.pinned || b.pinned || a == b || a.form == b.form && a.row == b.row || !w.fits(a.item, b.row) || !w.fits(b.item, a.row) {
		return now
	}
	before := w.both(a, b)
	w.exchange(a, b)
	rise := w.both(a, b) - before
	if w.accept(rise, heat) {
		return now + rise
	}
	w.exchange(a, b)
	return now
}

func (w *swapper) accept(rise int, heat float64) bool {
	return rise <= 0 || w.p.rng.Float64() < math.Exp(-float64(rise)/heat)
}

// change puts another item on a seat.
func (w *swapper) change(s *seat, item int32) {
	w.put(s.form, s.row, s.item, -1)
	s.item = item
	w.put(s.form, s.row, item, 1)
}

// sound says whether no rule is broken.
func (w *swapper) sound() bool {
	for f := range w.forms {
		if w.wrongs(f) > 0 {
			return false
		}
	}
	return true
}
