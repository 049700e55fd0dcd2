package search_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"evenhand/assemble/search"
)

// shape says how a random model is drawn.
type shape struct {
	items, forms, rows, perRow, quotas int
	grouped                            bool // difficulties from few values instead of thousandths
	centre                             int  // of the difficulties, thousandths of a logit
	uses                               int  // largest number of uses
	clashes                            int  // clash groups per 100 items, 0 for none
	overlap                            int  // percent of items that fit a second row
	squeeze                            int  // percent of slack taken from seconds and quotas: 0 loose, 100 tight
	shared                             int
	rare                               bool // fewer items count in the first quota than it asks for, most of the time
	same                               int  // sets of which every form holds equally many
	noMark                             bool
	hurry                              int // if not 0, seconds an item on average; no item takes less than 30
}

// draw makes a model of a shape.
func draw(s shape, r *rand.Rand) *search.Model {
	m := &search.Model{Forms: s.forms, ShareRight: 75, Shared: s.shared}
	if s.noMark {
		m.ShareRight = 0
	}
	for i := range s.same {
		m.Same = append(m.Same, search.Same{Name: fmt.Sprint("set ", i+1)})
	}
	for i := range s.rows {
		m.Rows = append(m.Rows, search.Row{Name: fmt.Sprint("row ", i+1), Count: s.perRow})
	}
	n := s.rows * s.perRow
	for q := range s.quotas {
		lo := r.IntN(1 + n/2)
		width := (n - lo) * (100 - s.squeeze) / 100
		m.Quotas = append(m.Quotas, search.Quota{Name: fmt.Sprint("quota ", q+1), AtLeast: lo, AtMost: lo + width})
	}
	if s.rare {
		m.Quotas[0] = search.Quota{Name: "rare", AtLeast: n / 3, AtMost: n}
	}
	seconds := 0
	for i := range s.items {
		it := drawItem(s, i, r)
		seconds += it.Fits[0].Seconds
		m.Items = append(m.Items, it)
	}
	m.MaxSeconds = seconds / max(s.items, 1) * n * (140 - s.squeeze*60/100) / 100
	if s.hurry > 0 {
		m.MaxSeconds = s.hurry * n
	}
	return m
}

func drawItem(s shape, i int, r *rand.Rand) search.Item {
	it := search.Item{Name: fmt.Sprint("item ", i+1), Points: points(s.centre + int(r.NormFloat64()*900))}
	if s.grouped {
		it.Points = points(s.centre + 150*r.IntN(13) - 900)
	}
	for k := range s.same {
		if r.IntN(2) == 0 {
			it.Same = append(it.Same, k)
		}
	}
	if s.uses > 0 {
		it.Uses = r.IntN(s.uses + 1)
	}
	row := r.IntN(s.rows)
	it.Fits = []search.Fit{{Row: row, Seconds: 30 + 15*r.IntN(6)}}
	if s.rows > 1 && r.IntN(100) < s.overlap {
		it.Fits = append(it.Fits, search.Fit{Row: (row + 1 + r.IntN(s.rows-1)) % s.rows, Seconds: 30 + 15*r.IntN(6)})
	}
	for q := range s.quotas {
		if s.rare && q == 0 && r.IntN(s.items) >= s.forms*s.rows*s.perRow/5 {
			continue
		}
		if s.rare && q == 0 || r.IntN(3) == 0 {
			it.Quotas = append(it.Quotas, q)
		}
	}
	if s.clashes > 0 {
		it.Clashes = []int{r.IntN(max(1, s.items*s.clashes/100)), 1_000_000 + r.IntN(max(1, s.items*s.clashes/50))}
	}
	return it
}

// points is what pupils of ability −1, 0 and 1 logit can expect of an item, in
// thousandths, half up (the logistic function of Rasch 1960).
func points(difficulty int) (p search.Points) {
	for t, ability := range []float64{-1, 0, 1} {
		p[t] = int(math.Floor(1000/(1+math.Exp(float64(difficulty)/1000-ability)) + 0.5))
	}
	return p
}

