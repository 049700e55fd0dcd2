package sheet

import (
	"fmt"
	"strconv"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// dialRadius is half a clock face in millimetres.
const dialRadius = 25.0

// clockFace shows a time and leaves room to write it, in digits or in words.
func clockFace(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Clock)
	if !ok || t.Verb == task.Draw {
		return drawing{}, false
	}
	answer := k.digitalTime(t.Time)
	if t.Verb == task.Say {
		answer = k.answerLine(answerLength, answerIn(asked, k.lang))
	}
	return centred(4, k.dial(dialRadius, &t.Time), answer), true
}

// digitalTime is a box for the hour and one for the minutes, and the halves of the
// day to choose from where the task tells which it is.
func (k kit) digitalTime(t words.Time) drawing {
	boxes := row(1.5, k.answerBox(2, strconv.Itoa(t.Hour)), k.bold(":"), k.answerBox(2, fmt.Sprintf("%02d", t.Minute)))
	if t.Half == "" {
		return boxes
	}
	halves := row(k.gap(), k.choice("a.m.", t.Half == words.Morning), k.choice("p.m.", t.Half == words.Afternoon))
	return centred(1, k.print(k.say(halfHints[t.Half]), lettering{size: .78 * k.size}), row(k.gap(), boxes, halves))
}

// halfHints tell the half of the day, which a dial can't show.
var halfHints = map[words.Half]phrase{
	words.Morning:   {"It is morning.", "Es por la mañana."},
	words.Afternoon: {"It is afternoon.", "Es por la tarde."},
}

// choice is a word to put a ring around; the key has the ring.
func (k kit) choice(s string, right bool) drawing {
	word := k.print(s, lettering{size: .8 * k.size})
	w, h := word.w+4, boxHeight*.6
	return drawing{w, h, h / 2, func(c canvas, at point) {
		if k.key && right {
			c.rect(at, w, h, k.answerStyle())
		}
		word.paint(c, point{at.x + 2, at.y + h/2 - word.axis})
	}}
}
