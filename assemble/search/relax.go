package search

import (
	"iter"

	"evenhand/assemble/search/lp"
)

// What a column's form may say instead of a form.
const (
	asExcess = -2 // form of a column that is a block's excess
	asTotal  = -3 // form of the column that is the sum of excesses
	asShared = -1 // form of a column that is a shared item
)

// relaxation is the model as a linear program, with a block of rows for every
// form, or with one block for all forms together: as forms are alike, adding
// up the blocks gives a program with the same optimum and 1/F of the columns.
// "No item twice" and the clashes are cut in only when broken.
type relaxation struct {
	lp.Program
	p       *problem
	about   []about // what each column stands for
	blocks  []int   // how many forms each block stands for
	groups  []group
	first   []int // first column of each group, or -1 while it is left out
	shared  int   // row that counts the shared items
	total   int   // column of the sum of excesses
	excess  []int // columns of the blocks' excesses
	supply  map[int]bool
	clashed map[[2]int]bool // clash rows present, by clash group and block
	undo    []func()        // forgets a cut row, for each of them in order
	pruned  int             // rows left when last pruned

	onlyExcess bool // uses count nothing for the moment
}

// about says what a column stands for: how many of a group (tag) fill one of
// its rows (fit) in a form or in all of them, or one of the sums.
type about struct {
	form int16 // or one of the above
	fit  int16
	tag  int32 // a group, or the form of an excess
}

// add adds a column.
func (r *relaxation) add(c lp.Column, a about) int {
	r.about = append(r.about, a)
	return r.AddColumn(c)
}

// relax builds the program without any items.
func (p *problem) relax(groups []group, blocks []int) *relaxation {
	r := &relaxation{p: p, blocks: blocks, groups: groups, first: make([]int, len(groups)),
		supply: map[int]bool{}, clashed: map[[2]int]bool{}}
	for i := range r.first {
		r.first[i] = -1
	}
	for _, w := range blocks {
		r.addBlock(w)
	}
	lo, up := p.sharedRange()
	r.shared = int(r.AddRow(lo, up, 1))
	if p.goal {
		r.addExcess()
	}
	return r
}

// stride is how many rows a block has: one for each plan row, one for each
// quota, then seconds, too high and too low.
func (r *relaxation) stride() int { return len(r.p.Rows) + len(r.p.Quotas) + 3 }

func (r *relaxation) addBlock(w int) {
	p, all := r.p, len(r.p.Items)
	for i := range p.Rows {
		lo, up := p.rowRange(i)
		r.AddRow(w*lo, w*up, 1)
	}
	for _, q := range p.Quotas {
		r.AddRow(w*max(q.AtLeast, 0), w*min(q.AtMost, max(q.AtLeast, all)), 1)
	}
	r.AddRow(0, w*p.seconds, 1.0/64)
	n := max(p.size, 1)
	r.AddRow(-w*n*(2*p.farOff+100), w*50*n, 1.0/1024)
	r.AddRow(-w*n*(2*p.farOff+100), w*50*n, 1.0/1024)
}

// addExcess adds the excess of each block and their sum. An excess is at most
// ceil(farOff/10).
func (r *relaxation) addExcess() {
	n := int32(10 * max(r.p.size, 1))
	sum := r.AddRow(0, 0, 1)
	top := r.p.farOff/10 + 1
	for b, w := range r.blocks {
		high := int32((b+1)*r.stride() - 2)
		r.excess = append(r.excess, r.add(lp.Column{Entries: []lp.Entry{at(high, -n), at(high+1, -n), at(sum, -1)}, Up: w * top}, about{form: asExcess, tag: int32(b)}))
	}
	r.total = r.add(lp.Column{Entries: []lp.Entry{at(sum, 1)}, Up: r.p.Forms * top, Cost: 1000}, about{form: asTotal})
}

// at is a column's value in a row.
func at(row, value int32) lp.Entry { return lp.Entry{Row: row, Val: value} }

