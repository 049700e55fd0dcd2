package search

import (
	"cmp"
	"slices"
)

// broken is the price of one broken rule while swapping, more than any excess.
const broken = 1 << 40

// swapper improves a whole choice of items by swaps. It may break rules on the
// way, at a price.
type swapper struct {
	p     *problem
	seats []seat
	forms []tally
	used  []bool    // by item
	pool  [][]int32 // candidates for each row
	left  int       // tries left
}

// seat is a place in a form (or asShared) and the item on it.
type seat struct {
	form, row int
	item      int32
	pinned    bool
}

// tally counts what the rules of a form count.
type tally struct {
	quotas  []int
	held    []int // items of each clash group
	same    []int
	seconds int
	score   Points
	clashes int // items too many in clash groups
}

// quickChoice looks for a good choice among the groups, by greed and swaps, and
// offers it.
func (p *problem) quickChoice(r *root, groups []int, best *incumbent, tries int, stop func() bool) {
	w := p.newSwapper()
	w.left = tries
	w.fillPool(r, groups)
	if !w.seat(r) || len(w.seats) == 0 {
		return
	}
	for now := w.cost(); w.left > 0 && !stop(); {
		now = w.descend(now, stop)
		if now < broken {
			best.offer(w.result(), p.goal)
		}
		if now <= r.bound || best.objective <= r.bound {
			return
		}
		w.kick()
		w.left -= 100
		now = w.cost()
	}
}

func (p *problem) newSwapper() *swapper {
	w := &swapper{p: p, used: make([]bool, len(p.Items)), forms: make([]tally, p.Forms)}
	for f := range w.forms {
		w.forms[f] = tally{quotas: make([]int, len(p.Quotas)), same: make([]int, len(p.Same)), held: make([]int, p.clashes)}
	}
	return w
}

// fillPool takes some members of each group, those that the relaxation takes first.
func (w *swapper) fillPool(r *root, groups []int) {
	w.pool = make([][]int32, len(w.p.Rows))
	order := slices.Clone(groups)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(r.share(b), r.share(a)) })
	for _, i := range order {
		g := &r.groups[i]
		if g.fixed != nil {
			continue
		}
		from := w.p.rng.IntN(g.oldest)
		for n := range min(len(g.members), 4*w.p.Forms) {
			for _, fit := range g.fits {
				w.pool[fit.Row] = append(w.pool[fit.Row], g.members[(from+n)%len(g.members)])
			}
		}
	}
}

// share is how many of a group the relaxation takes.
func (r *root) share(i int) float64 {
	if r.first[i] < 0 {
		return 0
	}
	t := 0.0
	for j, to := r.columnsOf(i); j < to; j++ {
		t += r.Value(j)
	}
	return t
}

// seat makes the seats and puts the first free candidate without a clash on
// each. It reports false if a row has too few candidates.
func (w *swapper) seat(r *root) bool {
	need := make([][]int, w.p.Forms+1) // by form, the shared last, then row
	for f := range need {
		need[f] = make([]int, len(w.p.Rows))
		for i, row := range w.p.Rows {
			need[f][i] = row.Count
		}
	}
	need[w.p.Forms] = r.sharedRows()
	for i, n := range need[w.p.Forms] {
		for f := range w.p.Forms {
			need[f][i] -= n
		}
	}
	for _, x := range w.p.Fixed {
		f := x.Form
		if f < 0 {
			f = w.p.Forms
		}
		need[f][x.Row]--
		w.sit(seat{form: x.Form, row: x.Row, pinned: true}, int32(x.Item))
	}
	for row := range w.p.Rows {
		for _, rows := range need {
			if rows[row] < 0 { // the shared items leave no room for the fixed ones
				return false
			}
		}
		for k := range need {
			f := w.p.Forms - 1 - k // the shared first
			for range need[(f+w.p.Forms+1)%(w.p.Forms+1)][row] {
				if !w.greet(seat{form: f, row: row}) {
					return false
				}
			}
		}
	}
	return true
}

// sharedRows says how many shared items each row holds in the relaxation, in
// whole numbers that sum to Shared.
func (r *root) sharedRows() []int {
	rows, parts := make([]int, len(r.p.Rows)), make([]float64, len(r.p.Rows))
	left := r.p.Shared
	for j := range r.Cols {
		if c := &r.about[j]; c.form == asShared {
			parts[r.groups[c.tag].fits[c.fit].Row] += r.Value(j)
		}
	}
	for _, x := range r.p.Fixed {
		if x.Form == EveryForm {
			rows[x.Row]++
			parts[x.Row]--
			left--
		}
	}
	for ; left > 0; left-- {
		best := 0
		for i := range parts {
			if rows[i] < r.p.Rows[i].Count && (rows[best] >= r.p.Rows[best].Count || parts[i] > parts[best]) {
				best = i
			}
		}
		rows[best]++
		parts[best]--
	}
	return rows
}

