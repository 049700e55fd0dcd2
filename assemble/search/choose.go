package search

import "math"

// choose picks what to branch on: among all that should be whole and isn't
// (columns, and how many of a form count in a quota), where both sides raise
// the bound most by the first dual simplex step (penalties after Driebeek,
// Management Science 12, 1966, from memory), and what is to blame for the ends of other nodes above all.
// It reports false if all is whole.
func (t *tree) choose() (best branch, ok bool) {
	most := 0.0
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
		promise := min(down+1e-3*part, certain) * min(up+1e-3*(1-part), certain) * t.blamed(b.column, b.row)
		if promise > most {
			best, most, ok = b, promise, true
		}
	}
	return best, ok
}

// certain is what the bound rises by, about, where a side of a branch has no choice.
const certain = 1e6

// branchOn describes a branch on a basic variable; form is asTotal if it need
// not be whole, or follows from others.
func (t *tree) branchOn(v int32, x float64) (branch, float64) {
	none := branch{form: asTotal}
	if v >= 0 {
		c := &t.about[v]
		low := int(math.Floor(x + 1e-6))
		switch c.form {
		case asTotal, asLow, asRoom:
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
