package sheet

import (
	"strings"
	"unicode"

	"evenhand/standards"
)

// answerLength is a line to write a number or a time on, in millimetres. Words get
// the whole width: a child's hand is three times as wide as print.
const answerLength = 70.0

// words asks the question in words, with a line to write on.
func words(k kit, task standards.Task) (drawing, bool) {
	return k.asked(task.Prompt(k.lang), answerIn(task, k.lang)), true
}

// answerIn is the right answer in the language of the sheet.
func answerIn(task standards.Task, lang string) string { return writtenIn(task, task.Key(), lang) }

// writtenIn is a right or wrong answer to the task, as the task gives it, in the language.
func writtenIn(task standards.Task, answer, lang string) string {
	switch t := task.(type) {
	case standards.Clock:
		if said, err := standards.ParseTime(answer); err == nil && t.Verb == standards.Say {
			return said.Words(lang)
		}
	case standards.WriteNumber:
		if t.InWords {
			return standards.RenameNumbers(answer, lang)
		}
	}
	return answerWord(answer, lang)
}

// asked is a question in words over the whole width and a line below it.
func (k kit) asked(question, key string) drawing {
	print := k.paragraph(question, lettering{size: k.size})
	length := min(answerLength, k.width)
	if strings.ContainsFunc(key, unicode.IsLetter) {
		length = k.width
	}
	return stack(2, print, k.answerLine(length, key))
}
