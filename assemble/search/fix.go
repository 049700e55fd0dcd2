package search

// fix remembers the columns that no choice better than the best can move from their bound below a node: a unit more
// or less would raise what is proved to the best objective. As forms of one class are alike, so are the better choices
// left: what can't be in one of them can't be in the others. (Reduced cost fixing: Dantzig, Fulkerson and Johnson,
// Operations Research 2, 1954; orbital fixing: Margot, Mathematical Programming 94, 2002; both from memory.)
func (t *tree) fix(n *node) {
	for j := range t.Cols {
		c := &t.Cols[j]
		if c.Lo == c.Up || t.about[j].form < asShared {
			continue
		}
		d := t.proof.Reduced(c)
		if !t.hopeless(t.proved + max(d, -d)) {
			continue
		}
		x := change{row: -1, up: d > 0, value: c.Lo}
		if d < 0 {
			x.value = c.Up
		}
		for f, class := range t.classes {
			own := int(t.about[j].form)
			if own == asShared && f == 0 || own >= 0 && class == t.classes[own] {
				x.column = j + f - max(own, 0)
				n.fixed = append(n.fixed, x)
			}
		}
	}
}
