package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// The height of the room to draw in under a story, in millimetres: the usual, and what is left of it where that spares a
// page.
const (
	drawingRoom = 34.0
	leastRoom   = 27.0
)

// story tells a word problem, leaves room to draw it, and asks for a number with its unit, or
// for two numbers where both parts are unknown.
func story(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Story)
	if !ok {
		return drawing{}, false
	}
	digits := max(2, longestNumber(t.Sentence.String()))
	var answer []drawing
	for i, number := range strings.Split(t.Key(), " + ") {
		if i > 0 {
			answer = append(answer, k.text(k.say(andWord)))
		}
		answer = append(answer, k.answerBox(digits, number))
	}
	answer = append(answer, k.text(t.Unit(k.lang)))
	told := tagged(tagText, "", k.paragraph(k.prompt(t), lettering{size: k.size}))
	below := tagged(tagFigure, k.saidOn(k.say(boxToWrite)+" "+t.Unit(k.lang), answerIn(t, k.lang)), row(k.gap(), answer...))
	beside := k.width - below.w - 2*k.gap()
	if beside < leastDrawing {
		d := stack(3, told, k.drawHere(k.width), below)
		d.speaks = true
		return d, true
	}
	room := k.drawHere(beside)
	room.axis, below.axis = room.h, below.h // the answer stands at the foot of the room to draw in
	d := stack(3, told, row(2*k.gap(), room, below))
	d.speaks = true
	return d, true
}

// leastDrawing is how wide the room to draw in must be to have the answer beside it.
const leastDrawing = 75.0

// drawHere is room to draw in: nothing that a screen reader has to tell.
func (k kit) drawHere(w float64) drawing {
	return drawing{w: w, h: k.toDraw, paint: func(c canvas, at point) {
		c.rect(at, w, k.toDraw, style{line: thin, dashed: true})
	}}
}

var andWord = phrase{"and", "y"}

var twoAnswers = phrase{"Listen to the story. Draw it. Write a number in each box.", "Escucha el problema. Dibújalo. Escribe un número en cada cuadro."}

func storyDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.Story)
	return twoAnswers, ok && t.Situation == task.TogetherBoth
}
