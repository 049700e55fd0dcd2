package sheet

import (
	"evenhand/standards/task"
)

// tick prints a statement or a number, and a box to mark for each of two words.
func tick(k kit, asked task.Task) (drawing, bool) {
	question, ok := task.Judged(asked)
	if !ok {
		return drawing{}, false
	}
	print := k.text(printed(question))
	print.w += 2 * k.gap()
	return flow(k.width, 3*k.gap(), k.gap(), append([]drawing{print}, k.fixed(asked)...)...), true
}

// markBox is a box to put a mark in; the key has the mark in the right one.
func (k kit) markBox(right bool) drawing {
	if !right {
		empty := k
		empty.key = false
		return empty.box(placeWidth, boxHeight, "")
	}
	d := k.box(placeWidth, boxHeight, "")
	box := d.paint
	d.paint = func(c canvas, at point) {
		box(c, at)
		if k.key {
			foot := point{at.x + .42*d.w, at.y + .75*d.h}
			c.line(point{at.x + .22*d.w, at.y + .52*d.h}, foot, style{line: thick})
			c.line(foot, point{at.x + .8*d.w, at.y + .22*d.h}, style{line: thick})
		}
	}
	return d
}
