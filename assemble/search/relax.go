package search

import (
	"iter"

	"evenhand/assemble/search/lp"
)

// What a column's form may say instead of a form.
const (
	asShared = -1 // a shared item
	asOff    = -2 // by how much a block misses the mark
	asTotal  = -3 // the sum of these
	asSame   = -4 // how many of a set of Same each form holds
	asLow    = -5 // the lowest score of the forms for one of the pupils
	asUneven = -6 // by how much the forms lie apart for one of them
)

// noForm is the form of a branch that is about all forms alike.
const noForm = -1

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
	total   int   // column of the sum of what blocks miss the mark by
	supply  map[int]bool
	clashed map[[2]int]bool // clash rows present, by clash group and block
	undo    []func()        // forgets a cut row, for each of them in order
	pruned  int             // rows left when last pruned

	onlyMark bool // uses count nothing for the moment
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
	r.addSame()
	if p.goal {
		r.addOff()
	}
	if p.goal && len(blocks) > 1 {
		r.addUneven()
	}
	return r
}

// stride is how many rows a block has: one for each plan row, one for each
// quota, one for each set of Same, then seconds, too high, too low, and for
// several blocks two for each pupil.
func (r *relaxation) stride() int {
	n := len(r.p.Rows) + len(r.p.Quotas) + len(r.p.Same) + 3
	if r.compares() {
		n += 2 * Abilities
	}
	return n
}

// compares says whether the program knows the forms apart, and so by how much
// they differ.
func (r *relaxation) compares() bool { return r.p.goal && len(r.blocks) > 1 }

// scoreScale brings thousandths of a point near the size of counts.
const scoreScale = 1.0 / 1024

func (r *relaxation) addBlock(w int) {
	p, all := r.p, len(r.p.Items)
	for i := range p.Rows {
		lo, up := p.rowRange(i)
		r.AddRow(w*lo, w*up, 1)
	}
	for _, q := range p.Quotas {
		r.AddRow(w*max(q.AtLeast, 0), w*min(q.AtMost, max(q.AtLeast, all)), 1)
	}
	for _, s := range p.Same {
		lo := 0
		if s.free {
			lo = -w * all
		}
		r.AddRow(lo, -lo, 1)
	}
	r.AddRow(0, w*p.seconds, 1.0/64)
	n := max(p.size, 1)
	most := w * markTolerance * n
	if p.ShareRight == 0 {
		most = w * n * widestMiss
	}
	r.AddRow(-w*n*widestMiss, most, scoreScale)
	r.AddRow(-w*n*widestMiss, most, scoreScale)
	if r.compares() {
		for range Abilities {
			r.AddRow(0, 2*n*widestMiss, scoreScale)                // score − lowest ≥ 0
			r.AddRow(-2*n*widestMiss, evenTolerance*n, scoreScale) // score − lowest − 10·uneven ≤ 5N
		}
	}
}

// widestMiss is more than an item's points can differ from any mean, together
// with the most that off and uneven take away.
const widestMiss = 2100

// mostOff is the most hundredths of a point an item that a form can be off or
// uneven.
const mostOff = 100

// miss is what an item of a group adds to a form's distance from the mark.
func (p *problem) miss(g *group) int { return g.points[typical] - 10*p.ShareRight }

// addSame adds how many of each set of Same a form holds.
func (r *relaxation) addSame() {
	for s := range r.p.Same {
		c := lp.Column{Up: len(r.p.Items)}
		for b, w := range r.blocks {
			c.Entries = append(c.Entries, at(int32(b*r.stride()+len(r.p.Rows)+len(r.p.Quotas)+s), int32(-w)))
		}
		r.add(c, about{form: asSame, tag: int32(s)})
	}
}

// addOff adds by how much each block misses the mark, and the sum.
func (r *relaxation) addOff() {
	sum := r.AddRow(0, 0, 1)
	top := mostOff * max(r.p.size, 1)
	for b, w := range r.blocks {
		high := int32(b*r.stride() + len(r.p.Rows) + len(r.p.Quotas) + len(r.p.Same) + 1)
		up := w * top
		r.add(lp.Column{Entries: []lp.Entry{at(high, -hundredth), at(high+1, -hundredth), at(sum, -1)}, Up: up}, about{form: asOff, tag: int32(b)})
	}
	r.total = r.add(lp.Column{Entries: []lp.Entry{at(sum, 1)}, Up: r.p.Forms * top, Cost: weight}, about{form: asTotal})
}

// addUneven adds for each pupil the lowest score of the forms, less the centre,
// and by how much they lie apart.
func (r *relaxation) addUneven() {
	n := max(r.p.size, 1)
	for t := range Abilities {
		low, uneven := lp.Column{Lo: -1000 * n, Up: 1000 * n}, lp.Column{Up: mostOff * n, Cost: weight * r.p.Forms}
		for b := range r.blocks {
			row := int32((b+1)*r.stride() - 2*Abilities + 2*t)
			low.Entries = append(low.Entries, at(row, -1), at(row+1, -1))
			uneven.Entries = append(uneven.Entries, at(row+1, -hundredth))
		}
		r.add(low, about{form: asLow, tag: int32(t)})
		r.add(uneven, about{form: asUneven, tag: int32(t)})
	}
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
	for _, s := range g.same {
		buf = append(buf, at(base+int32(s), w))
	}
	base += int32(len(r.p.Same))
	if r.p.MaxSeconds > 0 && fit.Seconds > 0 {
		buf = append(buf, at(base, w*int32(fit.Seconds)))
	}
	if d := int32(r.p.miss(g)); d != 0 && r.p.goal {
		buf = append(buf, at(base+1, w*d), at(base+2, -w*d))
	}
	if r.compares() {
		for t := range int32(Abilities) {
			if d := int32(g.points[t] - r.p.centre[t]); d != 0 {
				buf = append(buf, at(base+3+2*t, w*d), at(base+4+2*t, w*d))
			}
		}
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
	if !r.p.goal || r.onlyMark {
		return 0
	}
	return g.uses
}

// columnsOf gives the range of the columns of a group.
func (r *relaxation) columnsOf(i int) (from, to int) {
	width := len(r.blocks) + ones(r.p.Shared > 0)
	return r.first[i], r.first[i] + width*len(r.groups[i].fits)
}
