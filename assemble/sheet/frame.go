package sheet

import (
	"strconv"

	"evenhand/standards"
)

// frame is a table with a column for each place. A number to take apart has boxes in
// it, a number to put together has its digits in it, and a sum is worked in it.
func frame(k kit, task standards.Task) (drawing, bool) {
	switch t := task.(type) {
	case standards.PlaceValue:
		return placeValueFrame(k, t), true
	case standards.Sentence:
		if t.Blank == t.N && (t.IsAddition() || t.N == 2) {
			return newColumns(k, t).drawing(true), true
		}
	}
	return drawing{}, false
}

// placeNames head the columns of a frame, from the ones to the left.
var placeNames = []phrase{{"ones", "unidades"}, {"tens", "decenas"}, {"hundreds", "centenas"}, {"thousands", "millares"}}

// headings are the names of the places over the columns of a sum.
func (c columns) headings() drawing {
	h := .9 * c.size
	return c.lineOf(h, func(place int) (drawing, bool) {
		return c.fitting(c.say(placeNames[place]), c.pitch-1), true
	})
}

// fitting is small print, smaller still where it would be wider than the room.
func (k kit) fitting(s string, width float64) drawing {
	l := lettering{size: .62 * k.size}
	if w := k.face.width(s, l); w > width {
		l.size *= width / w
	}
	return k.print(s, l)
}

// cellWidth is a column of a frame with nothing else in it, in millimetres.
const cellWidth = 22.0

func placeValueFrame(k kit, t standards.PlaceValue) drawing {
	number := strconv.Itoa(t.Number)
	cells := make([]drawing, t.Places)
	for i := range cells {
		name := placeNames[t.Places-1-i]
		cells[i] = k.cell(k.say(name), number[i:i+1], !t.Compose)
	}
	table := row(0, cells...)
	table.axis = 7 + boxHeight/2 + 1
	equals := k.text("=")
	if t.Compose {
		return row(k.gap(), table, equals, k.answerBox(t.Places+1, number))
	}
	return row(k.gap(), k.text(number), equals, table)
}

// cell is one column of a frame: its name and, below, a digit or room for one.
func (k kit) cell(name, digit string, blank bool) drawing {
	const head, body = 7.0, boxHeight + 2
	title := k.fitting(name, cellWidth-3)
	print := k.text(digit)
	return drawing{cellWidth, head + body, head + body/2, func(c canvas, at point) {
		c.rect(at, cellWidth, head, style{line: plain, fill: pale})
		title.paint(c, point{at.x + (cellWidth-title.w)/2, at.y + head/2 - title.axis})
		below := point{at.x, at.y + head}
		if blank {
			k.box(cellWidth, body, digit).paint(c, below)
			return
		}
		c.rect(below, cellWidth, body, style{line: plain})
		print.paint(c, point{at.x + (cellWidth-print.w)/2, below.y + body/2 - print.axis})
	}}
}
