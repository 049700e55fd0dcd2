package search

import (
	"cmp"
	"math"
	"slices"

	"evenhand/assemble/search/lp"
)

// choose picks what to branch on: among all that should be whole and isn't
// (columns, and how many of a form count in a quota), where both sides raise
// the bound most by the first dual simplex step (penalties after Driebeek,
// Management Science 12, 1966, from memory); near the top of some trees it looks further ahead.
// It reports false if all is whole.
func (t *tree) choose(depth int) (best branch, ok bool) {
	var list []promise
	for i := range t.Basic() {
		v, value := t.Variable(i)
		b, x := t.branchOn(v, value)
		if b.form == asTotal {
			continue
		}
		part := x - float64(b.low)
		if part < 1e-6 || part > 1-1e-6 {
			continue
		}
		down, up := t.Penalties(i)
		down, up = down*part, up*(1-part)
		b.upFirst = part > 0.5
		if v >= 0 && t.about[v].form == asOff {
			b.upFirst = up < down
		}
		list = append(list, promise{b, bothRise(down+1e-3*part, up+1e-3*(1-part))})
	}
	if len(list) == 0 {
		return branch{}, false
	}
	slices.SortStableFunc(list, func(a, b promise) int { return cmp.Compare(b.score, a.score) })
	if depth < t.ahead {
		list = t.lookAhead(list[:min(len(list), aheadWidth)])
	}
	return list[0].branch, true
}

// promise is a branch, and how much it promises.
type promise struct {
	branch
	score float64
}

// certain is what the bound rises by, about, where a side of a branch has no choice.
const certain = 1e6

// bothRise is how much a branch promises whose sides raise the bound so much.
func bothRise(down, up float64) float64 { return min(down, certain) * min(up, certain) }

// lookAhead puts the branch first whose sides raise the bound most by some dual simplex steps. (Strong branching:
// Applegate, Bixby, Chvatal and Cook, The Traveling Salesman Problem, 2006, from memory.)
func (t *tree) lookAhead(list []promise) []promise {
	t.here.Keep(&t.Program)
	base, best := t.Objective(), 0
	for k := range list {
		var rises [2]float64
		for side := range rises {
			n, before := &node{branch: list[k].branch, high: side == 1}, len(t.changed)
			if !t.narrowForms(n) || t.Try(aheadPivots, t.stop) == lp.Infeasible {
				rises[side] = certain
			} else {
				rises[side] = max(1e-6, t.Objective()-base)
			}
			t.takeBack(before)
			t.GoBack(&t.here)
		}
		if list[k].score = bothRise(rises[0], rises[1]); list[k].score > list[best].score {
			best = k
		}
	}
	list[0], list[best] = list[best], list[0]
	return list
}

// branchOn describes a branch on a basic variable; form is asTotal if it need
// not be whole, or follows from others.
func (t *tree) branchOn(v int32, x float64) (branch, float64) {
	none := branch{form: asTotal}
	if v >= 0 {
		c := &t.about[v]
		low := int(math.Floor(x + 1e-6))
		switch c.form {
		case asTotal, asLow:
			return none, x
		case asSame, asUneven:
			return branch{form: noForm, column: int(v), row: -1, low: low}, x
		case asOff:
			return branch{form: int(c.tag), column: int(v), row: -1, low: low}, x
		}
		return branch{form: int(c.form), column: int(v), row: -1, low: low}, x
	}
	i := int(^v)
	form, at := i/t.stride(), i%t.stride()-len(t.p.Rows)
	if form >= len(t.blocks) || at < 0 || at >= len(t.p.Quotas) {
		return none, x
	}
	return branch{form: form, column: -1, row: i, low: int(math.Floor(x + 1e-6))}, x
}
