package search

import (
	"cmp"
	"slices"
)

// evener makes the forms of a finished solution more alike by swaps that keep
// every rule and never raise the objective: first the counts in each balance,
// then how long their items were not used, then which answers are right. It is not proved best.
type evener struct {
	*swapper
	counts  [][]int // by balance, then form
	late    int     // Σ LastUse of the items seated
	answers [][]int // by Answer, then form
}

// even returns the forms made more alike.
func (p *problem) even(forms [][]Place, stop func() bool) [][]Place {
	if len(forms[0]) == 0 {
		return forms
	}
	e := &evener{swapper: p.newSwapper(), counts: make([][]int, len(p.Balances))}
	for b := range e.counts {
		e.counts[b] = make([]int, p.Forms)
	}
	for _, item := range p.Items {
		for len(e.answers) <= item.Answer {
			e.answers = append(e.answers, make([]int, p.Forms))
		}
	}
	e.pool = p.candidates(200)
	e.seatAll(forms)
	for _, s := range e.seats {
		e.count(s.form, s.item, 1)
	}
	now, before := e.unlikeness(), likeness{counts: -1}
	for now != before && !stop() {
		before = now
		for k := range e.seats {
			now = e.better(k, now)
		}
	}
	return e.result()
}

// candidates lists up to n items for each row, from a random place on.
func (p *problem) candidates(n int) [][]int32 {
	pool := make([][]int32, len(p.Rows))
	if len(p.groups) == 0 {
		return pool
	}
	from, open := p.rng.IntN(len(p.groups)), len(p.Rows)
	for k := 0; k < len(p.groups) && open > 0; k++ {
		g := &p.groups[(from+k)%len(p.groups)]
		if g.fixed != nil {
			continue
		}
		for _, fit := range g.fits {
			take := min(len(g.members), n-len(pool[fit.Row]), 2*p.Forms)
			pool[fit.Row] = append(pool[fit.Row], g.members[:take]...)
			open -= ones(take > 0 && len(pool[fit.Row]) == n)
		}
	}
	return pool
}

// seatAll seats the items of a solution; those in all forms are the shared.
func (w *swapper) seatAll(forms [][]Place) {
	pinned := map[int]bool{}
	for _, x := range w.p.Fixed {
		pinned[x.Item] = true
	}
	for f, places := range forms {
		for _, x := range places {
			form := f
			if w.p.Shared > 0 && !slices.ContainsFunc(forms, func(other []Place) bool { return !slices.Contains(other, x) }) {
				form = asShared
			}
			if form != asShared || f == 0 {
				w.sit(seat{form: form, row: x.Row, pinned: pinned[x.Item]}, int32(x.Item))
			}
		}
	}
}

// count adds an item to the balances of its form; a shared item tips none.
func (e *evener) count(form int, item int32, n int) {
	e.late += n * e.p.Items[item].LastUse
	right := e.answers[e.p.Items[item].Answer]
	if form == asShared {
		for f := range right {
			right[f] += n
		}
		return
	}
	right[form] += n
	for _, b := range e.p.Items[item].Balances {
		e.counts[b][form] += n
	}
}

// unlikeness measures how much could be better about forms of one objective: for
// each balance the sum of the squared differences between forms, far below
// it how lately their items were used, and last how unevenly the answers of a form
// come that several of its items offer: the sum of their squared numbers.
func (e *evener) unlikeness() likeness {
	now := likeness{late: e.late}
	for _, counts := range e.counts {
		sum, squares := 0, 0
		for _, n := range counts {
			sum += n
			squares += n * n
		}
		now.counts += len(counts)*squares - sum*sum
	}
	for _, right := range e.answers[1:] {
		for _, n := range right {
			now.answers += n * n
		}
	}
	return now
}

// likeness is the smaller the better, first by counts.
type likeness struct{ counts, late, answers int }

func (l likeness) less(o likeness) bool {
	return cmp.Or(cmp.Compare(l.counts, o.counts), cmp.Compare(l.late, o.late), cmp.Compare(l.answers, o.answers)) < 0
}

// better tries other items on seat k, taken from other seats or unused, and
// keeps what makes the forms more alike.
func (e *evener) better(k int, now likeness) likeness {
	a := &e.seats[k]
	if a.pinned || a.form == asShared {
		return now
	}
	for l := range e.seats {
		b := &e.seats[l]
		if b.pinned || b.form == asShared || b.form == a.form || !e.fits(a.item, b.row) || !e.fits(b.item, a.row) {
			continue
		}
		price := e.both(a, b)
		e.swap(a, b)
		if after := e.unlikeness(); after.less(now) && e.both(a, b) <= price {
			now = after
		} else {
			e.swap(a, b)
		}
	}
	for _, item := range e.pool[a.row] {
		if e.used[item] {
			continue
		}
		price, old := e.touched(a.form)+e.uses(a.item), a.item
		e.set(a, item)
		if after := e.unlikeness(); after.less(now) && e.touched(a.form)+e.uses(item) <= price {
			now = after
		} else {
			e.set(a, old)
		}
	}
	return now
}

func (e *evener) swap(a, b *seat) {
	e.count(a.form, a.item, -1)
	e.count(b.form, b.item, -1)
	e.exchange(a, b)
	e.count(a.form, a.item, 1)
	e.count(b.form, b.item, 1)
}

func (e *evener) set(s *seat, item int32) {
	e.count(s.form, s.item, -1)
	e.change(s, item)
	e.count(s.form, s.item, 1)
}
