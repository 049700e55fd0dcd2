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

// PaperOf is a form of a quiz, its items in the order of the sheet.
func PaperOf(title, week, form string, items []bank.Item, lang string) Paper {
	paper := Paper{Title: title, Form: form, Week: week}
	for i, item := range items {
		paper.Questions = append(paper.Questions, QuestionOf(item, i+1, lang))
	}
	return paper
}
