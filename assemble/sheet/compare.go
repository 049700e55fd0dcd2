package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// signRadius is half the ring for <, > or =, in millimetres.
const signRadius = 8.0

// compare sets a ring for the sign between two numbers.
func compare(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Compare)
	if !ok {
		return drawing{}, false
	}
	return row(1.5*k.gap(), k.text(strconv.Itoa(t.A)), k.ring(signRadius, t.Key()), k.text(strconv.Itoa(t.B))), true
}
