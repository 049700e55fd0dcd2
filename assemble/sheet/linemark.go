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
	return k.lineFromZero(t.Line, k.width, k.key), true
}

var lineToMarkSaid = phrase{"A number line from 0 to %d, with a tick for every %d.", "Una recta numérica del 0 al %d, con una raya cada %d."}

func lineMarkAloud(k kit, asked task.Task) []string {
	t := asked.(task.LineMark)
	return []string{t.Prompt(k.lang), fmt.Sprintf(k.say(lineToMarkSaid), t.Line.To, t.Line.Step)}
}
