package marks

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/results"
	intake "evenhand/import"
	"evenhand/standards/words"
)

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

// begin reads the pupil and form of a row.
func (g *grid) begin(raw intake.Row, lines map[string][]int) (row, *intake.Problem) {
	aside := func(column, format string, args ...any) (row, *intake.Problem) {
		return row{}, &intake.Problem{Line: raw.Line, Column: column, Reason: words.Sayf(format, args...)}
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
func (g *grid) suggest(code string) *words.Told {
	near, ok := words.Nearest(code, g.Pupils)
	if i := len(code) - 2; slices.Contains(g.Pupils, code[:i]+code[i+1:]+code[i:i+1]) {
		near, ok = code[:i]+code[i+1:]+code[i:i+1], true
	}
	if ok {
		return words.Sayf("; did you mean %s? If it is new there, add --pupils %s", near, code)
	}
	return words.Sayf("; if it is new there, add --pupils %s", code)
}

func join(lines []int) *words.Told {
	texts := make([]string, len(lines))
	for i, line := range lines {
		texts[i] = strconv.Itoa(line)
	}
	return words.Joined(texts, "%s and %s")
}
