package sheet

import (
	"evenhand/bank"
	"evenhand/standards/task"
)

// QuestionOf is an item of a bank as it is drawn, under its number on the sheet.
func QuestionOf(item bank.Item, number int, lang string) Question {
	q := Question{Number: number, Look: item.Look, Text: item.OwnWords(lang), Key: item.Key}
	if asked, err := task.Parse(item.Task); err == nil {
		q.Task, q.Missteps = asked, task.MisstepsIn(asked, item.Look)
	}
	return q
}
