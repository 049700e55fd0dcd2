package sheet

import (
	"fmt"

	"evenhand/standards/task"
)

// lineMark is a number line to mark; the key has the arrow.
func lineMark(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.LineMark)
	if !ok {
		return drawing{}, false
	}
	line := k.lineFromZero(t.Line, k.width, k.key)
	if t.Start > 0 && k.key {
		line = k.jumped(line, t)
	}
	return line, true
}

// jumped is a line with the jump from the start to the number that is marked.
func (k kit) jumped(line drawing, t task.LineMark) drawing {
	pitch, edge := k.pitch(t.Line, line.w)
	inside := line.paint
	line.paint = func(c canvas, at point) {
		inside(c, at)
		place := func(n int) float64 { return at.x + edge + pitch*float64(n/t.Line.Step) }
		from, to := point{place(t.Start), at.y + markRoom}, point{place(t.Line.Number), at.y + markRoom}
		top := point{(from.x + to.x) / 2, at.y + 1}
		c.line(from, top, style{line: plain})
		c.line(top, to, style{line: plain})
	}
	return line
}

var lineToMarkSaid = phrase{"A number line from 0 to %d, with a tick for every %d.", "Una recta numérica del 0 al %d, con una raya cada %d."}

func lineMarkAloud(k kit, asked task.Task) []string {
	t := asked.(task.LineMark)
	return []string{t.Prompt(k.lang), fmt.Sprintf(k.say(lineToMarkSaid), t.Line.To, t.Line.Step)}
}
