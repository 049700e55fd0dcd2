package marks

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/results"
	intake "evenhand/import"
)

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

// at is a cell, empty where the row has none.
func at(cells []string, column int) string {
	if column < 0 || column >= len(cells) {
		return ""
	}
	return cells[column]
}