func (w *swapper) greet(s seat) bool {
	var second int32 = -1
	for _, item := range w.pool[s.row] {
		if w.used[item] {
			continue
		}
		if !w.clashing(item, s.form) {
			w.sit(s, item)
			return true
		}
		second = item
	}
	if second < 0 {
		second = w.makeFree(s.row, make([]bool, len(w.p.Rows)))
	}
	if second >= 0 {
		w.sit(s, second)
	}
	return second >= 0
}

// makeFree gives a free candidate for a row, or −1. Where none is left, an item that fits it makes room if its own row
// has another one, and so on through the rows not yet seen. (Augmenting paths: Kuhn, Naval Research Logistics Quarterly
// 2, 1955, from memory.)
func (w *swapper) makeFree(row int, seen []bool) int32 {
	seen[row] = true
	for _, item := range w.pool[row] {
		if !w.used[item] {
			return item
		}
	}
	for k := range w.seats {
		s := &w.seats[k]
		if s.pinned || seen[s.row] || !w.fits(s.item, row) {
			continue
		}
		if other := w.makeFree(s.row, seen); other >= 0 {
			item := s.item
			w.change(s, other)
			return item
		}
	}
	return -1
}

func (w *swapper) clashing(item int32, form int) bool {
	return slices.ContainsFunc(w.p.Items[item].Clashes, func(c int) bool {
		for f := range w.forms {
			if (f == form || form == asShared) && w.forms[f].held[c] > 0 {
				return true
			}
		}
		return false
	})
}

func (w *swapper) sit(s seat, item int32) {
	s.item = item
	w.seats = append(w.seats, s)
	w.put(s.form, s.row, item, 1)
}

// put adds an item to the tallies it stands in, or takes it away (n = -1).
func (w *swapper) put(form, row int, item int32, n int) {
	w.used[item] = n > 0
	it := &w.p.Items[item]
	seconds, _ := it.seconds(row)
	for f := range w.forms {
		if f != form && form != asShared {
			continue
		}
		t := &w.forms[f]
		t.seconds += n * seconds
		t.score.add(it.Points, n)
		for _, s := range it.Same {
			t.same[s] += n
		}
		for _, q := range it.Quotas {
			t.quotas[q] += n
		}
		for _, c := range it.Clashes {
			before := max(0, t.held[c]-1)
			t.held[c] += n
			t.clashes += max(0, t.held[c]-1) - before
		}
	}
}

// wrongs counts the rules that a form breaks, each by how much.
func (w *swapper) wrongs(f int) int {
	p, t := w.p, &w.forms[f]
	wrong := t.clashes
	for q, n := range t.quotas {
		wrong += max(0, p.Quotas[q].AtLeast-n, n-p.Quotas[q].AtMost)
	}
	if p.MaxSeconds > 0 {
		wrong += (max(0, t.seconds-p.MaxSeconds) + 29) / 30
	}
	return wrong
}

// price is what a form costs, without uses.
func (w *swapper) price(f int) int {
	price := broken * w.wrongs(f)
	if w.p.goal {
		price += weight * w.p.off(w.forms[f].score[typical])
	}
	return price
}

// apart is the price of what forms differ by.
func (w *swapper) apart() int {
	if w.p.Forms == 1 {
		return 0
	}
	price := broken * w.unlike()
	if !w.p.goal {
		return price
	}
	for t := range Abilities {
		low, high := w.forms[0].score[t], w.forms[0].score[t]
		for f := 1; f < len(w.forms); f++ {
			low, high = min(low, w.forms[f].score[t]), max(high, w.forms[f].score[t])
		}
		price += weight * w.p.Forms * w.p.uneven(low, high)
	}
	return price
}

// unlike counts by how much forms differ in what they must hold equally often.
func (w *swapper) unlike() int {
	wrong := 0
	for s := range w.p.Same {
		if w.p.Same[s].free {
			continue
		}
		low, high := w.forms[0].same[s], w.forms[0].same[s]
		for f := range w.forms {
			low, high = min(low, w.forms[f].same[s]), max(high, w.forms[f].same[s])
		}
		wrong += high - low
	}
	return wrong
}

func (w *swapper) uses(item int32) int {
	if !w.p.goal {
		return 0
	}
	return w.p.Items[item].Uses
}

// cost is the price of everything.
func (w *swapper) cost() int {
	t := w.apart()
	for f := range w.forms {
		t += w.price(f)
	}
	for _, s := range w.seats {
		t += w.uses(s.item)
	}
	return t
}

func (w *swapper) result() [][]Place {
	forms := make([][]Place, len(w.forms))
	for _, s := range w.seats {
		for f := range forms {
			if s.form == f || s.form == asShared {
				forms[f] = append(forms[f], Place{int(s.item), s.row})
			}
		}
	}
	for _, places := range forms {
		slices.SortFunc(places, comparePlaces)
	}
	return forms
}
