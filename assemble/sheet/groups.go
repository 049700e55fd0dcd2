package sheet

import "evenhand/standards/task"

// dotGroups draws two groups of dots, a box to mark under each, and a box between for
// groups of the same size. Such groups are drawn so that the right one takes more room.
func dotGroups(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Groups)
	if !ok {
		return drawing{}, false
	}
	leftDots, rightDots := field(scattered(t.Left, t.String()+" left")), field(scattered(t.Right, t.String()+" right"))
	if t.Left == t.Right {
		leftDots = within(fieldWidth, fieldHeight, rings(t.Left, 4))
	}
	choice := func(name string, above drawing) drawing {
		return centred(3, above, k.markBox(t.Key() == name))
	}
	same := k.text(answerWord("same", k.lang))
	return row(5, choice("left", framed(leftDots)), choice("same", within(same.w, fieldHeight, same)), choice("right", framed(rightDots))), true
}

// within sets a drawing in the middle of a room.
func within(w, h float64, d drawing) drawing {
	return drawing{w, h, h / 2, func(c canvas, at point) {
		d.paint(c, point{at.x + (w-d.w)/2, at.y + (h-d.h)/2})
	}}
}

// framed puts a thin line around a drawing.
func framed(d drawing) drawing {
	inside := d.paint
	d.paint = func(c canvas, at point) {
		c.rect(at, d.w, d.h, style{line: thin})
		inside(c, at)
	}
	return d
}
