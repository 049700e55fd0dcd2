package sheet

import (
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// blankFace gives a time in digits and a clock face to draw its hands on.
func blankFace(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Clock)
	if !ok || t.Verb != task.Draw {
		return drawing{}, false
	}
	return k.faceToDraw(t.Time.Printed(), t.Time), true
}

// faceToDraw is a time as it is given, over a clock face without its hands; the key has them.
func (k kit) faceToDraw(given string, t words.Time) drawing {
	var hands *words.Time
	if k.key {
		hands = &t
	}
	return centred(3, k.bold(given), k.dial(k.radius, hands))
}
