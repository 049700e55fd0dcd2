package sheet

import "evenhand/standards"

// array draws dots in equal rows and a box for how many there are in all.
func array(k kit, task standards.Task) (drawing, bool) {
	t, ok := task.(standards.Array)
	if !ok {
		return drawing{}, false
	}
	return row(4*k.gap(), rings(t.Rows*t.Columns, t.Columns), k.answerBox(2, t.Key())), true
}
