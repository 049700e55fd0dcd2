package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// Sizes of a number line in millimetres.
const (
	lineRoom   = 16.0 // above the line, to draw jumps in
	lineBelow  = 4.0  // from the line to the numbers below
	labelSpace = 2.0  // between numbers, at least
	tickUnit   = 1.4  // half a tick; longer at fives and tens
)

// numberLine is a line from 0 to 20 or to 100 with the start marked, and the sentence
// below. The jumps are the pupil's to draw; the key has them.
func numberLine(k kit, asked task.Task) (drawing, bool) {
	w, ok := wayOf(asked, task.NumberLineEnd)
	if !ok {
		return drawing{}, false
	}
	below, ok := sentence(k, asked)
	return stack(4, k.ruler(w), below), ok
}

// ruler is the line itself.
func (k kit) ruler(w way) drawing {
	most, labelled := 100, 10
	if max(w.start, w.end()) <= 20 {
		most, labelled = 20, 1
	}
	l := lettering{size: .6 * k.size, align: centre}
	edge := l.size // half the widest number stands out at each end
	pitch := (k.width - 2*edge) / float64(most)
	if w, room := k.face.width(strconv.Itoa(most), l), pitch*float64(labelled)-labelSpace; w > room {
		l.size *= room / w
	}
	d := drawing{w: k.width, h: lineRoom + lineBelow + 1.1*l.size, axis: k.size / 2}
	d.paint = func(c canvas, at point) {
		place := func(n int) point { return point{at.x + edge + pitch*float64(n), at.y + lineRoom} }
		c.line(place(0), place(most), style{line: plain})
		for n := range most + 1 {
			k.mark(c, place(n), n)
			if n%labelled == 0 {
				c.text(point{place(n).x, place(n).y + lineBelow + k.face.digit*l.size}, strconv.Itoa(n), l)
			}
		}
		c.circle(place(w.start), 1.3, style{fill: black})
		if w.endGiven {
			c.circle(place(w.end()), 1.6, style{line: thick, fill: white})
		}
		if k.key {
			k.jump(c, place, w)
		}
	}
	return d
}

// mark is the tick at a number.
func (k kit) mark(c canvas, p point, n int) {
	half := tickUnit
	switch {
	case n%10 == 0:
		half *= 1.8
	case n%5 == 0:
		half *= 1.4
	}
	c.line(point{p.x, p.y - half}, point{p.x, p.y + half}, style{line: thin})
}

// jump draws a bow for each ten and one for the ones that are left, with its length.
func (k kit) jump(c canvas, place func(int) point, w way) {
	from := w.start
	for _, to := range w.stops(false) {
		bow(c, place(from), place(to))
		size := strings.Replace(fmt.Sprintf("%+d", to-from), "-", minus, 1)
		middle := (place(from).x + place(to).x) / 2
		c.text(point{middle, place(from).y - bowHeight - 1}, size, lettering{size: .5 * k.size, align: centre})
		from = to
	}
}

// A bow is half an ellipse of this height, drawn in so many straight pieces.
const (
	bowHeight = 8.0
	bowPieces = 12
)

func bow(c canvas, from, to point) {
	last := from
	for i := 1; i <= bowPieces; i++ {
		sin, cos := math.Sincos(math.Pi * float64(i) / bowPieces)
		next := point{(from.x+to.x)/2 - (to.x-from.x)/2*cos, from.y - bowHeight*sin}
		c.line(last, next, style{line: plain})
		last = next
	}
}
