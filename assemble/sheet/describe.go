package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// What a screen reader says of a question that its picture shows.
var readDescription = phrase{"A clock face with a short hour hand and a long minute hand.", "Un reloj con una manecilla corta para la hora y una larga para los minutos."}

// nameOf is what kind of picture a question is.
func nameOf(q Question) phrase {
	if q.Task == nil {
		return looks[task.LookWords].name
	}
	return looks[q.Look].name
}

// description is the question in words: what is asked, never what is right. A clock to
// be read is a clock face, not its time.
func (s settings) description(q Question) string {
	if q.Look == task.LookChoice && q.Task != nil {
		options, _, _ := task.OptionsAt(q.Task, keyPlace(q.Number))
		return s.asking(q) + " " + strings.Join(options[:], "; ")
	}
	return s.asking(q)
}

func (s settings) asking(q Question) string {
	if q.Text != "" {
		return q.Text
	}
	switch t := q.Task.(type) {
	case nil:
		return ""
	case task.Clock:
		switch {
		case q.Look == task.LookSaidTime || q.Look == task.LookSaidFace:
			return s.say(looks[q.Look].direction) + " " + t.Time.Words(s.Lang)
		case t.Verb != task.Draw:
			return s.say(readDescription) + " " + t.Prompt(s.Lang)
		}
	}
	return q.Task.Prompt(s.Lang)
}
