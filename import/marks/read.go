package marks

import (
	"bytes"
	"fmt"
	"slices"
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
	Notes    []*words.Told // what a person may want to know

	lines    []int // of the papers
	byDigits map[Digits][]string
}

// Rows is how many rows the grid has.
func (r *Reading) Rows() int { return len(r.Papers) + len(r.Unmarked) + len(r.Problems) }

// Read reads a filled-in grid of a quiz. The error says what is wrong with the grid as
// a whole; what is wrong with a row sets it aside.
func Read(name string, data []byte, quiz results.Quiz, o Options) (*Reading, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, words.Errorf("%s is empty; evenhand mark QUIZ --out marks.csv writes a grid to fill in", name)
	}
	sheets, err := intake.Sheets(data)
	if err != nil {
		return nil, words.Errorf("%s: %w", name, err)
	}
	g, err := findGrid(sheets, quiz)
	if err != nil {
		return nil, words.Errorf("%s: %w", name, err)
	}
	if len(g.rows) == 0 {
		return nil, words.Errorf("%s has a heading but no rows; a row is a pupil's code, the form and a cell for each item", name)
	}
	g.quiz, g.Options = quiz, o
	if err := g.checkQuiz(); err != nil {
		return nil, words.Errorf("%s: %w", name, err)
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
		r.Problems = append(r.Problems, intake.Problem{Line: r.lines[i], Column: "pupil", Reason: words.Sayf(
			"%s: nobody in this grid has anything right; if the marks mean something else, say so with --read, "+
				"such as --read 'x=right' or --read empty=right; if it is true, with --all-wrong", p.Pupil)})
	}
	r.Papers = kept
}

// noteDigits says which rows were read as marks and which as answers, where both are.
func (r *Reading) noteDigits() {
	marks, answers := r.byDigits[AreMarks], r.byDigits[AreAnswers]
	switch {
	case len(marks) > 0 && len(answers) > 0:
		r.Digits = EachRow
		r.Notes = append(r.Notes, words.Sayf("1 and 0 are right and wrong for %s, and what the child "+
			"wrote for %s", strings.Join(marks, ", "), strings.Join(answers, ", ")))
	case len(answers) > 0:
		r.Digits = AreAnswers
	case len(marks) > 0:
		r.Digits = AreMarks
	}
}

// blanks asks about cells between right ones that are blank or not reached, where nobody has
// anything wrong, and the other way round: some mark only what is right, or only what is
// wrong, and some put a dot where something is wrong.
func (g *grid) blanks(row *row) *words.Told {
	onlyRight, onlyWrong := g.seen.right && !g.seen.wrong, g.seen.wrong && !g.seen.right && !g.seen.written
	if !onlyRight && !onlyWrong {
		return nil
	}
	filled, last := map[int]cell{}, -1
	for _, c := range row.read.cells {
		filled[c.at] = c
		if !c.notReached() {
			last = c.at
		}
	}
	for i := range last {
		c, isFilled := filled[i]
		_, said := g.Signs[c.plain]
		switch {
		case isFilled && (said || !c.notReached()):
		case isFilled && onlyWrong:
			return words.Sayf("%s stands before a wrong one and nobody has anything right; "+
				"say --read '%s=right', or --read '%s=not reached'", c.text, c.text, c.text)
		case isFilled:
			return words.Sayf("%s stands between right ones and nobody has anything wrong; "+
				"say --read '%s=wrong', or --read '%s=not reached'", c.text, c.text, c.text)
		case said:
		case onlyWrong:
			return words.Sayf("cells are blank before a wrong one and nobody has anything right; " +
				"say --read empty=right, or --read 'empty=not reached'")
		default:
			return words.Sayf("blank cells stand between right ones and nobody has anything wrong; " +
				"say --read empty=wrong, or --read 'empty=not reached'")
		}
	}
	return nil
}

// absentInPart asks about a row in which nothing stands but that the pupil was absent for
// some of the items: who is absent is so in the first cell, or in all.
func (row *row) absentInPart() *words.Told {
	var first cell
	absent := 0
	for _, c := range row.read.cells {
		switch row.read.meant(c) {
		case results.NotReached:
		case results.Absent:
			if absent == 0 {
				first = c
			}
			absent++
		default:
			return nil
		}
	}
	if absent == 0 || absent == len(row.form.Items) || absent == 1 && first.at == 0 {
		return nil
	}
	return words.Sayf("%s stands under %d of %d items and nothing else does; write %s under all of them if the "+
		"pupil was absent, or say what it means, as in --read '%s=wrong'",
		first.text, absent, len(row.form.Items), first.text, first.text)
}

// take reads the cells of a row.
func (g *grid) take(r *Reading, row *row) {
	if !slices.ContainsFunc(row.cells, func(cell string) bool { return cell != "" }) {
		r.Unmarked = append(r.Unmarked, row.pupil)
		return
	}
	aside := func(column, format string, args ...any) {
		r.Problems = append(r.Problems, intake.Problem{Line: row.line, Column: column, Reason: words.Sayf("%s: %s", row.pupil, words.Sayf(format, args...))})
	}
	for i := len(row.form.Items); i < len(row.cells); i++ {
		if row.cells[i] != "" {
			aside(itemColumn(i), "%.40q: form %s has only %d items", row.cells[i], row.form.Name, len(row.form.Items))
			return
		}
	}
	if other := g.looksLike(row); other != nil {
		aside("form", "%s", other)
		return
	}
	answers, digits, asked := row.read.settle()
	if len(asked) > 0 {
		text := asked[0].text
		if len(asked) > 1 {
			text = words.Sayf("%s (also %s)", text, alsoAt(asked[1:]))
		}
		aside(itemColumn(asked[0].at), "%s", text)
		return
	}
	paper := results.Paper{Class: g.Class, Pupil: row.pupil, Form: row.form.Name}
	before, marked := g.Before[row.pupil]
	empty, said := g.Signs[""]
	for _, text := range []*words.Told{g.blanks(row), row.absentInPart()} {
		if text != nil && !marked {
			aside("pupil", "%s", text)
			return
		}
	}
	if !said {
		empty = results.NotReached
	}
	if blanks := len(row.form.Items) - len(row.read.cells); marked && !said && blanks > 0 {
		if before.Form != row.form.Name || len(before.Answers) != len(row.form.Items) {
			aside("form", "was marked on form %s before, and this row leaves %d cells blank; fill them in, "+
				"or write . for not reached", before.Form, blanks)
			return
		}
		r.Notes = append(r.Notes, words.Sayf("%s: %d blank cells keep what was marked before; write . for not reached",
			row.pupil, blanks))
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

func alsoAt(asked []question) *words.Told {
	texts := make([]*words.Told, len(asked))
	for i, q := range asked {
		texts[i] = words.Sayf("item %d", q.at+1)
	}
	return words.Joined(texts, "%s, %s")
}
