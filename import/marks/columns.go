package marks

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/results"
	intake "evenhand/import"
	"evenhand/standards/words"
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
	notes       []*words.Told
}

// What heads the columns of pupils and forms, and a column's number (common practice).
var (
	pupilWord = regexp.MustCompile(`^(?:(?:pupil|student|child|learner)(?:'?s)?(?:[ _-]?(?:code|id|no\.?|number|nr\.?|#))?|codes?|` +
		`alumn[oa]s?|estudiantes?|niñ[oa]s?|c[oó]digo(?: del? .*)?|clave|schüler(?:in)?(?:nen)?|schüler/in|` +
		`kind(?:er)?|kürzel|[ée]l[èe]ves?|enfants?|code [ée]l[èe]ve|alun[oa]s?|alliev[oi]|leerling(?:en)?|` +
		`elev(?:er)?|uczeń)$`)
	formWord = regexp.MustCompile(`^(?:test |sheet |quiz )?(?:form|forma|formular|formulario|version|versión|` +
		`versione|versão|sheet|hoja|bogen|blatt|feuille|fassung|variante?)$`)
	itemWord = regexp.MustCompile(`^(?:(?:item|question|problem|task|exercise|q|i|no|nr|n°|nº|number|pregunta|` +
		`ejercicio|problema|reactivo|ítem|p|aufgabe|frage|a|f|exercice|domanda|opgave|vraag|` +
		`questão)[.:]?)?\s*#?\s*(\d{1,3})(?:[.,]0+|[.):]?)$`)
)

// findGrid finds the one sheet that is a grid.
func findGrid(sheets []intake.Sheet, quiz results.Quiz) (found *grid, err error) {
	var names []string
	var others []*words.Told
	for _, sheet := range sheets {
		g, wrong := findColumns(sheet.Rows, quiz)
		if wrong != nil {
			others = append(others, words.Sayf("sheet %q was not read: %v", sheet.Name, wrong))
			if err == nil {
				err = wrong
			}
			continue
		}
		names = append(names, fmt.Sprintf("%q", sheet.Name))
		found = g
	}
	switch len(names) {
	case 0:
		return nil, err
	case 1:
		found.notes = append(found.notes, others...)
		return found, nil
	}
	return nil, words.Errorf("the sheets %s are all grids of this quiz; leave one in the file, and save each of "+
		"the others as a file of its own", strings.Join(names, " and "))
}

// headedWithin is how many lines may stand before the items' numbers end the heading.
const headedWithin = 10

// findColumns finds the heading, which is the first of the first lines with a number for
// every item, and the columns. What heads a column may stand in a line above, as in merged
// cells; pupils are also known by their codes.
func findColumns(rows []intake.Row, quiz results.Quiz) (*grid, error) {
	var above []string
	var wrong error
	for i, row := range rows[:min(len(rows), headedWithin)] {
		said := make([]string, len(row.Cells))
		for j, cell := range row.Cells {
			said[j] = strings.ToLower(strings.Join(strings.Fields(cell), " "))
		}
		above = over(said, above)
		g := &grid{rows: rows[i+1:], ofQuiz: slices.Index(above, quizHeading), form: slices.IndexFunc(above, formWord.MatchString)}
		g.pupil = slices.IndexFunc(above, pupilWord.MatchString)
		headed := g.pupil >= 0
		if !headed {
			g.pupil = g.codesIn(len(above))
		}
		if g.pupil < 0 || isCode(at(row.Cells, g.pupil)) {
			continue
		}
		err := g.findItems(said, quiz.Size())
		if err == nil {
			return g, nil
		}
		if wrong == nil && headed {
			wrong = err
		}
	}
	if wrong == nil {
		wrong = words.Errorf("there is no heading; the first line is %.60q, and it should be pupil,form,1,2,3 and so on", strings.Join(rows[0].Cells, ","))
	}
	return nil, wrong
}

// over lays the cells of a line over those above it; a blank cell is headed by what stands above.
func over(line, above []string) []string {
	all := make([]string, max(len(line), len(above)))
	copy(all, above)
	for j, cell := range line {
		if cell != "" {
			all[j] = cell
		}
	}
	return all
}

// codesIn is the one column in which all that stands is pupils' codes; -1 without one.
func (g *grid) codesIn(width int) int {
	found := -1
	for j := range width {
		codes, others := 0, 0
		for _, row := range g.rows {
			switch text := at(row.Cells, j); {
			case isCode(text):
				codes++
			case text != "":
				others++
			}
		}
		if codes > 0 && others == 0 {
			if found >= 0 {
				return -1
			}
			found = j
		}
	}
	return found
}

func isCode(text string) bool {
	_, err := results.ParseCode(text)
	return err == nil
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
			g.notes = append(g.notes, words.Sayf("column %q was not used", word))
			continue
		}
		number, _ := strconv.Atoi(m[1])
		if _, twice := columns[number]; twice {
			return words.Errorf("there are two columns %d; leave the right one", number)
		}
		if number < 1 || number > items {
			return words.Errorf("there is a column %d, but the quiz has %d items; is this the grid of another quiz?", number, items)
		}
		columns[number] = j
	}
	for number := 1; number <= items; number++ {
		j, ok := columns[number]
		if !ok {
			return words.Errorf("there is no column %d, but the quiz has %d items; is this the grid of another quiz?", number, items)
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
		return words.Errorf("this is the grid of another quiz, not of %s; name its own folder, or write a new grid with --out", g.quiz.Name())
	case ours == 0:
		g.notes = append(g.notes, words.Sayf("the grid doesn't say which quiz it is of; it was taken for %s", g.quiz.Name()))
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
