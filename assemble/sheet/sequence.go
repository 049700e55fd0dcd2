package sheet

import (
	"strconv"
	"strings"

	"evenhand/standards"
)

// sequence is a row of boxes of one size, the numbers given printed in theirs.
func sequence(k kit, task standards.Task) (drawing, bool) {
	t, ok := task.(standards.Sequence)
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
	return flow(k.width, 2, 3, boxes...), true
}

// given is a number in a thin frame, as wide as the boxes beside it.
func (k kit) given(w float64, number string) drawing {
	print := k.text(number)
	return drawing{w, boxHeight, boxHeight / 2, func(c canvas, at point) {
		c.rect(at, w, boxHeight, style{line: thin, fill: pale})
		print.paint(c, point{at.x + (w-print.w)/2, at.y + boxHeight/2 - print.axis})
	}}
}
