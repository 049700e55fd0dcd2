package desk

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/import/marks"
)

// toBeMarked is a quiz with how many papers of each class are marked.
type toBeMarked struct {
	bank.Quiz
	Classes []classMarked
}

type classMarked struct {
	Name           string
	Marked, Pupils int
}

// marksList lists the quizzes to mark, the latest first.
func marksList(v *visit) error {
	given, err := v.desk.bank.Quizzes()
	if err != nil {
		return err
	}
	var list []toBeMarked
	for _, q := range slices.Backward(given) {
		if q.MakeUp == "" { // its marks count with its quiz
			list = append(list, toBeMarked{Quiz: q})
		}
	}
	err = v.readMarks(func(s *results.Store) error {
		for i := range list {
			if list[i].Classes, err = markedOf(s, list[i].Quiz); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	return v.show("marks", struct{ Quizzes []toBeMarked }{list})
}

// markedOf counts the papers of a quiz in the class that it is for, else in every class.
func markedOf(s *results.Store, q bank.Quiz) (list []classMarked, err error) {
	quiz, err := s.AsGiven(results.QuizOf(q))
	if err != nil {
		return nil, err
	}
	papers, err := s.Papers(quiz.ID)
	if err != nil {
		return nil, err
	}
	classes, err := s.Classes()
	if err != nil {
		return nil, err
	}
	for _, name := range classes {
		pupils, err := s.Pupils(name)
		if err != nil {
			return nil, err
		}
		marked := 0
		for _, p := range papers {
			if p.Class == name {
				marked++
			}
		}
		if q.Class == "" || q.Class == name || marked > 0 {
			list = append(list, classMarked{name, marked, len(pupils)})
		}
	}
	return list, nil
}

// writeMarks opens the pupils' results to change them.
func (v *visit) writeMarks(change func(*results.Store) error) error {
	s, err := results.Open(results.Path(v.desk.bank.Path()), bank.Options{})
	if err != nil {
		return err
	}
	return errors.Join(change(s), s.Close())
}

// marking is what the page of a quiz's marks works on: the quiz as it was given and the class.
type marking struct {
	Given   bank.Quiz
	Quiz    results.Quiz
	Class   string
	Classes []string
	Pupils  []string
	papers  map[string]results.Paper // of the class, by pupil
	seats   map[string]string        // the form that each pupil most likely had
}

// markingAsked is what the address asks for, before anything is read of the class; a make-up form is
// marked with its quiz.
func (v *visit) markingAsked() (m marking, err error) {
	sat, err := v.satAsked()
	if err != nil {
		return m, err
	}
	m.Given, m.Quiz = sat[0], results.QuizOf(sat[0])
	for _, q := range sat[1:] {
		m.Quiz = m.Quiz.With(results.QuizOf(q).Forms)
	}
	m.Class = m.Given.Class
	if v.Form.Has("class") {
		m.Class = v.Form.Get("class")
	}
	if problem := results.CheckClass(m.Class); problem != nil {
		return m, v.wrong("marks.class.wrong", m.Class)
	}
	return m, nil
}

// read reads what the results know.
func (m *marking) read(s *results.Store, chosen bool) (err error) {
	if m.Quiz, err = s.AsGiven(m.Quiz); err != nil {
		return err
	}
	if m.Classes, err = s.Classes(); err != nil {
		return err
	}
	if !chosen && m.Class == "" && len(m.Classes) > 0 && !slices.Contains(m.Classes, "") {
		m.Class = m.Classes[0]
	}
	if m.Pupils, err = s.Pupils(m.Class); err != nil {
		return err
	}
	papers, err := s.Papers(m.Quiz.ID)
	if err != nil {
		return err
	}
	m.papers, m.seats = map[string]results.Paper{}, map[string]string{}
	for _, p := range papers {
		if p.Class == m.Class {
			m.papers[p.Pupil] = p
		}
	}
	seats, err := marks.SeatsToMark(s, m.Quiz, m.Class, m.Pupils)
	for _, seat := range seats {
		m.seats[seat.Pupil] = seat.Form
	}
	return err
}

// stands is a pupil's paper as it stands; without answers where it is not marked.
func (m *marking) stands(pupil string) results.Paper {
	if p, marked := m.papers[pupil]; marked {
		return p
	}
	return results.Paper{Class: m.Class, Pupil: pupil, Form: m.seats[pupil]}
}

// gridPage is what the page shows.
type gridPage struct {
	marking
	Columns       []gridColumn
	Rows          []gridRow
	ByItem        bool
	Before, After int // the items beside the one shown; 0 for none
	Marked        int // papers
	Asked         int // answers on them that have to be settled
	Saved         bool
	Pasted        *pasted
	Text          string // that was pasted
	Codes         string // that were typed and are none
	Problem       string
}

// gridColumn is an item's place with what the forms ask there.
type gridColumn struct {
	Number int // from 1
	Asks   []gridItem
}

type gridItem struct{ Form, Asks, Key string }

type gridRow struct {
	Pupil, Form string
	Revision    int
	Cells       []gridCell
	Says        []gridSaid
	Problem     string // why the row is not saved
	Right, Of   int
}

type gridCell struct {
	Number int
	Text   string
	State  string // right, wrong, absent, not-reached, asked
	Asks   string
}

// gridSaid is a sentence about a cell.
type gridSaid struct {
	Number int
	Text   string
	Asked  bool // it has to be settled
}

// gridPage is the page without its rows.
func (v *visit) gridPage(m marking) *gridPage {
	page := &gridPage{marking: m, Marked: len(m.papers), ByItem: v.Form.Get("by") == "item", Saved: v.Form.Has("saved")}
	for _, paper := range m.papers {
		for _, answer := range paper.Answers {
			if answer.Asked() {
				page.Asked++
			}
		}
	}
	first, last := 1, m.Quiz.Size()
	if page.ByItem {
		item, err := strconv.Atoi(v.Form.Get("item"))
		if err != nil || item < 1 || item > last {
			item = 1
		}
		if page.Before = item - 1; item < last {
			page.After = item + 1
		}
		first, last = item, item
	}
	for number := first; number <= last; number++ {
		column := gridColumn{Number: number}
		for _, form := range m.Quiz.Forms {
			if number <= len(form.Items) {
				item := form.Items[number-1]
				column.Asks = append(column.Asks, gridItem{form.Name, item.Asks, item.Key})
			}
		}
		page.Columns = append(page.Columns, column)
	}
	return page
}

// row is a pupil's row: the paper, and what was typed where that stands in its place.
func (page *gridPage) row(v *visit, paper results.Paper, typed map[int]string) gridRow {
	row := gridRow{Pupil: paper.Pupil, Form: paper.Form, Revision: page.papers[paper.Pupil].Revision}
	form, _ := page.Quiz.Form(paper.Form)
	row.Right, row.Of = paper.Score()
	for _, column := range page.Columns {
		cell, i := gridCell{Number: column.Number}, column.Number-1
		if i >= len(form.Items) {
			row.Cells = append(row.Cells, cell)
			continue
		}
		item, answer := form.Items[i], results.Answer{}
		cell.Asks = item.Asks
		if i < len(paper.Answers) {
			answer = paper.Answers[i]
			cell.State = strings.ReplaceAll(string(answer.State), " ", "-")
			cell.Text = shownAs(answer)
		}
		if text, ok := typed[i]; ok {
			cell.Text = text
		}
		if answer.Asked() {
			cell.State = "asked"
		}
		if said := v.saidOf(item, answer); said != "" {
			row.Says = append(row.Says, gridSaid{column.Number, said, answer.Asked()})
		}
		row.Cells = append(row.Cells, cell)
	}
	return row
}

// saidOf is what there is to say about an answer: what it suggests, or what has to be settled.
func (v *visit) saidOf(item results.Item, a results.Answer) string {
	switch {
	case a.Asked():
		return v.said.say("marks.asked", a.Written, v.said.Asks(item.Asks))
	case a.State != results.Wrong || a.Written == "":
		return ""
	}
	if kinds := report.Explain(item, a.Written); len(kinds) > 0 {
		return v.said.say("marks.suggests", a.Written, v.said.Suggests(kinds))
	}
	return ""
}

// marksPage shows the grid.
func marksPage(v *visit) error {
	m, err := v.markingAsked()
	if err != nil {
		return err
	}
	if err := v.readMarks(func(s *results.Store) error { return m.read(s, v.Form.Has("class")) }); err != nil {
		return err
	}
	return v.showGrid(m, nil)
}

// showGrid shows the whole class, with a change to the page.
func (v *visit) showGrid(m marking, change func(*gridPage)) error {
	page := v.gridPage(m)
	for _, pupil := range m.Pupils {
		page.Rows = append(page.Rows, page.row(v, m.stands(pupil), nil))
	}
	if change != nil {
		change(page)
	}
	return v.show("grid", page)
}
