package search

import "math"

// choose picks what to branch on: among all that should be whole and isn't
// (columns, and how many of a form count in a quota), where both sides raise
// the bound most by the first dual simplex step (penalties after Driebeek,
// Management Science 12, 1966, from memory). It reports false if all is whole.
func (t *tree) choose() (best branch, ok bool) {
	most := -1.0
	for i, v := range t.basic {
		b, x := t.branchOn(v, t.xb[i])
		if b.form == asTotal {
			continue
		}
		part := x - float64(b.low)
		if part < 1e-6 || part > 1-1e-6 {
			continue
		}
		down, up := t.penalties(i)
		down, up = down*part, up*(1-part)
		score := (min(down, 1e6) + 1e-3*part) * (min(up, 1e6) + 1e-3*(1-part))
		if score > most {
			most, best, ok = score, b, true
			best.upFirst = part > 0.5
			if v >= 0 && t.cols[v].form == asExcess {
				best.upFirst = up < down
			}
		}
	}
	return best, ok
}

// branchOn describes a branch on a basic variable; form is asTotal if it need
// not be whole, or follows from others.
func (t *tree) branchOn(v int32, x float64) (branch, float64) {
	none := branch{form: asTotal}
	if v >= 0 {
		c := &t.cols[v]
		low := int(math.Floor(x + 1e-6))
		switch c.form {
		case asTotal:
			return none, x
		case asExcess:
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

// penalties gives the rise of the objective by unit step down and up of the
// variable in basis position r, until the next basis.
func (t *tree) penalties(r int) (down, up float64) {
	m := len(t.rows)
	inv := t.inv[r*m : (r+1)*m]
	rho := t.scaled(inv)
	down, up = math.Inf(1), math.Inf(1)
	meet := func(alpha, d float64, upper bool) {
		switch ratio := math.Abs(d / alpha); {
		case math.Abs(alpha) < dualTol:
		case (alpha > 0) != upper: // rises from its bound: the basic variable falls
			down = min(down, ratio)
		default:
			up = min(up, ratio)
		}
	}
	for j := range t.cols {
		if c := &t.cols[j]; c.at < 0 && c.lo != c.up {
			meet(dot(c.entries, rho), c.d, c.upper)
		}
	}
	for i := range t.rows {
		if r := &t.rows[i]; r.at < 0 && r.lo != r.up {
			meet(-inv[i], t.ws.y[i], r.upper)
		}
	}
	return down, up
}
