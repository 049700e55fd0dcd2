package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// drawingRoom is the height of the room to draw in under a story, in millimetres.
const drawingRoom = 34.0

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
	room := drawing{w: k.width, h: drawingRoom, paint: func(c canvas, at point) {
		c.rect(at, k.width, drawingRoom, style{line: thin, dashed: true})
	}}
	return stack(3, k.paragraph(k.prompt(t), lettering{size: k.size}), room, row(k.gap(), answer...)), true
}

var andWord = phrase{"and", "y"}
