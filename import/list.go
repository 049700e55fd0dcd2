package intake

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// List is a colleague's list, read and understood but not yet judged.
type List struct {
	Name      string // of the file, without its folder
	Encoding  string // as shown to people, such as Windows-1252; "xlsx" for a workbook
	Delimiter string // what stands between cells: commas, semicolons, tabs; for a workbook the sheet's name
	Columns   []Column
	Lines     []Line // every line that isn't blank, in order
	Total     int    // lines of the file, the blank ones too

	headings []string // as they stand in the list; nil where it has none
	rows     []record
	own      bool // written by evenhand export
	mended   bool // rows that an import set aside
}

// Options say how to read a list where a person knows better.
type Options struct {
	// Columns names columns by their heading, number (from 1) or letter, for the
	// meanings in Meaning: {"question": "Their heading"}.
	Columns map[string]string
}

// Written says for people how the list was written: "Windows-1252, semicolons between
// cells" or `workbook, sheet "Week 2"`.
func (l *List) Written() string {
	if l.Encoding == workbookEncoding {
		return fmt.Sprintf("workbook, sheet %q", l.Delimiter)
	}
	return fmt.Sprintf("%s, %s between cells", l.Encoding, l.Delimiter)
}

// Rows is the number of rows, each of which will be added, already here or set aside.
func (l *List) Rows() int { return len(l.rows) }

// Open reads a list from the bytes of a file: CSV in any usual encoding and with any
// usual delimiter, or an .xlsx workbook. The error says what is wrong with the file or
// the options as a whole; what is wrong in a row only shows when it is imported.
func Open(name string, data []byte, o Options) (*List, error) {
	l := &List{Name: name}
	if err := l.open(data, o); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return l, nil
}

func (l *List) open(data []byte, o Options) error {
	wishes, err := parseWishes(o.Columns)
	if err != nil {
		return err
	}
	records, err := l.read(data)
	if err != nil {
		return err
	}
	return l.lookOver(records, wishes)
}

// foreignFiles are the first bytes of files that get mistaken for lists.
var foreignFiles = []struct{ start, what string }{
	{"%PDF", "a PDF"},
	{"\xd0\xcf\x11\xe0", "an old workbook or document (.xls, .doc)"},
	{"\x89PNG", "a picture"}, {"\xff\xd8\xff", "a picture"},
	{"{\\rtf", "a text document (.rtf)"},
}

// workbookEncoding stands for an encoding where the list is a workbook.
const workbookEncoding = "xlsx"

// read splits the file into records and notes how it was written.
func (l *List) read(data []byte) (records []record, err error) {
	for _, f := range foreignFiles {
		if strings.HasPrefix(string(data[:min(len(data), 8)]), f.start) {
			return nil, fmt.Errorf("this is %s, not a list; save it as CSV or .xlsx and import that", f.what)
		}
	}
	if isWorkbook(data) {
		l.Encoding = workbookEncoding
		records, l.Delimiter, err = readWorkbook(data)
		if len(records) > 0 {
			l.Total = records[len(records)-1].last
		}
		return records, err
	}
	text, encoding := decode(data)
	if isBinary(text) {
		return nil, errors.New("this is no text, so it is no list; save it as CSV or .xlsx and import that")
	}
	comma, delimiter := sniff(text)
	l.Encoding, l.Delimiter, l.Total = encoding, delimiter, lineCount(text)
	records = slices.DeleteFunc(readRecords(text, comma), record.blank)
	if len(records) == 0 || !strings.ContainsFunc(text, isWord) {
		return nil, errors.New("the list is empty; it needs a row for each item, such as 47 + 36 = ?,83")
	}
	return records, nil
}

// isBinary says whether one character in fifty is one that no person types.
func isBinary(text string) bool {
	typed, untyped := 0, 0
	for _, r := range text {
		if unicode.IsControl(r) && !unicode.IsSpace(r) || r == '�' {
			untyped++
		} else {
			typed++
		}
	}
	return 49*untyped > typed
}

func isWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

func parseWishes(columns map[string]string) (map[Meaning]string, error) {
	wishes := map[Meaning]string{}
	for name, wish := range columns {
		meaning, err := ParseMeaning(name)
		if err != nil {
			return nil, err
		}
		wishes[meaning] = wish
	}
	return wishes, nil
}

// lookOver finds the heading, the columns and the kind of each line.
func (l *List) lookOver(records []record, wishes map[Meaning]string) error {
	if at := slices.IndexFunc(records[:min(len(records), 2)], func(rec record) bool { return isSetAside(rec.cells) }); at >= 0 {
		l.mended = true
		return l.lookOverMended(records, at, wishes)
	}
	heading := findHeading(records, spelledOut(wishes))
	sample := records[:min(len(records), sniffedRecords)]
	width := usualWidth(sample[heading+1:], 2)
	if heading < 0 {
		width = usualWidth(sample, 5)
		columns := newColumns(nil, width)
		guessed(columns, sample)
		heading = findForeignHeading(sample, holder(columns, Question))
	}
	if heading >= 0 {
		l.headings = records[heading].cells[:filled(records[heading].cells)]
	}
	if l.own = isOwn(l.headings) && len(wishes) == 0; l.own {
		l.Columns = newColumns(l.headings, 0)
		understandOwn(l.Columns)
	} else {
		l.Columns = newColumns(l.headings, width)
		if err := l.understand(wishes, sample[heading+1:]); err != nil {
			return err
		}
	}
	l.sort(records, heading)
	return nil
}

// lookOverMended does the same for a file of rows set aside, whose first line, or that
// after "sep=;", is its heading and every other a row.
func (l *List) lookOverMended(records []record, heading int, wishes map[Meaning]string) error {
	l.headings = records[heading].cells[:filled(records[heading].cells)]
	l.Columns = newColumns(l.headings, 0)
	if l.own = isOwn(l.headings) && len(wishes) == 0; l.own {
		understandOwn(l.Columns)
	} else if err := named(l.Columns, wishes); err != nil {
		return err
	} else {
		understandMended(l.Columns)
	}
	for i, rec := range records {
		kind := RowLine
		switch {
		case i < heading:
			kind = TitleLine
		case i == heading:
			kind = HeadingLine
		default:
			l.rows = append(l.rows, rec)
		}
		l.Lines = append(l.Lines, newLine(rec, kind))
	}
	return nil
}

// understand gives the columns their meanings: as a person named them, by their
// headings, by their cells.
func (l *List) understand(wishes map[Meaning]string, sample []record) error {
	if err := named(l.Columns, wishes); err != nil {
		return err
	}
	headed(l.Columns, sample)
	guessed(l.Columns, sample)
	if l.column(Question) < 0 && l.column(QuestionEs) < 0 {
		return fmt.Errorf("no column looks like the questions; say which it is, as in --column question=1; %s", columnsThere(l.Columns))
	}
	return nil
}

// spelledOut are the headings that a person named in words, not by number or letter.
func spelledOut(wishes map[Meaning]string) (headings []string) {
	for _, wish := range wishes {
		if columnAt(wish, 702) < 0 { // as far as the letters ZZ
			headings = append(headings, wish)
		}
	}
	return headings
}

// usualWidth is the number of cells that at least one row in so many has.
func usualWidth(rows []record, oneIn int) int {
	if len(rows) == 0 {
		return 0
	}
	widths := make([]int, len(rows))
	for i, rec := range rows {
		widths[i] = filled(rec.cells)
	}
	slices.Sort(widths)
	return widths[len(rows)-(len(rows)+oneIn-1)/oneIn]
}

// column is the index of the column with the meaning, or -1.
func (l *List) column(m Meaning) int { return holder(l.Columns, m) }
