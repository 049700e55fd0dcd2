package marks

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/results"
	intake "evenhand/import"
	"evenhand/standards/words"
)

// Options say how to read a grid.
type Options struct {
	Class  string   // of the pupils
	Pupils []string // their codes; without any, every code is taken
	Digits Digits   // what 1 and 0 mean; empty to decide from the grid
}

// Reading is a grid as it was understood.
type Reading struct {
	Papers   []results.Paper // of the rows taken
	Unmarked []string        // codes of rows in which nothing is filled in yet
	Problems []intake.Problem
	Digits   Digits
	Notes    []string // what a person may want to know
}

// Rows is how many rows the grid has.
func (r *Reading) Rows() int { return len(r.Papers) + len(r.Unmarked) + len(r.Problems) }

// Read reads a filled-in grid of a quiz. The error says what is wrong with the grid as
// a whole; what is wrong with a row sets it aside.
func Read(name string, data []byte, quiz results.Quiz, o Options) (*Reading, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, fmt.Errorf("%s is empty; evenhand mark QUIZ --out marks.csv writes a grid to fill in", name)
	}
	cells, err := intake.Cells(name, data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	g, err := findColumns(cells, quiz.Size())
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	g.quiz, g.Options = quiz, o
	r := &Reading{Notes: g.notes}
	rows := g.lookOver(r)
	for _, row := range rows {
		g.take(r, row)
	}
	return r, nil
}

// grid is a grid whose columns are understood.
type grid struct {
	Options
	quiz        results.Quiz
	rows        []intake.Row
	pupil, form int   // columns
	items       []int // columns, by number less one
	notes       []string
}

var (
	pupilWords = []string{"pupil", "pupils", "code", "child", "student", "alumno"}
	itemWord   = regexp.MustCompile(`^(?:item|question|q|no\.?|#)?\s*(\d{1,3})\.?$`)
)

// findColumns finds the heading, which is in one of the first lines, and the columns.
func findColumns(rows []intake.Row, items int) (*grid, error) {
	for i, row := range rows[:min(len(rows), 10)] {
		said := make([]string, len(row.Cells))
		for j, cell := range row.Cells {
			said[j] = strings.ToLower(cell)
		}
		pupil := slices.IndexFunc(said, func(w string) bool { return slices.Contains(pupilWords, w) })
		if pupil < 0 {
			continue
		}
		g := &grid{rows: rows[i+1:], pupil: pupil, form: slices.Index(said, "form")}
		return g, g.findItems(said, items)
	}
	return nil, errors.New(`there is no heading; the first line should be pupil,form,1,2,3 and so on`)
}

// findItems finds the column of every item.
func (g *grid) findItems(said []string, items int) error {
	columns := map[int]int{}
	for j, word := range said {
		m := itemWord.FindStringSubmatch(word)
		switch {
		case j == g.pupil || j == g.form || word == "":
			continue
		case m == nil:
			g.notes = append(g.notes, fmt.Sprintf("column %q was not used", word))
			continue
		}
		number, _ := strconv.Atoi(m[1])
		if _, twice := columns[number]; twice {
			return fmt.Errorf("there are two columns %d; leave the right one", number)
		}
		if number < 1 || number > items {
			return fmt.Errorf("there is a column %d, but the quiz has %d items; is this the grid of another quiz?", number, items)
		}
		columns[number] = j
	}
	for number := 1; number <= items; number++ {
		j, ok := columns[number]
		if !ok {
			return fmt.Errorf("there is no column %d, but the quiz has %d items; is this the grid of another quiz?", number, items)
		}
		g.items = append(g.items, j)
	}
	return nil
}

// row is a row whose pupil and form are known.
type row struct {
	line  int
	pupil string
	form  results.Form
	cells []string // one for each item
}

