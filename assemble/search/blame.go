package search

import "evenhand/assemble/search/lp"

// blame tells what the proofs rest on by which a tree closes its nodes, of late above all. Where a branch says nothing
// of the bound for a long time, as most do in a hard plan, it is best to branch on what ended other nodes. (Moskewicz
// and others, Chaff, Design Automation Conference 2001, for formulas; Achterberg, Constraint Integer Programming, 2007,
// for programs; both from memory.)
type blame struct {
	weight     map[int]float64
	most, next float64
}

const (
	blameGrows = 1.02 // from proof to proof, so that the last hundred or so count
	mostBlame  = 1e50 // before all are scaled down
	leastBlame = 0.01 // what a branch counts, beside 1, that no proof has rested on
)

// learn counts the branches that a proof rests on: those whose bounds it uses.
func (t *tree) learn(proof lp.Certificate) {
	b := &t.blame
	if b.weight == nil {
		b.weight, b.next = map[int]float64{}, 1
	}
	for _, x := range t.changed {
		d := int64(0)
		if x.column >= 0 {
			d = -proof.Reduced(&t.Cols[x.column])
		} else {
			d = -proof.Y[x.row]
		}
		if x.up && d > 0 || !x.up && d < 0 {
			k := t.alike(x.column, x.row)
			b.weight[k] += b.next
			b.most = max(b.most, b.weight[k])
		}
	}
	if b.next *= blameGrows; b.next > mostBlame {
		for k := range b.weight {
			b.weight[k] /= mostBlame
		}
		b.next, b.most = b.next/mostBlame, b.most/mostBlame
	}
}

// blamed is from leastBlame to a little more than 1.
func (t *tree) blamed(column, row int) float64 {
	if t.blame.most == 0 {
		return leastBlame
	}
	return leastBlame + t.blame.weight[t.alike(column, row)]/t.blame.most
}

// alike is the same number for a column or a row of any form.
func (t *tree) alike(column, row int) int {
	if column < 0 {
		return -1 - row%t.stride()
	}
	switch a := &t.about[column]; {
	case a.form >= 0:
		return column - int(a.form)
	case a.form == asOff:
		return column - int(a.tag)
	}
	return column
}
