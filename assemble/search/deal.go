package search

import (
	"math"
	"slices"
)

// deal spreads the items wanted over the forms and exchanges them between forms, by a chain of annealing of so many
// steps. It offers what that finds.
func (p *problem) deal(groups []group, list []wanted, best *incumbent, bound, steps int, stop func() bool) {
	w := p.newSwapper()
	w.spread(groups, list)
	if !w.level() {
		return
	}
	point := leastDealt * math.Pow(mostDealt/leastDealt, p.rng.Float64())
	chain := w.newAnnealing().newChain(dice(p.rng.Uint64()), point)
	chain.anneal(steps, bound, annealHot, stop)
	if chain.objective < best.objective {
		best.take(chain.choice(), chain.objective)
	}
}

// spread seats the items in the forms by turns, fixed ones where they must be.
func (w *swapper) spread(groups []group, list []wanted) {
	next, taken := 0, map[int]int{}
	for _, x := range list {
		g := &groups[x.group]
		for range x.count {
			s := seat{form: x.form, row: x.row, pinned: g.fixed != nil}
			switch {
			case x.form == asShared:
			case g.fixed != nil:
				s.form = g.fixed.Form
			default:
				s.form = next % w.p.Forms
				next++
			}
			w.sit(s, g.members[taken[x.group]%len(g.members)])
			taken[x.group]++
		}
	}
}

// level moves seats from forms that have too many of a row to those that have
// too few. It reports false if there are too many or too few in all.
func (w *swapper) level() bool {
	missing := w.missing()
	for k := range w.seats {
		s := &w.seats[k]
		if s.pinned || s.form == asShared || missing[s.form][s.row] >= 0 {
			continue
		}
		to := slices.IndexFunc(missing, func(rows []int) bool { return rows[s.row] > 0 })
		if to < 0 {
			return false
		}
		missing[s.form][s.row]++
		missing[to][s.row]--
		w.put(s.form, s.row, s.item, -1)
		s.form = to
		w.put(s.form, s.row, s.item, 1)
	}
	return len(w.seats) > 0 && !slices.ContainsFunc(missing, func(rows []int) bool {
		return slices.ContainsFunc(rows, func(n int) bool { return n != 0 })
	})
}

// missing counts the items that each row of each form still needs.
func (w *swapper) missing() [][]int {
	missing := make([][]int, w.p.Forms)
	for f := range missing {
		missing[f] = make([]int, len(w.p.Rows))
		for i, row := range w.p.Rows {
			missing[f][i] = row.Count
		}
		for _, s := range w.seats {
			if s.form == f || s.form == asShared {
				missing[f][s.row]--
			}
		}
	}
	return missing
}
