package search

import (
	"maps"
	"math"
	"slices"
)

// none is an objective that no choice has: there is no choice at all.
const none = math.MaxInt

// incumbent is the best solution so far.
type incumbent struct {
	p         *problem
	forms     [][]Place
	objective int // none while there is no solution
}

// offer takes a choice if it keeps the rules and is better than the best so far.
func (b *incumbent) offer(forms [][]Place, goal bool) {
	objective := 0
	if goal {
		g := b.p.measure(forms)
		objective = g.objective()
	}
	if objective < b.objective && verifyRules(b.p.Model, forms) == nil {
		b.forms, b.objective = forms, objective
	}
}

// take offers a choice that comes with its objective, if that is better.
func (b *incumbent) take(forms [][]Place, objective int) {
	if objective < b.objective {
		b.offer(forms, b.p.goal)
	}
}

// wanted is a number of items of a group for a row of a form (or asShared).
type wanted struct {
	group, row, form, count int
}

// leaf turns whole column values into items and offers them (or hands them to
// found, with the bound of the node). If no items
// without a clash are found, the clash groups in the way are named in
// t.split, and the tree is halted to start again with finer groups.
func (t *tree) leaf(bound int) {
	var list []wanted
	for j := range t.Cols {
		c := &t.about[j]
		if c.form < asShared {
			continue
		}
		if n := int(math.Round(t.Value(j))); n > 0 {
			list = append(list, wanted{int(c.tag), t.groups[c.tag].fits[c.fit].Row, int(c.form), n})
		}
	}
	if t.found != nil {
		t.found(list, bound)
		return
	}
	if !t.whole(list) {
		return
	}
	if forms, clashes := t.p.pick(t.groups, list); clashes == nil {
		t.best.offer(forms, t.p.goal)
	} else {
		maps.Copy(t.split, clashes)
		t.halted = true
	}
}

// whole checks the counts against every rule but the clashes, exactly.
func (t *tree) whole(list []wanted) bool {
	p := t.p
	shared := 0
	var firstSame []int
	for f := range p.Forms {
		rows, quotas, seconds := make([]int, len(p.Rows)), make([]int, len(p.Quotas)), 0
		same := make([]int, len(p.Same))
		for _, w := range list {
			if w.form != f && w.form != asShared {
				continue
			}
			g := &t.groups[w.group]
			rows[w.row] += w.count
			for _, q := range g.quotas {
				quotas[q] += w.count
			}
			for _, s := range g.same {
				same[s] += w.count
			}
			at := slices.IndexFunc(g.fits, func(x Fit) bool { return x.Row == w.row })
			seconds += w.count * g.fits[at].Seconds
		}
		for i := range rows {
			if lo, up := p.rowRange(i); rows[i] < lo || rows[i] > up {
				return false
			}
		}
		for q, n := range quotas {
			if n < p.Quotas[q].AtLeast || n > p.Quotas[q].AtMost {
				return false
			}
		}
		if p.MaxSeconds > 0 && seconds > p.MaxSeconds {
			return false
		}
		if f == 0 {
			firstSame = same
		}
		for s := range same {
			if same[s] != firstSame[s] && !p.Same[s].free {
				return false
			}
		}
	}
	for _, w := range list {
		if w.form == asShared {
			shared += w.count
		}
	}
	lo, up := p.sharedRange()
	return shared >= lo && shared <= up
}

// pick finds members for the counts such that no item stands twice and no form
// holds a clash, by depth-first search. If it gives up it names the clash
// groups it met.
func (p *problem) pick(groups []group, list []wanted) ([][]Place, map[int]bool) {
	k := &picker{p: p, taken: map[int32]bool{}, held: make([]map[int]bool, p.Forms), met: map[int]bool{}, steps: 20000}
	for f := range k.held {
		k.held[f] = map[int]bool{}
	}
	for _, w := range list {
		for range w.count {
			k.slots = append(k.slots, slot{w, groups[w.group].members, groups[w.group].oldest})
		}
	}
	slices.SortStableFunc(k.slots, func(a, b slot) int { return len(a.members) - len(b.members) })
	if !k.fill(0) {
		return nil, k.met
	}
	forms := make([][]Place, p.Forms)
	for i, s := range k.slots {
		for f := range forms {
			if s.form == f || s.form == asShared {
				forms[f] = append(forms[f], Place{int(k.chosen[i]), s.row})
			}
		}
	}
	for _, places := range forms {
		slices.SortFunc(places, comparePlaces)
	}
	return forms, nil
}

func comparePlaces(a, b Place) int {
	if a.Row != b.Row {
		return a.Row - b.Row
	}
	return a.Item - b.Item
}

type slot struct {
	wanted
	members []int32
	oldest  int
}

type picker struct {
	p      *problem
	slots  []slot
	chosen []int32
	taken  map[int32]bool
	held   []map[int]bool // clash groups in each form
	met    map[int]bool
	steps  int
}

// fill finds members for the slots from i on.
func (k *picker) fill(i int) bool {
	if i == len(k.slots) {
		return true
	}
	s := &k.slots[i]
	start := k.p.rng.IntN(s.oldest)
	for n := range s.members {
		item := s.members[(start+n)%len(s.members)]
		if k.steps--; k.steps < 0 {
			break
		}
		if k.taken[item] || k.clashes(item, s.form) {
			continue
		}
		k.hold(item, s.form, true)
		k.chosen = append(k.chosen, item)
		if k.fill(i + 1) {
			return true
		}
		k.chosen = k.chosen[:i]
		k.hold(item, s.form, false)
	}
	return false
}

func (k *picker) clashes(item int32, form int) bool {
	hit := false
	for _, c := range k.p.Items[item].Clashes {
		for f := range k.held {
			if (f == form || form == asShared) && k.held[f][c] {
				k.met[c], hit = true, true
			}
		}
	}
	return hit
}

func (k *picker) hold(item int32, form int, on bool) {
	k.taken[item] = on
	for _, c := range k.p.Items[item].Clashes {
		for f := range k.held {
			if f == form || form == asShared {
				k.held[f][c] = on
			}
		}
	}
}
