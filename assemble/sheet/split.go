package sheet

import "strconv"

// Room under a number that is split, down to the boxes of its parts, in millimetres.
const splitDrop = 8.0

// split is a number with a branch to a box for each of its parts.
func (k kit) split(number int, parts ...int) drawing {
	boxes := make([]drawing, len(parts))
	for i, part := range parts {
		boxes[i] = k.answerBox(2, strconv.Itoa(part))
	}
	top, below := k.text(strconv.Itoa(number)), row(3, boxes...)
	d := centred(splitDrop, top, below)
	inside := d.paint
	d.paint = func(c canvas, at point) {
		x := at.x + (d.w-below.w)/2
		for _, box := range boxes {
			c.line(point{at.x + d.w/2, at.y + top.h}, point{x + box.w/2, at.y + top.h + splitDrop}, style{line: plain})
			x += box.w + 3
		}
		inside(c, at)
	}
	return d
}
