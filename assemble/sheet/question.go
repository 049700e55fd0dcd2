package sheet

import (
	"evenhand/assemble"
	"evenhand/bank"
	"evenhand/standards/task"
)

// QuestionOf is an item of a bank as it is drawn, under its number on the sheet.
func QuestionOf(item bank.Item, number int, lang string) Question {
	q := PictureOf(item, number, lang)
	if q.Task != nil {
		q.Missteps = task.MisstepsIn(q.Task, q.Look)
	}
	return q
}

// PictureOf is QuestionOf without the missteps, which only a key shows.
func PictureOf(item bank.Item, number int, lang string) Question {
	q := Question{Number: number, Look: item.Look, Text: item.OwnWords(lang), Spanish: item.OwnWords("es"), Key: item.Key}
	if asked, err := task.Parse(item.Task); err == nil {
		q.Task = asked
	}
	return q
}

// PaperOf is a form of a quiz as it is printed, its items in the order of the sheet and its choices
// as they were given.
func PaperOf(quiz assemble.Quiz, form assemble.Form, lang string) Paper {
	paper := Paper{Title: quiz.Title, Form: form.Name, Week: quiz.Week}
	for _, placed := range form.Items {
		question := QuestionOf(placed.Item, placed.Number, lang)
		question.Choices = placed.Choices
		question.Tenths, question.Basis = quiz.Difficulty(placed.Item).Tenths(), placed.Basis
		paper.Questions = append(paper.Questions, question)
	}
	return paper
}

// WithChoices notes in a quiz which answers its sheets offer to choose from, and in which order, so that
// they stay the same whenever they are printed.
func WithChoices(quiz assemble.Quiz) assemble.Quiz {
	for _, form := range quiz.Forms {
		for i := range form.Items {
			placed := &form.Items[i]
			placed.Choices = Choices(PictureOf(placed.Item, placed.Number, "en"))
		}
	}
	return quiz
}
