package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// column writes the numbers one under the other, each digit in its place, with small
// boxes on top for what is regrouped and a box a place for the answer.
func column(k kit, asked task.Task) (drawing, bool) {
	s, ok := asked.(task.Sentence)
	if !ok || s.Blank != s.N || !s.IsAddition() && s.N > 2 {
		return drawing{}, false
	}
	return newColumns(k, s, placeWidth+1, placeWidth).drawing(), true
}

// columns is a sum or difference laid out by place.
type columns struct {
	kit
	s      task.Sentence
	places int
	pitch  float64 // from one place to the next
	room   float64 // width of an answer box
}

func newColumns(k kit, s task.Sentence, pitch, room float64) columns {
	places := len(strconv.Itoa(s.Result()))
	for _, n := range s.Operands() {
		places = max(places, len(strconv.Itoa(n)))
	}
	return columns{k, s, places, pitch, room}
}

// noteSize is a small box for a regrouped digit, in millimetres.
const noteSize = 8.5

// drawing is the whole sum.
func (c columns) drawing() drawing {
	rows := []drawing{c.notes()}
	for i, n := range c.s.Operands() {
		rows = append(rows, c.number(n, c.signAt(i)))
	}
	rows = append(rows, c.rule(), c.answer())
	return stack(0, rows...)
}

// signAt is the sign before a number: only the last has one.
func (c columns) signAt(i int) string {
	switch {
	case i < c.s.N-1:
		return ""
	case c.s.IsAddition():
		return "+"
	}
	return minus
}

// signWidth is the room for the sign left of the digits.
func (c columns) signWidth() float64 { return 1.3 * c.size }

// width of the whole sum.
func (c columns) whole() float64 { return c.signWidth() + c.pitch*float64(c.places) }

// middle is where the digits of a place stand, counted from the ones (0).
func (c columns) middle(place int) float64 {
	return c.whole() - c.pitch*(float64(place)+.5)
}

// line of the sum: something in some of the places.
func (c columns) lineOf(h float64, at func(place int) (drawing, bool)) drawing {
	return drawing{w: c.whole(), h: h, axis: h / 2, paint: func(cv canvas, p point) {
		for place := c.places - 1; place >= 0; place-- {
			if d, ok := at(place); ok {
				d.paint(cv, point{p.x + c.middle(place) - d.w/2, p.y + h/2 - d.axis})
			}
		}
	}}
}

// number prints one digit in each place that it has.
func (c columns) number(n int, sign string) drawing {
	digits := strconv.Itoa(n)
	h := 1.45 * c.size
	line := c.lineOf(h, func(place int) (drawing, bool) {
		if place >= len(digits) {
			return drawing{}, false
		}
		return c.text(digits[len(digits)-1-place : len(digits)-place]), true
	})
	print := c.operator(sign)
	paint := line.paint
	line.paint = func(cv canvas, at point) {
		print.paint(cv, point{at.x, at.y + h/2 - print.axis})
		paint(cv, at)
	}
	return line
}

// operator is the sign before a number. Where the font's signs are small beside its digits, as in
// some made for reading, it is larger type.
func (c columns) operator(sign string) drawing {
	return c.print(sign, lettering{size: max(1, operatorShare*c.face.digit/c.face.plus) * c.size})
}

// operatorShare is the height of a plus, as a share of a digit's.
const operatorShare = .85

// rule is the line that means "makes".
func (c columns) rule() drawing {
	return drawing{w: c.whole(), h: 4, axis: 2, paint: func(cv canvas, at point) {
		cv.line(point{at.x, at.y + 1.5}, point{at.x + c.whole(), at.y + 1.5}, style{line: thick})
	}}
}

// answer is a box for each place.
func (c columns) answer() drawing {
	digits := strconv.Itoa(c.s.Result())
	return c.lineOf(boxHeight, func(place int) (drawing, bool) {
		digit := ""
		if place < len(digits) {
			digit = digits[len(digits)-1-place : len(digits)-place]
		}
		return c.box(c.room, boxHeight, digit), true
	})
}

// notes are the small boxes for what is regrouped: over every place but the ones
// in a sum, over every place in a difference, needed or not.
func (c columns) notes() drawing {
	regrouped := c.regrouped()
	return c.lineOf(noteSize+1.5, func(place int) (drawing, bool) {
		if place == 0 && c.s.IsAddition() {
			return drawing{}, false
		}
		return c.note(regrouped[place]), true
	})
}

func (c columns) note(digit string) drawing {
	print := c.small(digit)
	return drawing{w: noteSize, h: noteSize, axis: noteSize / 2, paint: func(cv canvas, at point) {
		cv.rect(at, noteSize, noteSize, style{line: thin, dashed: true})
		if c.key {
			print.paint(cv, point{at.x + (noteSize-print.w)/2, at.y + noteSize/2 - print.axis})
		}
	}}
}

// regrouped is what the small boxes hold once the work is done, by place from the
// ones: what is carried into a place, or what a place has after taking ten apart.
// Empty where nothing changes.
func (c columns) regrouped() []string {
	if c.s.IsAddition() {
		return carried(c.s.Operands(), c.places)
	}
	return takenApart(c.s.Terms[0], c.s.Terms[1], c.places)
}

func carried(addends []int, places int) []string {
	notes := make([]string, places)
	carry, value := 0, 1
	for place := range notes {
		if carry > 0 {
			notes[place] = strconv.Itoa(carry)
		}
		for _, a := range addends {
			carry += a / value % 10
		}
		carry, value = carry/10, value*10
	}
	return notes
}

func takenApart(a, b, places int) []string {
	notes := make([]string, places)
	borrowed := 0
	for place := range notes {
		top := a%10 - borrowed
		changed := borrowed > 0
		borrowed = 0
		if top < b%10 {
			top, borrowed, changed = top+10, 1, true
		}
		if changed {
			notes[place] = strconv.Itoa(top)
		}
		a, b = a/10, b/10
	}
	return notes
}

var inColumns = phrase{"Look at the sign. Write one digit in each box.", "Mira el signo. Escribe un dígito en cada cuadro."}
