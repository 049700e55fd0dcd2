package sheet

import (
	"strconv"

	"evenhand/standards"
)

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

// makeTen splits the smaller addend so that its first part fills the larger one up to the
// next ten, which stands printed below.
func makeTen(k kit, task standards.Task) (drawing, bool) {
	s, ok := task.(standards.Sentence)
	if !ok {
		return drawing{}, false
	}
	first, rest, ok := s.NextTen()
	if !ok {
		return drawing{}, false
	}
	smaller := 1
	if s.Terms[0] < s.Terms[1] {
		smaller = 0
	}
	addends := [2]drawing{k.text(strconv.Itoa(s.Terms[0])), k.text(strconv.Itoa(s.Terms[1]))}
	addends[smaller] = k.split(s.Terms[smaller], first, rest)
	ten := strconv.Itoa(s.Terms[1-smaller] + first)
	last := row(k.gap(), k.text(ten), k.text("+"), k.answerBox(2, strconv.Itoa(rest)), k.text("="), k.answerBox(2, s.Key()))
	return stack(5, row(k.gap(), addends[0], k.text("+"), addends[1]), last), true
}

// breakApart splits both addends into tens and ones, which are then added by themselves.
func breakApart(k kit, task standards.Task) (drawing, bool) {
	s, ok := task.(standards.Sentence)
	if !ok || !s.BreaksApart() {
		return drawing{}, false
	}
	a, b := s.Terms[0], s.Terms[1]
	tens, ones := a/10*10+b/10*10, a%10+b%10
	first := row(2*k.gap(), k.split(a, a/10*10, a%10), k.text("+"), k.split(b, b/10*10, b%10))
	last := row(k.gap(), k.answerBox(3, strconv.Itoa(tens)), k.text("+"), k.answerBox(2, strconv.Itoa(ones)), k.text("="), k.answerBox(3, s.Key()))
	return stack(5, first, last), true
}