// lookOver judges the beginnings of rows, finds out what 1 and 0 mean, and gives the
// rows that go on.
func (g *grid) lookOver(r *Reading) (rows []row) {
	lines := map[string][]int{}
	for _, raw := range g.rows {
		if code, err := results.ParseCode(at(raw.Cells, g.pupil)); err == nil {
			lines[code] = append(lines[code], raw.Line)
		}
	}
	var u usage
	for _, raw := range g.rows {
		row, problem := g.begin(raw, lines)
		if problem != nil {
			r.Problems = append(r.Problems, *problem)
			continue
		}
		rows = append(rows, row)
		for i, item := range row.form.Items {
			u.look(row.form.Name, i+1, item, row.cells[i])
		}
	}
	if r.Digits = g.Digits; r.Digits == "" {
		r.Digits = u.digits()
		if note := u.note(r.Digits); note != "" {
			r.Notes = append(r.Notes, note)
		}
	}
	return rows
}

// begin reads the pupil and form of a row.
func (g *grid) begin(raw intake.Row, lines map[string][]int) (row, *intake.Problem) {
	aside := func(column, format string, args ...any) (row, *intake.Problem) {
		return row{}, &intake.Problem{Line: raw.Line, Column: column, Reason: fmt.Sprintf(format, args...)}
	}
	code, err := results.ParseCode(at(raw.Cells, g.pupil))
	switch {
	case err != nil:
		return aside("pupil", "%v", err)
	case len(g.Pupils) > 0 && !slices.Contains(g.Pupils, code):
		return aside("pupil", "%s is not in the class%s", code, g.suggest(code))
	case len(lines[code]) > 1:
		return aside("pupil", "%s stands in lines %s; keep the right row", code, join(lines[code]))
	}
	name := at(raw.Cells, g.form)
	if name == "" && len(g.quiz.Forms) == 1 {
		name = g.quiz.Forms[0].Name
	}
	form, ok := g.quiz.Form(name)
	if !ok {
		return aside("form", "%q is no form of this quiz; it has %s", name, strings.Join(g.quiz.FormNames(), ", "))
	}
	cells := make([]string, len(g.items))
	for i, column := range g.items {
		cells[i] = at(raw.Cells, column)
	}
	return row{raw.Line, code, form, cells}, nil
}

// suggest ends the sentence about a code that is not in the class: most likely its
// digits were turned around.
func (g *grid) suggest(code string) string {
	near, ok := words.Nearest(code, g.Pupils)
	if i := len(code) - 2; slices.Contains(g.Pupils, code[:i]+code[i+1:]+code[i:i+1]) {
		near, ok = code[:i]+code[i+1:]+code[i:i+1], true
	}
	if ok {
		return fmt.Sprintf("; did you mean %s? If it is new there, add --pupils %s", near, code)
	}
	return fmt.Sprintf("; if it is new there, add --pupils %s", code)
}

// take reads the cells of a row.
func (g *grid) take(r *Reading, row row) {
	if !slices.ContainsFunc(row.cells, func(cell string) bool { return cell != "" }) {
		r.Unmarked = append(r.Unmarked, row.pupil)
		return
	}
	aside := func(i int, reason string) {
		r.Problems = append(r.Problems, intake.Problem{Line: row.line, Column: fmt.Sprintf("item %d", i+1), Reason: fmt.Sprintf("%.40q: %s", row.cells[i], reason)})
	}
	paper := results.Paper{Class: g.Class, Pupil: row.pupil, Form: row.form.Name}
	for i, cell := range row.cells {
		if i >= len(row.form.Items) {
			if cell != "" {
				aside(i, fmt.Sprintf("form %s has only %d items", row.form.Name, len(row.form.Items)))
				return
			}
			continue
		}
		answer, problem := r.Digits.read(row.form.Items[i], cell)
		if problem != "" {
			aside(i, problem)
			return
		}
		paper.Answers = append(paper.Answers, answer)
	}
	r.Papers = append(r.Papers, paper)
}

// at is a cell, empty where the row has none.
func at(cells []string, column int) string {
	if column < 0 || column >= len(cells) {
		return ""
	}
	return cells[column]
}

func join(lines []int) string {
	texts := make([]string, len(lines))
	for i, line := range lines {
		texts[i] = strconv.Itoa(line)
	}
	return strings.Join(texts, " and ")
}