func (p *problem) rowRange(i int) (lo, up int) {
	if p.Rows[i].free {
		return 0, len(p.Items)
	}
	return p.Rows[i].Count, p.Rows[i].Count
}

func (p *problem) sharedRange() (lo, up int) {
	if p.freeShared {
		return 0, len(p.Items)
	}
	return p.Shared, p.Shared
}

// entries gives the column of a group filling one of its rows in a block, or
// as a shared item.
func (r *relaxation) entries(buf []lp.Entry, g *group, fit Fit, block int) []lp.Entry {
	if block != asShared {
		return r.blockEntries(buf, g, fit, block, 1)
	}
	for b, w := range r.blocks {
		buf = r.blockEntries(buf, g, fit, b, int32(w))
	}
	return append(buf, at(int32(r.shared), 1))
}

func (r *relaxation) blockEntries(buf []lp.Entry, g *group, fit Fit, b int, w int32) []lp.Entry {
	base := int32(b * r.stride())
	buf = append(buf, at(base+int32(fit.Row), w))
	base += int32(len(r.p.Rows))
	for _, q := range g.quotas {
		buf = append(buf, at(base+int32(q), w))
	}
	base += int32(len(r.p.Quotas))
	if r.p.MaxSeconds > 0 && fit.Seconds > 0 {
		buf = append(buf, at(base, w*int32(fit.Seconds)))
	}
	if d := int32(g.difficulty); d != 0 && r.p.goal {
		buf = append(buf, at(base+1, w*d), at(base+2, -w*d))
	}
	return buf
}

// kind is one column that a group may have.
type kind struct {
	fit, block, lo, up int
}

// kinds runs over the columns of a group, fit by fit, the blocks in order and
// the shared kind last.
func (r *relaxation) kinds(g *group) iter.Seq[kind] {
	return func(yield func(kind) bool) {
		for k, fit := range g.fits {
			for b := range r.blocks {
				if !yield(r.bounded(g, kind{k, b, 0, r.upTo(g, fit, b)})) {
					return
				}
			}
			if r.p.Shared > 0 && !yield(r.bounded(g, kind{k, asShared, 0, r.upTo(g, fit, asShared)})) {
				return
			}
		}
	}
}

// upTo is how many of a group a row of a block can take.
func (r *relaxation) upTo(g *group, fit Fit, block int) int {
	_, up := r.p.rowRange(fit.Row)
	one := min(up, g.each())
	if block == asShared {
		return one
	}
	return min(r.blocks[block]*one, len(g.members))
}

// bounded sets the bounds of a fixed item: 1 where it stands, 0 elsewhere.
func (r *relaxation) bounded(g *group, k kind) kind {
	if g.fixed == nil {
		return k
	}
	here := g.fits[k.fit].Row == g.fixed.Row && (k.block == g.fixed.Form || k.block >= 0 && g.fixed.Form >= 0 && len(r.blocks) == 1)
	k.lo, k.up = ones(here), ones(here)
	return k
}

// include adds the columns of group i.
func (r *relaxation) include(i int) {
	g := &r.groups[i]
	r.first[i] = len(r.Cols)
	for k := range r.kinds(g) {
		r.add(lp.Column{
			Entries: r.entries(nil, g, g.fits[k.fit], k.block), Lo: k.lo, Up: k.up, Cost: r.cost(g),
			Nudge: r.p.rng.Float64() * 1e-4}, about{int16(k.block), int16(k.fit), int32(i)})
	}
}

func (r *relaxation) cost(g *group) int {
	if !r.p.goal || r.onlyExcess {
		return 0
	}
	return g.uses
}

// columnsOf gives the range of the columns of a group.
func (r *relaxation) columnsOf(i int) (from, to int) {
	width := len(r.blocks) + ones(r.p.Shared > 0)
	return r.first[i], r.first[i] + width*len(r.groups[i].fits)
}
