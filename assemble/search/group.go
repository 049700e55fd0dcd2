package search

import (
	"math/rand/v2"
	"slices"
)

// group is a set of items that the model can't tell apart but for their
// clashes: the search counts how many of them it takes.
type group struct {
	points  Points
	uses    int
	fits    []Fit
	quotas  []int
	same    []int
	members []int32 // those unused for longest first
	oldest  int     // how many of them were unused equally long
	common  []int   // clash groups that every member belongs to
	fixed   *Fixed
	set     uint64 // the same for groups that fill the same rows and count in the same quotas
}

// each is how many of the group one form may hold.
func (g *group) each() int {
	if len(g.common) > 0 {
		return 1
	}
	return len(g.members)
}

// problem is a model made ready for the search.
type problem struct {
	*Model
	size      int // N
	goal      bool
	groups    []group
	rng       *rand.Rand
	markScore int    // of a form, in thousandths of a point
	centre    Points // the mean points of groups, taken off in programs so that their numbers stay small

	slowest  int // most seconds of any item
	seconds  int // most that a form can take within the limit
	mostUses int // that the chosen items can have together
	clashes  int // groups of them
}

func newProblem(m *Model, seed uint64, goal bool) *problem {
	p := &problem{size: m.Size(), markScore: m.mark(), goal: goal, rng: rand.New(rand.NewPCG(seed, 0x5ea4c4))}
	p.Model, p.clashes = m.numbered()
	p.group()
	for i := range p.groups {
		p.centre.add(p.groups[i].points, 1)
		p.groups[i].byLastUse(p.Items)
		for _, f := range p.groups[i].fits {
			p.slowest = max(p.slowest, f.Seconds)
		}
		p.mostUses = max(p.mostUses, p.groups[i].uses*p.size*p.Forms)
	}
	for t := range p.centre {
		p.centre[t] /= max(1, len(p.groups))
	}
	p.seconds = p.reachable()
	return p
}

// numbered is the same model with its clash groups numbered from 0 on, and how many there are.
func (m *Model) numbered() (*Model, int) {
	c, all := *m, 0
	for i := range m.Items {
		all += len(m.Items[i].Clashes)
	}
	c.Items = slices.Clone(m.Items)
	number, lists := make(map[int]int, all), make([]int, 0, all)
	for i := range c.Items {
		from := len(lists)
		for _, k := range c.Items[i].Clashes {
			n, ok := number[k]
			if !ok {
				n = len(number)
				number[k] = n
			}
			lists = append(lists, n)
		}
		c.Items[i].Clashes = lists[from:len(lists):len(lists)]
	}
	return &c, len(number)
}

// withSeed is the same problem with random numbers of its own.
func (p *problem) withSeed(seed uint64) *problem {
	own := *p
	own.rng = rand.New(rand.NewPCG(seed, 0))
	return &own
}

// group puts like items together: one pass over the items with a hash table.
// Items without a row to fill are left out, fixed ones stand alone.
func (p *problem) group() {
	fixed := map[int]*Fixed{}
	for i := range p.Fixed {
		fixed[p.Fixed[i].Item] = &p.Fixed[i]
	}
	index := make(map[uint64]int32, 1024) // last group of each hash
	for i := range p.Items {
		it := &p.Items[i]
		if f := fixed[i]; f != nil {
			p.add(i)
			p.groups[len(p.groups)-1].fixed = f
			continue
		}
		if len(it.Fits) == 0 {
			continue
		}
		h := it.hash()
		at, ok := index[h]
		if !ok || !p.groups[at].like(it) { // should two hashes ever be the same, like items merely come in two groups
			index[h] = int32(len(p.groups))
			p.add(i)
			continue
		}
		g := &p.groups[at]
		g.members = append(g.members, int32(i))
		g.common = intersect(g.common, it.Clashes)
	}
}

// byLastUse puts the members unused for longest first.
func (g *group) byLastUse(items []Item) {
	last := func(i int32) int { return items[i].LastUse }
	if slices.ContainsFunc(g.members, func(i int32) bool { return last(i) != last(g.members[0]) }) {
		slices.SortStableFunc(g.members, func(a, b int32) int { return last(a) - last(b) })
	}
	g.oldest = 0
	for g.oldest < len(g.members) && last(g.members[g.oldest]) == last(g.members[0]) {
		g.oldest++
	}
}

// intersect gives what both sets hold; it changes neither.
func intersect(a, b []int) []int {
	var both []int
	for k, v := range a {
		switch {
		case !slices.Contains(b, v) && both == nil:
			both = slices.Clone(a[:k])
			if both == nil {
				both = []int{}
			}
		case slices.Contains(b, v) && both != nil:
			both = append(both, v)
		}
	}
	if both == nil {
		return a
	}
	return both
}

func (p *problem) add(i int) {
	it := &p.Items[i]
	p.groups = append(p.groups, group{
		points: it.Points, uses: it.Uses, fits: it.Fits, quotas: it.Quotas, same: it.Same,
		members: []int32{int32(i)}, common: it.Clashes, set: it.set(),
	})
}

func (g *group) like(it *Item) bool {
	return g.fixed == nil && g.points == it.Points && g.uses == it.Uses &&
		slices.Equal(g.fits, it.Fits) && slices.Equal(g.quotas, it.Quotas) && slices.Equal(g.same, it.Same)
}

// hash mixes all that groups items.
func (it *Item) hash() uint64 {
	h := mix(it.set(), it.Uses)
	for _, p := range it.Points {
		h = mix(h, p)
	}
	for _, f := range it.Fits {
		h = mix(h, f.Seconds)
	}
	return h
}

// set mixes the rows and the quotas.
func (it *Item) set() uint64 {
	h := uint64(14695981039346656037)
	for _, f := range it.Fits {
		h = mix(h, f.Row)
	}
	h = mix(h, -1)
	for _, q := range it.Quotas {
		h = mix(h, q)
	}
	h = mix(h, -1)
	for _, q := range it.Same {
		h = mix(h, q)
	}
	return h
}

// mix is FNV-1a on a whole word, with its high bits folded in.
func mix(h uint64, v int) uint64 {
	h = (h ^ uint64(v)) * 1099511628211
	return h ^ h>>29
}

// split refines groups so that each lies wholly inside or outside every clash
// group named.
func (p *problem) split(groups []group, clashes map[int]bool) []group {
	var out []group
	for _, g := range groups {
		parts := map[string]int{}
		for _, i := range g.members {
			var key []byte
			for _, c := range p.sorted(i) {
				if clashes[c] {
					key = append(key, byte(c), byte(c>>8), byte(c>>16), byte(c>>24), byte(c>>32), byte(c>>40), byte(c>>48), byte(c>>56))
				}
			}
			at, ok := parts[string(key)]
			if !ok {
				at = len(out)
				parts[string(key)] = at
				part := g
				part.members, part.common = nil, p.Items[i].Clashes
				out = append(out, part)
			}
			part := &out[at]
			part.members = append(part.members, i)
			part.common = intersect(part.common, p.Items[i].Clashes)
		}
	}
	for k := range out {
		out[k].byLastUse(p.Items)
	}
	return out
}

func (p *problem) sorted(i int32) []int {
	c := slices.Clone(p.Items[i].Clashes)
	slices.Sort(c)
	return c
}

// round raises a bound to the next objective there can be, knowing that the
// excess part counts in thousands and the uses part is less than that.
func (p *problem) round(bound int) int {
	if bound == none || !p.goal || bound <= 0 {
		return max(bound, 0)
	}
	if points := bound / weight; bound-weight*points > p.mostUses {
		return weight * (points + 1)
	}
	return bound
}
