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
		if t.Time.Half != "" {
			answer = centred(1, k.print(t.Time.DayHint(k.lang), lettering{size: .78 * k.size}), answer)
		}
	}
	return centred(4, k.dial(k.radius, &t.Time), answer), true
}

// digitalTime is a box for the hour and one for the minutes, and the halves of the
// day to choose from where the task tells which it is.
func (k kit) digitalTime(t words.Time) drawing {
	boxes := row(1.5, k.answerBox(2, strconv.Itoa(t.Hour)), k.bold(":"), k.answerBox(2, fmt.Sprintf("%02d", t.Minute)))
	if t.Half == "" {
		return boxes
	}
	return centred(2, boxes, k.halvesOfDay(t))
}

// Directions of a clock to read.
var (
	readTime   = phrase{"Write the time that the clock shows.", "Escribe la hora que marca el reloj."}
	sayTime    = phrase{"Write in words the time that the clock shows.", "Escribe con palabras la hora que marca el reloj."}
	circleHalf = phrase{" Circle a.m. or p.m.", " Encierra a.m. o p.m."}
)

// clockDirection asks for words, or for a.m. or p.m. where the sheet has the two to choose from.
func clockDirection(asked task.Task) (phrase, bool) {
	if t, ok := asked.(task.Clock); ok && t.Verb == task.Say {
		return sayTime, true
	}
	return halfDirection(asked, readTime)
}

// halfDirection asks for a.m. or p.m. too, where a clock has the two to choose from.
func halfDirection(asked task.Task, said phrase) (phrase, bool) {
	t, ok := asked.(task.Clock)
	return phrase{said.en + circleHalf.en, said.es + circleHalf.es}, ok && t.Verb == task.Read && t.Time.Half != ""
}
