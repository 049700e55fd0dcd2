package intake

import (
	"encoding/csv"
	"errors"
	"strings"

	"evenhand/bank/cells"
	"evenhand/standards/words"
)

// record is one row of cells with the lines of the file it takes, counted from 1.
type record struct {
	first, last int
	cells       []string
	open        bool        // a quotation mark opens a cell here and is never closed
	answer      string      // found behind the question in its cell
	problem     *words.Told // why the row can't be read where it stands; empty for most
}

// cell is a cell without the apostrophe that made it safe for a spreadsheet and
// without the spaces around it; empty where the row has no such column.
func (r record) cell(column int) string {
	if column < 0 || column >= len(r.cells) {
		return ""
	}
	return unquoted(strings.TrimSpace(cells.Unguard(r.cells[column])))
}

// unquoted takes off the typographic quotation marks that stand round a whole cell, which
// some editors put where a CSV file has plain ones.
func unquoted(cell string) string {
	inner, ok := strings.CutSuffix(cell, "”")
	for _, mark := range []string{"“", "„", "”"} {
		if bare, begins := strings.CutPrefix(inner, mark); ok && begins && !strings.ContainsAny(bare, "“„”") {
			return strings.TrimSpace(bare)
		}
	}
	return cell
}

// blank says that no cell holds anything.
func (r record) blank() bool {
	for _, cell := range r.cells {
		if strings.TrimSpace(cell) != "" {
			return false
		}
	}
	return true
}

// lineCount is the number of lines in a text; the last need not end in a line end.
func lineCount(text string) int {
	n := strings.Count(text, "\n")
	if text != "" && !strings.HasSuffix(text, "\n") {
		n++
	}
	return n
}

// readRecords reads delimited text. Lines with nothing on them give no record. Where
// quotation marks are wrong, only the line where that record starts is read by
// itself, leniently, and reading goes on with the next line: a stray mark costs no
// other row.
func readRecords(text string, comma rune) []record {
	records := make([]record, 0, lineCount(text))
	line := 1
	for text != "" {
		var used, lines int
		records, used, lines = readStrict(records, text, comma, line, 0)
		text, line = text[used:], line+lines
		text, line = skipEmptyLines(text, line)
		if text == "" {
			break
		}
		one, rest, _ := strings.Cut(text, "\n")
		records = append(records, readLenient(one, comma, line))
		text, line = rest, line+1
	}
	return records
}

// readStrict reads records behind those it is given, up to the end or to the first whose
// quotation marks are wrong, or as many as are wanted when that is not 0, and says how many
// bytes and lines it took.
func readStrict(records []record, text string, comma rune, line, wanted int) (_ []record, used, lines int) {
	r := newReader(text, comma)
	for wanted == 0 || len(records) < wanted {
		cells, err := r.Read()
		if err != nil { // io.EOF or wrong quotation marks; there is no other
			if !errors.As(err, new(*csv.ParseError)) {
				used, lines = len(text), lineCount(text)
			}
			return records, used, lines
		}
		first, _ := r.FieldPos(0)
		end := int(r.InputOffset())
		lines += lineCount(text[used:end])
		used = end
		records = append(records, record{first: line + first - 1, last: line + lines - 1, cells: cells})
	}
	return records, used, lines
}

// readLenient reads one line whose quotation marks are wrong, taking marks inside a
// cell as they are.
func readLenient(text string, comma rune, line int) record {
	const next = "\nnext"
	r := newReader(text+next, comma)
	r.LazyQuotes = true
	cells, err := r.Read()
	rec := record{first: line, last: line, cells: cells}
	if err != nil || len(cells) == 0 {
		rec.cells = []string{text}
		return rec
	}
	end := &rec.cells[len(cells)-1]
	if *end, rec.open = strings.CutSuffix(*end, next); rec.open {
		*end = `"` + *end // as it stands in the list, so that it is known again when it was set aside
	}
	return rec
}

func newReader(text string, comma rune) *csv.Reader {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma = comma
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = comma != '\t'
	return r
}

// skipEmptyLines steps over the lines that encoding/csv steps over.
func skipEmptyLines(text string, line int) (string, int) {
	for {
		switch {
		case strings.HasPrefix(text, "\n"):
			text = text[1:]
		case strings.HasPrefix(text, "\r\n"):
			text = text[2:]
		default:
			return text, line
		}
		line++
	}
}
