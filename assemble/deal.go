package assemble

import (
	"cmp"
	"evenhand/assemble/plan"
	"fmt"
	"slices"
)

// weekSet is a set of weeks of a term, by number from 0.
type weekSet uint64

func (s weekSet) has(w int) bool { return s&(1<<w) != 0 }

// dealtAWeek is how many items of a pool are dealt out for each week of the term.
// What is not dealt any week may take, if its own part doesn't do.
const dealtAWeek = 40

// deal shares the items of the bank out among the weeks of a term. Weeks further
// apart than the rest may get the same items.
func (m *termMaker) deal(pacing plan.Pacing) (map[string]weekSet, error) {
	p := &problem{
		bank: m.bank, plan: pacing.Weekly, forms: m.forms(0), seed: m.options.Seed,
		awakeBefore: m.weeks[0].Add(-m.rest).String(), resting: make([]int, len(pacing.New)), balanceOf: map[balance]int{},
	}
	for _, s := range pacing.New {
		p.plan.Rows = append(p.plan.Rows, s.Row)
	}
	p.ability = abilityFor(p.plan, m.options)
	p.sizes, p.offersFew = sizesIn(p.plan), offersFewIn(p.plan)
	if err := p.gather(); err != nil {
		return nil, err
	}
	slices.SortStableFunc(p.pools, func(a, b *pool) int {
		return cmp.Or(a.uses-b.uses, cmp.Compare(a.difficulty, b.difficulty))
	})
	shares := map[string]weekSet{}
	hands := map[string][]hand{}
	handsOf := func(own *pool) []hand { return hands[fmt.Sprint(own.rows())] }
	for _, own := range p.pools {
		if handsOf(own) == nil {
			hands[fmt.Sprint(own.rows())] = m.hands(p.plan, own.rows())
		}
	}
	// Of some pools no week of this term asks for items.
	p.pools = slices.DeleteFunc(p.pools, func(own *pool) bool { return len(handsOf(own)) == 0 })
	if err := p.fill(p.pools, dealtAWeek*len(m.plans)); err != nil {
		return nil, err
	}
	for _, own := range p.pools {
		for _, c := range own.read {
			shares[c.id] = next(handsOf(own))
		}
	}
	return shares, nil
}

// forms is how many forms a week's quiz has.
func (m *termMaker) forms(w int) int { return cmp.Or(m.options.Forms, m.plans[w].Forms) }

func (pool *pool) rows() []int {
	rows := make([]int, len(pool.fits))
	for i, f := range pool.fits {
		rows[i] = f.row
	}
	return rows
}

// hand is what one or more weeks, far enough apart, are dealt.
type hand struct {
	weeks weekSet
	need  int // items that the week with the most needs
	dealt int
}

// hands finds the weeks that ask for any of some rows, and makes as many hands
// as there are such weeks within one rest of each other.
func (m *termMaker) hands(all plan.Plan, rows []int) []hand {
	var weeks, needs []int
	for w, plan := range m.plans {
		need := 0
		for _, row := range plan.Rows {
			if slices.ContainsFunc(rows, func(r int) bool { return all.Rows[r].Name() == row.Name() }) {
				need += row.Count * m.forms(w)
			}
		}
		if need > 0 {
			weeks, needs = append(weeks, w), append(needs, need)
		}
	}
	together := 0
	for i, w := range weeks {
		within := i
		for within < len(weeks) && m.apart(w, weeks[within]) <= m.rest {
			within++
		}
		together = max(together, within-i)
	}
	hands := make([]hand, together)
	for i, w := range weeks {
		h := &hands[i%together]
		h.weeks |= 1 << w
		h.need = max(h.need, needs[i])
	}
	return hands
}

// next deals one item: it goes where the need is largest for each item that is
// there already and this one. (This is d'Hondt's method of highest averages; with
// enough items every hand gets at least what it needs.)
func next(hands []hand) weekSet {
	best := 0
	for i, h := range hands {
		if b := hands[best]; h.need*(b.dealt+1) > b.need*(h.dealt+1) {
			best = i
		}
	}
	hands[best].dealt++
	return hands[best].weeks
}