// brute tries every choice: it returns the smallest objective, or -1 if there
// is no choice. It shares only the model's types with the search.
func brute(m *search.Model) int {
	b := &bruteSearch{m: m, forms: make([][]search.Place, m.Forms), best: -1}
	b.item(0, 0)
	return b.best
}

// feasible says whether there is any choice, and stops at the first.
func feasible(m *search.Model) bool {
	b := &bruteSearch{m: m, forms: make([][]search.Place, m.Forms), best: -1, any: true}
	b.item(0, 0)
	return b.best >= 0
}

type bruteSearch struct {
	m     *search.Model
	forms [][]search.Place
	best  int
	any   bool // one choice is enough
}

func (b *bruteSearch) item(i, shared int) {
	if b.any && b.best >= 0 || !b.enoughLeft(i, shared) {
		return
	}
	if i == len(b.m.Items) {
		b.finish()
		return
	}
	b.item(i+1, shared)
	for _, fit := range b.m.Items[i].Fits {
		for f := range b.forms {
			b.put(f, i, fit.Row)
			if b.room(f, fit.Row) {
				b.item(i+1, shared)
			}
			b.drop(f)
		}
		if b.m.Forms > 1 && shared < b.m.Shared {
			for f := range b.forms {
				b.put(f, i, fit.Row)
			}
			b.item(i+1, shared+1)
			for f := range b.forms {
				b.drop(f)
			}
		}
	}
}

func (b *bruteSearch) put(f, i, row int) {
	b.forms[f] = append(b.forms[f], search.Place{Item: i, Row: row})
}
func (b *bruteSearch) drop(f int) { b.forms[f] = b.forms[f][:len(b.forms[f])-1] }

func (b *bruteSearch) room(f, row int) bool {
	n := 0
	for _, p := range b.forms[f] {
		n += map[bool]int{true: 1}[p.Row == row]
	}
	return n <= b.m.Rows[row].Count
}

// enoughLeft says whether the items from i on could fill the places left: each one place, or as a
// shared one a place in every form.
func (b *bruteSearch) enoughLeft(i, shared int) bool {
	left, open, forms := len(b.m.Items)-i, 0, len(b.forms)
	for _, places := range b.forms {
		open -= len(places)
	}
	for _, row := range b.m.Rows {
		open += forms * row.Count
	}
	toShare := 0
	if forms > 1 {
		toShare = b.m.Shared - shared
	}
	return toShare <= left && open <= left+(forms-1)*toShare
}

func (b *bruteSearch) finish() {
	size := 0
	for _, row := range b.m.Rows {
		size += row.Count
	}
	for _, places := range b.forms {
		if len(places) != size {
			return
		}
	}
	s := solution(b.m, b.forms)
	if (b.best < 0 || s.Objective < b.best) && search.Verify(b.m, s) == nil {
		b.best = s.Objective
	}
}

// solution gives a choice its figures, worked out from the definition in
// hundredths of a point rather than thousandths.
func solution(m *search.Model, forms [][]search.Place) *search.Solution {
	s := &search.Solution{Forms: forms, Proved: true}
	var seen []int
	n := 0
	for _, r := range m.Rows {
		n += r.Count
	}
	for _, places := range forms {
		var score search.Points
		for _, p := range places {
			for t := range score {
				score[t] += m.Items[p.Item].Points[t]
			}
			if !slices.Contains(seen, p.Item) {
				seen = append(seen, p.Item)
				s.Uses += m.Items[p.Item].Uses
			}
		}
		s.Scores = append(s.Scores, score)
		off := 0
		if m.ShareRight > 0 {
			miss := math.Abs(float64(score[1])/10 - float64(m.ShareRight*n))
			off = int(math.Ceil(max(0, miss-float64(n)) - 1e-9))
		}
		s.Off = append(s.Off, off)
		s.Objective += 1000 * off
	}
	for t := range s.Uneven {
		for _, a := range s.Scores {
			for _, b := range s.Scores {
				s.Uneven[t] = max(s.Uneven[t], int(math.Ceil(float64(a[t]-b[t])/10-float64(n)/2-1e-9)))
			}
		}
		s.Objective += 1000 * len(forms) * s.Uneven[t]
	}
	s.Objective += s.Uses
	s.Bound = s.Objective
	return s
}
