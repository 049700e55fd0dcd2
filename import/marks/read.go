package marks

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
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
	Digits Digits   // what 1 and 0 mean in rows where both can be; empty to ask
	// Signs are what a person said that signs mean, by Plain; an empty state says that a
	// sign is what the children wrote.
	Signs map[string]results.State
	// Before are the papers as they were marked, by pupil: a blank cell keeps what was
	// there.
	Before   map[string]results.Paper
	AllWrong bool // a person said that truly nobody has anything right
}

// Reading is a grid as it was understood.
type Reading struct {
	Papers   []results.Paper // of the rows taken
	Unmarked []string        // codes of rows in which nothing is filled in yet
	Problems []intake.Problem
	Digits   Digits
	Notes    []string // what a person may want to know

	lines    []int // of the papers
	byDigits map[Digits][]string
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
	if err := g.checkQuiz(); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	r := &Reading{Notes: g.notes}
	rows := g.lookOver(r)
	g.gather(rows)
	for i := range rows {
		g.take(r, &rows[i])
	}
	if !o.AllWrong {
		r.questionAllWrong()
	}
	r.noteDigits()
	return r, nil
}

// leastQuestioned is from how many answers on a grid is questioned in which none is
// right (common practice): by luck alone that hardly happens.
const leastQuestioned = 5

// questionAllWrong sets all papers aside where nobody has anything right.
func (r *Reading) questionAllWrong() {
	right, counted := 0, 0
	for _, p := range r.Papers {
		got, of := p.Score()
		right, counted = right+got, counted+of
	}
	if right > 0 || counted < leastQuestioned {
		return
	}
	var kept []results.Paper
	for i, p := range r.Papers {
		if _, of := p.Score(); of == 0 {
			kept = append(kept, p)
			continue
		}
		r.Problems = append(r.Problems, intake.Problem{Line: r.lines[i], Column: "pupil", Reason: p.Pupil +
			": nobody in this grid has anything right; if the marks mean something else, say so with --read, such as --read 'x=right' or --read empty=right; if it is true, with --all-wrong"})
	}
	r.Papers = kept
}

// noteDigits says which rows were read as marks and which as answers, where both are.
func (r *Reading) noteDigits() {
	marks, answers := r.byDigits[AreMarks], r.byDigits[AreAnswers]
	switch {
	case len(marks) > 0 && len(answers) > 0:
		r.Digits = EachRow
		r.Notes = append(r.Notes, fmt.Sprintf("1 and 0 are right and wrong for %s, and what the child wrote for %s", strings.Join(marks, ", "), strings.Join(answers, ", ")))
	case len(answers) > 0:
		r.Digits = AreAnswers
	case len(marks) > 0:
		r.Digits = AreMarks
	}
}

// grid is a grid whose columns are understood.
type grid struct {
	Options
	quiz        results.Quiz
	rows        []intake.Row
	seen        evidence
	pupil, form int   // columns
	ofQuiz      int   // the column with the quiz's ID; -1 without
	items       []int // columns, by number less one
	notes       []string
}

