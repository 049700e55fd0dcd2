package sheet

import (
	"strings"
	"unicode"

	"evenhand/standards/task"
)

// answerLength is a line to write a number or a time on, in millimetres. Words get
// the whole width: a child's hand is three times as wide as print.
const answerLength = 70.0

// words asks the question in words, with a line to write on.
func inWords(k kit, posed task.Task) (drawing, bool) {
	return k.asked(k.prompt(posed), answerIn(posed, k.lang)), true
}

// answerIn is the right answer in the language of the sheet.
func answerIn(posed task.Task, lang string) string { return task.AnswerIn(posed, posed.Key(), lang) }

// asked is a question in words over the whole width and a line below it.
func (k kit) asked(question, key string) drawing {
	print := k.paragraph(question, lettering{size: k.size})
	length := min(answerLength, k.width)
	if strings.ContainsFunc(key, unicode.IsLetter) {
		length = k.width
	}
	d := stack(2, tagged(tagText, "", print), tagged(tagFigure, k.saidOn(k.say(lineToWrite), key), k.answerLine(length, key)))
	d.speaks = true
	return d
}
