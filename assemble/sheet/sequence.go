package sheet

import (
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// sequence is a row of boxes of one size, the numbers given printed in theirs.
func sequence(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Sequence)
	if !ok {
		return drawing{}, false
	}
	longest := 2
	for i := range t.N {
		longest = max(longest, len(strconv.Itoa(t.Number(i))))
	}
	w := max(4+digitRoom*float64(longest), k.face.width(strings.Repeat("0", longest), lettering{size: k.size})+5)
	boxes := make([]drawing, t.N)
	for i := range boxes {
		number := strconv.Itoa(t.Number(i))
		if t.Blank(i) {
			boxes[i] = k.box(w, boxHeight, number)
		} else {
			boxes[i] = k.given(w, number)
		}
	}
	return flow(k.evenRows(t.N, w+boxGap), boxGap, boxGap, boxes...), true
}

// boxGap is the space between boxes in a row, in millimetres.
const boxGap = 2.0

// evenRows is the width for n things at equal steps so that, where one row is too
// narrow for them, the rows are about equally long.
func (k kit) evenRows(n int, step float64) float64 {
	most := int(k.width / step)
	rows := (n + most - 1) / most
	return step * float64((n+rows-1)/rows)
}

// given is a number in a thin frame, as wide as the boxes beside it.
func (k kit) given(w float64, number string) drawing {
	print := k.text(number)
	return drawing{w: w, h: boxHeight, axis: boxHeight / 2, paint: func(c canvas, at point) {
		c.rect(at, w, boxHeight, style{line: thin})
		print.paint(c, point{at.x + (w-print.w)/2, at.y + boxHeight/2 - print.axis})
	}}
}
