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
	lineRoom    = 16.0 // above the line, to draw jumps in
	lineBelow   = 4.0  // from the line to the numbers below
	tickUnit    = 1.4  // half a tick; longer at fives and tens
	leastJump   = 4.0  // from one to the next that a child can still jump
	shortLine   = 20   // up to here every number stands below its tick
	longStretch = 40
)

// numberLine is a line with the start marked, and the sentence below. The jumps are the pupil's
// to draw; the key has them.
func numberLine(k kit, asked task.Task) (drawing, bool) {
	w, ok := wayOf(asked, task.NumberLineEnd)
	if !ok {
		return drawing{}, false
	}
	below, ok := sentence(k, asked)
	return stack(4, k.ruler(w), below), ok
}

// stretchOf is the piece of the number line that a way needs, in whole tens: 0 to 20 where
// that is enough, else from the ten below the lower number to the ten above the higher, and as
// long as its ticks can be jumped on, so that its ends tell little of the answer.
func (k kit) stretchOf(w way) (from, to int) {
	low, high := min(w.start, w.end()), max(w.start, w.end())
	if high <= shortLine {
		return 0, shortLine
	}
	from, to = low/10*10, (high+9)/10*10
	usual := longStretch
	if k.scale*k.width/float64(longStretch+4) < leastJump {
		usual -= 10
	}
	for to-from < usual {
		if to < task.NumberLineEnd {
			to += 10
		}
		if to-from < usual && from > 0 {
			from -= 10
		}
	}
	return from, to
}

// ruler is the line itself. Its ticks are the ones where a child can jump from one to the next,
// else the fives, and the numbers are the tens.
func (k kit) ruler(w way) drawing {
	from, to := k.stretchOf(w)
	labelled, ticked := 10, 1
	l := lettering{size: max(leastPrint, .6*k.size), align: centre}
	if to == shortLine {
		labelled = 1
	}
	edge := k.face.width("100", l) / 2 // half the widest number stands out at each end
	pitch := (k.width - 2*edge) / float64(to-from)
	if k.scale*pitch < leastJump {
		ticked = 5
	}
	if labelled == 1 && pitch < 1.2*k.face.width("20", l) {
		labelled = 5
	}
	d := drawing{w: k.width, h: lineRoom + lineBelow + 1.1*l.size, axis: k.size / 2}
	d.paint = func(c canvas, at point) {
		place := func(n int) point { return point{at.x + edge + pitch*float64(n-from), at.y + lineRoom} }
		c.line(place(from), place(to), style{line: plain})
		for n := from; n <= to; n++ {
			if n%ticked == 0 {
				k.mark(c, place(n), n)
			}
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

var (
	dotToRing = phrase{
		"Jump along the line from the dot to the ring. Write the missing number.",
		"Salta por la recta desde el punto hasta el círculo. Escribe el número que falta."}
	lineSaid = phrase{"A number line from %d to %d, with a dot at %d.", "Una recta numérica del %d al %d, con un punto en el %d."}
)

func lineDirection(asked task.Task) (phrase, bool) { return dotToRing, endGiven(asked) }

func lineAloud(k kit, asked task.Task) []string {
	w, _ := wayOf(asked, task.NumberLineEnd)
	from, to := k.stretchOf(w)
	return []string{k.questionAloud(asked), fmt.Sprintf(k.say(lineSaid), from, to, w.start)}
}