var (
	pupilWords = []string{"pupil", "pupils", "code", "child", "student", "alumno", "alumna", "código", "codigo"}
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
		form := slices.IndexFunc(said, func(w string) bool { return w == "form" || w == "forma" })
		g := &grid{rows: rows[i+1:], pupil: pupil, form: form, ofQuiz: slices.Index(said, quizHeading)}
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
		case j == g.pupil || j == g.form || j == g.ofQuiz || word == "":
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

// quizHeading heads the column that says which quiz a grid is of.
const quizHeading = "quiz"

// quizMark is a quiz's ID as a grid holds it, with a letter before it, so that no
// spreadsheet takes it for a number.
func quizMark(quiz results.Quiz) string { return "q" + quiz.ID }

// checkQuiz refuses the grid of another quiz.
func (g *grid) checkQuiz() error {
	ours, others := 0, 0
	for _, row := range g.rows {
		switch mark := strings.ToLower(at(row.Cells, g.ofQuiz)); mark {
		case "":
		case quizMark(g.quiz):
			ours++
		default:
			others++
		}
	}
	switch {
	case ours == 0 && others > 0:
		return fmt.Errorf("this is the grid of another quiz, not of %s; name its own folder, or write a new grid with --out", g.quiz.Name())
	case ours == 0:
		g.notes = append(g.notes, "the grid doesn't say which quiz it is of; it was taken for "+g.quiz.Name())
	}
	return nil
}

// row is a row whose pupil and form are known.
type row struct {
	line  int
	pupil string
	form  results.Form
	cells []string // one for each item
	read  rowCells
}

// lookOver judges the beginnings of rows and gives the rows that go on.
func (g *grid) lookOver(r *Reading) (rows []row) {
	lines := map[string][]int{}
	for _, raw := range g.rows {
		if code, err := results.ParseCode(at(raw.Cells, g.pupil)); err == nil {
			lines[code] = append(lines[code], raw.Line)
		}
	}
	for _, raw := range g.rows {
		row, problem := g.begin(raw, lines)
		if problem != nil {
			r.Problems = append(r.Problems, *problem)
			continue
		}
		rows = append(rows, row)
	}
	return rows
}

// gather looks at all cells and notes what they show together.
func (g *grid) gather(rows []row) {
	g.seen = evidence{plains: map[string]bool{}, meant: map[string]map[results.State]bool{}}
	for i := range rows {
		row := &rows[i]
		row.read = rowCells{grid: &g.seen, told: g.Signs, digits: g.Digits}
		for k, text := range row.cells {
			if text == "" || k >= len(row.form.Items) {
				continue
			}
			c := look(k, row.form.Items[k], text, g.Signs)
			row.read.cells = append(row.read.cells, c)
			if c.sign != nil {
				g.seen.plains[c.plain] = true
			}
			g.seen.wrong = g.seen.wrong || isWrong(c)
			g.seen.written = g.seen.written || c.why == "" && c.answer.State == results.Right
			g.seen.right = g.seen.right || c.sign != nil && (says(c) == results.Right || c.sign.family == digitFamily)
		}
	}
	g.seen.repeated = repeatedAnswers(rows, len(g.items))
	for i := range rows {
		if state, asked := rows[i].read.dash(); rows[i].read.has("-") && asked == "" && state == results.Wrong {
			g.seen.dashWrong = true
		}
		for _, c := range rows[i].read.cells {
			if state := rows[i].read.meant(c); state != "" && g.seen.meant[c.plain] == nil {
				g.seen.meant[c.plain] = map[results.State]bool{state: true}
			} else if state != "" {
				g.seen.meant[c.plain][state] = true
			}
		}
	}
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
	case len(g.Pupils) == 0 && results.LooksLikeName(at(raw.Cells, g.pupil), slices.Collect(maps.Keys(lines))...):
		return aside("pupil", "%q looks like a name; if it is a code, add --pupils %s --codes-not-names", at(raw.Cells, g.pupil), code)
	case at(raw.Cells, g.ofQuiz) != "" && !strings.EqualFold(at(raw.Cells, g.ofQuiz), quizMark(g.quiz)):
		return aside(quizHeading, "the row of %s is of another quiz", code)
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
	return row{line: raw.Line, pupil: code, form: form, cells: cells}, nil
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

// repeatedAnswers are the answers, 1 and 0 apart, that stand under half of the items or
// more of a grid and are right in none.
func repeatedAnswers(rows []row, items int) map[string]bool {
	under, right := map[string]map[int]bool{}, map[string]bool{}
	for _, row := range rows {
		for _, c := range row.read.cells {
			if c.sign != nil || c.why != "" || !c.long {
				continue
			}
			if under[c.plain] == nil {
				under[c.plain] = map[int]bool{}
			}
			under[c.plain][c.at] = true
			right[c.plain] = right[c.plain] || c.answer.State == results.Right
		}
	}
	repeated := map[string]bool{}
	for text, places := range under {
		if !right[text] && len(places) > leastRepeated && 2*len(places) >= items {
			repeated[text] = true
		}
	}
	return repeated
}

// blanks asks about blank cells between right ones where nobody has anything wrong, and
// the other way round: some mark only what is right, or only what is wrong.
func (g *grid) blanks(row *row) string {
	onlyRight, onlyWrong := g.seen.right && !g.seen.wrong, g.seen.wrong && !g.seen.right && !g.seen.written
	if len(row.read.cells) == 0 || !onlyRight && !onlyWrong {
		return ""
	}
	last := row.read.cells[len(row.read.cells)-1].at
	for i := range last {
		if row.cells[i] == "" {
			if onlyWrong {
				return "cells are blank before a wrong one and nobody has anything right; say --read empty=right, or --read 'empty=not reached'"
			}
			return "blank cells stand between right ones and nobody has anything wrong; say --read empty=wrong, or --read 'empty=not reached'"
		}
	}
	return ""
}

// take reads the cells of a row.
func (g *grid) take(r *Reading, row *row) {
	if !slices.ContainsFunc(row.cells, func(cell string) bool { return cell != "" }) {
		r.Unmarked = append(r.Unmarked, row.pupil)
		return
	}
	aside := func(column, format string, args ...any) {
		r.Problems = append(r.Problems, intake.Problem{Line: row.line, Column: column, Reason: row.pupil + ": " + fmt.Sprintf(format, args...)})
	}
	for i := len(row.form.Items); i < len(row.cells); i++ {
		if row.cells[i] != "" {
			aside(itemColumn(i), "%.40q: form %s has only %d items", row.cells[i], row.form.Name, len(row.form.Items))
			return
		}
	}
	if other := g.looksLike(row); other != "" {
		aside("form", "%s", other)
		return
	}
	answers, digits, asked := row.read.settle()
	if len(asked) > 0 {
		text := asked[0].text
		if len(asked) > 1 {
			text += fmt.Sprintf(" (also %s)", alsoAt(asked[1:]))
		}
		aside(itemColumn(asked[0].at), "%s", text)
		return
	}
	paper := results.Paper{Class: g.Class, Pupil: row.pupil, Form: row.form.Name}
	before, marked := g.Before[row.pupil]
	empty, said := g.Signs[""]
	if text := g.blanks(row); text != "" && !marked && !said {
		aside("pupil", "%s", text)
		return
	}
	if !said {
		empty = results.NotReached
	}
	if blanks := len(row.form.Items) - len(row.read.cells); marked && !said && blanks > 0 {
		if before.Form != row.form.Name || len(before.Answers) != len(row.form.Items) {
			aside("form", "was marked on form %s before, and this row leaves %d cells blank; fill them in, or write . for not reached", before.Form, blanks)
			return
		}
		r.Notes = append(r.Notes, fmt.Sprintf("%s: %d blank cells keep what was marked before; write . for not reached", row.pupil, blanks))
	}
	for i := range row.form.Items {
		answer, filled := answers[i]
		switch {
		case !filled && marked && !said:
			answer = before.Answers[i]
		case !filled:
			answer = results.Answer{State: empty}
		}
		paper.Answers = append(paper.Answers, answer)
	}
	if digits != "" {
		if r.byDigits == nil {
			r.byDigits = map[Digits][]string{}
		}
		r.byDigits[digits] = append(r.byDigits[digits], row.pupil)
	}
	r.Papers, r.lines = append(r.Papers, paper), append(r.lines, row.line)
}

func itemColumn(i int) string { return fmt.Sprintf("item %d", i+1) }

func alsoAt(asked []question) string {
	texts := make([]string, len(asked))
	for i, q := range asked {
		texts[i] = itemColumn(q.at)
	}
	return strings.Join(texts, ", ")
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
