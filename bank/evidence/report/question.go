package report

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/results"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

const right = results.Right

// question is an item with what its wrong answers tell on the sheet as it was shown, worked
// out once.
type question struct {
	missteps []task.Misstep
	chances  []string // names of the missteps that could show
}

func (b *book) question(it results.Item) *question {
	at := [3]string{it.Asks, it.Key, string(it.Look)}
	if b.questions[at] == nil {
		b.questions[at] = newQuestion(it)
	}
	return b.questions[at]
}

// Explain lists the missteps that lead to an answer that a pupil wrote to an item.
func Explain(it results.Item, written string) []*task.MisstepKind {
	return newQuestion(it).explain(written)
}

func newQuestion(it results.Item) *question {
	q := &question{}
	if asked, ok := it.Task(); ok {
		q.missteps = task.MisstepsIn(asked, it.Look)
	}
	for _, m := range q.missteps {
		for _, kind := range m.Kinds {
			if !slices.Contains(q.chances, kind.Name) {
				q.chances = append(q.chances, kind.Name)
			}
		}
	}
	return q
}

// explain lists the missteps that lead to the written answer.
func (q *question) explain(written string) (kinds []*task.MisstepKind) {
	for _, m := range q.missteps {
		if sameAnswer(written, m.Answer) {
			kinds = append(kinds, m.Kinds...)
		}
	}
	return kinds
}

// sameAnswer says that two answers differ in spaces and capitals only, or are one number
// or one time.
func sameAnswer(a, b string) bool {
	a, b = strings.ToLower(strings.Join(strings.Fields(a), " ")), strings.ToLower(strings.Join(strings.Fields(b), " "))
	if a == b {
		return true
	}
	if n, err := strconv.Atoi(a); err == nil {
		m, err := strconv.Atoi(b)
		return err == nil && n == m
	}
	t, err := words.ParseTime(a)
	u, err2 := words.ParseTime(b)
	return err == nil && err2 == nil && t.Hour == u.Hour && t.Minute == u.Minute
}
