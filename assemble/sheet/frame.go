package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// frame is a table with a column for each place. A number to take apart has boxes in
// it, a number to put together has its digits in it, and a sum is worked in it.
func frame(k kit, asked task.Task) (drawing, bool) {
	switch t := asked.(type) {
	case task.PlaceValue:
		return placeValueFrame(k, t), true
	case task.Sentence:
		if t.Blank == t.N && (t.IsAddition() || t.N == 2) {
			return newColumns(k, t, cellWidth, cellWidth).framed(), true
		}
	}
	return drawing{}, false
}

// placeNames head the columns of a frame, from the ones to the left.
var placeNames = []phrase{{"ones", "unidades"}, {"tens", "decenas"}, {"hundreds", "centenas"}, {"thousands", "millares"}}

// framed is the sum in a table with the names of the places on top.
func (c columns) framed() drawing {
	sum := c.drawing()
	head := c.lineOf(headHeight, func(place int) (drawing, bool) {
		return c.heading(c.say(placeNames[place])), true
	})
	d := stack(1.5, head, sum)
	inside := d.paint
	d.paint = func(cv canvas, at point) {
		inside(cv, at)
		for place := range c.places {
			x := at.x + c.middle(place) - c.pitch/2
			cv.rect(point{x, at.y + headHeight}, c.pitch, d.h-headHeight, style{line: thin})
		}
	}
	return d
}

// Sizes of a frame in millimetres.
const (
	cellWidth  = 25.0
	headHeight = 7.0
)

// heading is the name of a place on top of its column.
func (k kit) heading(name string) drawing {
	title := k.print(name, lettering{size: k.headSize()})
	return drawing{w: cellWidth, h: headHeight, axis: headHeight / 2, paint: func(c canvas, at point) {
		c.rect(at, cellWidth, headHeight, style{line: plain, fill: pale})
		title.paint(c, point{at.x + (cellWidth-title.w)/2, at.y + headHeight/2 - title.axis})
	}}
}

// headSize is the type of all headings: the size at which the longest name fits.
func (k kit) headSize() float64 {
	size := .67 * k.size
	for _, name := range placeNames {
		size = min(size, k.fittingSize(k.say(name), size, cellWidth-1.5))
	}
	return size
}

func placeValueFrame(k kit, t task.PlaceValue) drawing {
	number := strconv.Itoa(t.Number)
	cells := make([]drawing, t.Places)
	for i := range cells {
		name := placeNames[t.Places-1-i]
		cells[i] = k.cell(k.say(name), number[i:i+1], !t.Compose)
	}
	table := row(0, cells...)
	equals := k.text("=")
	if t.Compose {
		return flow(k.width, k.gap(), k.gap(), table, row(k.gap(), equals, k.answerBox(t.Places+1, number)))
	}
	return row(k.gap(), k.text(number), equals, table)
}

// cell is one column of a frame: its name and, below, a digit or room for one.
func (k kit) cell(name, digit string, blank bool) drawing {
	const body = boxHeight + 2
	head, print := k.heading(name), k.text(digit)
	return drawing{w: cellWidth, h: headHeight + body, axis: headHeight + body/2, paint: func(c canvas, at point) {
		head.paint(c, at)
		below := point{at.x, at.y + headHeight}
		if blank {
			k.box(cellWidth, body, digit).paint(c, below)
			return
		}
		c.rect(below, cellWidth, body, style{line: plain})
		print.paint(c, point{at.x + (cellWidth-print.w)/2, below.y + body/2 - print.axis})
	}}
}

var makeNumber = phrase{"Look at the places. Write the number.", "Mira los lugares. Escribe el número."}

func frameDirection(asked task.Task) (phrase, bool) {
	if t, ok := asked.(task.PlaceValue); ok {
		return makeNumber, t.Compose
	}
	return inColumns, true
}
