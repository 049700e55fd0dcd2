package intake

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"evenhand/standards/words"
)

// Line is one line of a list, or the few that one row takes.
type Line struct {
	First, Last int // counted from 1, as an editor or spreadsheet shows them
	Kind        LineKind
	Text        string // what it says; empty for rows
}

// LineKind says what a line is.
type LineKind string

// The kinds of lines.
const (
	TitleLine   LineKind = "title"
	HeadingLine LineKind = "heading"
	TotalLine   LineKind = "total"
	RowLine     LineKind = "row"
)

// Skipped lists the lines that hold no item: titles, headings and totals.
func (l *List) Skipped() []Line {
	return slices.DeleteFunc(slices.Clone(l.Lines), func(line Line) bool { return line.Kind == RowLine })
}

// sort gives every record its place: title, heading, total or row.
func (l *List) sort(records []record, heading int) {
	top := heading < 0                                           // still above the first row of a list without heading
	moved := (*words.Told)(nil)                                  // why rows below another heading can't be read
	l.rows, l.Lines = records[:0], make([]Line, 0, len(records)) // rows move up, over lines that are none
	var headings []string
	if heading >= 0 {
		headings = records[heading].cells
	}
	for i, rec := range records {
		kind := RowLine
		switch {
		case i < heading || top && len(l.Columns) > 1 && isTitle(rec.cells):
			kind = TitleLine
		case i == heading || heading >= 0 && i > heading && slices.Equal(rec.cells, headings):
			kind, moved = HeadingLine, nil
		case isHeadingAgain(rec.cells):
			kind, moved = HeadingLine, l.movedBy(rec)
		case isTotal(rec.cells):
			kind = TotalLine
		default:
			top = false
			rec.problem = cmp.Or(moved, rec.problem)
			l.rows = append(l.rows, rec)
		}
		l.Lines = append(l.Lines, newLine(rec, kind))
	}
}

// movedBy says why the rows below a further heading can't be read with the columns of the
// list; empty where it puts questions and answers in the same places.
func (l *List) movedBy(heading record) *words.Told {
	for i, cell := range heading.cells {
		m := understand(cell).meaning
		if m == QuestionEs {
			m = Question
		}
		if (m == Question || m == Answer) && i != l.column(m) && !(m == Question && i == l.column(QuestionEs)) {
			return words.Sayf("line %d begins another list, with its columns in other places; save that part "+
				"as a list of its own, or put its cells in the order of the first", heading.first)
		}
	}
	return nil
}

func newLine(rec record, kind LineKind) Line {
	line := Line{First: rec.first, Last: rec.last, Kind: kind}
	if kind != RowLine {
		line.Text = shorten(plainText(strings.Join(rec.cells, " ")))
	}
	return line
}

// isTitle says whether a row above all others is one text that asks nothing.
func isTitle(cells []string) bool {
	return filledCells(cells) == 1 && !hasTask(cells) && !strings.ContainsAny(strings.Join(cells, ""), "?¿")
}

var (
	totalWords = regexp.MustCompile(`(?i)^(?:grand |sub-?)?(?:total|totals|sum|average|mean|count|suma|promedio|` +
		`summe)(?: of)?(?: (?:items|questions|problems|rows|points|preguntas))?\s*[:=]?\s*[\d.,]*\s*(?:items|` +
		`questions|problems|rows|points|preguntas)?$`)
	totalValue = regexp.MustCompile(`^[\d.,%:/ -]*$`)
)

// isTotal says whether a row is a total that a spreadsheet has put under a list: a
// cell that says so, and numbers.
func isTotal(cells []string) bool {
	said := false
	for _, cell := range cells {
		cell = strings.TrimSpace(cell)
		switch {
		case totalWords.MatchString(cell):
			said = true
		case !totalValue.MatchString(cell):
			return false
		}
	}
	return said
}
