package qti

import (
	"fmt"
	"iter"
	"strings"

	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/standards/task"
)

// OfBank are the items that a bank finds, as questions in the language.
func OfBank(items iter.Seq2[bank.Item, error], lang string) iter.Seq2[Item, error] {
	return func(yield func(Item, error) bool) {
		for found, err := range items {
			var item Item
			if err == nil {
				item, err = NewItem(found, lang)
			}
			if !yield(item, err) || err != nil {
				return
			}
		}
	}
}

// OfQuiz is a quiz: a test for each form, and its items as get finds them in the bank by their IDs, each
// in the look it has in the quiz. An item that the bank has changed since is an error.
func OfQuiz(title, lang string, rows []export.QuizRow, get func(id string) (bank.Item, error)) (Package, error) {
	p := Package{Title: title, Lang: lang}
	known := make(map[string]bool)
	for _, row := range rows {
		item, err := placed(row, lang, get)
		if err != nil {
			return Package{}, fmt.Errorf("%s%d: %w", row.Form, row.Number, err)
		}
		if !known[item.ID] {
			known[item.ID] = true
			p.Items = append(p.Items, item)
		}
		test := p.test(string(row.Form), title)
		test.Items = append(test.Items, item.ID)
	}
	return p, nil
}

// test is the test of a form, made where there is none yet.
func (p *Package) test(form, title string) *Test {
	id := "form-" + form
	for i := range p.Tests {
		if p.Tests[i].ID == id {
			return &p.Tests[i]
		}
	}
	words := map[string]string{"en": "form", "es": "forma"}
	p.Tests = append(p.Tests, Test{ID: id, Title: fmt.Sprintf("%s, %s %s", title, words[p.Lang], form)})
	return &p.Tests[len(p.Tests)-1]
}

// placed is the item of a row of quiz.csv. Shown in another look than the bank's, it is another
// question, with an ID of its own.
func placed(row export.QuizRow, lang string, get func(id string) (bank.Item, error)) (Item, error) {
	found, err := get(row.ID)
	if err != nil {
		return Item{}, err
	}
	if strings.ReplaceAll(found.Key, "\r\n", "\n") != row.Key { // readers of CSV take one line end for the other
		return Item{}, fmt.Errorf("item %s has the answer %q in the bank and %q in the quiz, so it was changed since; "+
			"assemble the quiz again, with --from to keep the rest", row.ID, found.Key, row.Key)
	}
	usual := found.Look
	if row.Look != "" {
		found.Look = task.Look(row.Look)
	}
	item, err := NewItem(found, lang)
	if found.Look != usual {
		item.ID += "-" + string(found.Look)
	}
	return item, err
}

// Sequence gives the package's items one after the other, as Write takes them.
func (p Package) Sequence() iter.Seq2[Item, error] {
	return func(yield func(Item, error) bool) {
		for _, item := range p.Items {
			if !yield(item, nil) {
				return
			}
		}
	}
}
