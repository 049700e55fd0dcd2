package intake

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// List is a colleague's list, read and understood but not yet judged.
type List struct {
	Name      string // of the file, without its folder; with its sheet where several are read
	Encoding  string // as shown to people, such as Windows-1252; "xlsx" for a workbook
	Delimiter string // what stands between cells: commas, semicolons, tabs; for a workbook the sheet's name
	Columns   []Column
	Lines     []Line // every line that isn't blank, in order
	Total     int    // lines of the file, the blank ones too

	Foreign []string      // words whose letters show whether the encoding was guessed rightly
	Asked   []*words.Told // what a person should say or see to: columns left out that may matter

	abreast  int      // how many items stand in a row
	headings []string // as they stand in the list; nil where it has none
	places   []int    // of the columns in the file, counted from 0; nil where they stand side by side
	rows     []record
	own      bool // written by evenhand export
	mended   bool // rows that an import set aside
}

// Options say how to read a list where a person knows better.
type Options struct {
	// Columns names columns by their heading, number (from 1) or letter, for the
	// meanings in Meaning: {"question": "Their heading"}.
	Columns map[string]string

	// Unused names columns, in the same ways, that hold nothing for the bank.
	Unused []string

	// Sheets names the sheets of a workbook that are wanted, "all" for all of them;
	// without any, those that can be seen and hold questions.
	Sheets []string

	// Encoding names the encoding of a text, such as windows-1250; empty to find it.
	Encoding string
}

// Written says for people how the list was written: "Windows-1252, semicolons between
// cells" or `workbook, sheet "Week 2"`.
func (l *List) Written() *words.Told {
	if l.Encoding == workbookEncoding {
		return words.Sayf("workbook, sheet %q", l.Delimiter)
	}
	if l.Delimiter == "" {
		return words.Term(l.Encoding)
	}
	return words.Sayf("%s, %s between cells", words.Term(l.Encoding), words.Term(l.Delimiter))
}

// OwnExport says that the list was written by evenhand export, column by column.
func (l *List) OwnExport() bool { return l.own }

// Rows is the number of rows, each of which will be added, already here or set aside.
func (l *List) Rows() int { return len(l.rows) }

func parseWishes(columns map[string]string) (map[Meaning]string, error) {
	wishes := map[Meaning]string{}
	for name, wish := range columns {
		meaning, err := ParseMeaning(name)
		if err != nil {
			return nil, &WrongOptionsError{err}
		}
		wishes[meaning] = wish
	}
	return wishes, nil
}

// newList understands the cells of a file or sheet.
func newList(name string, g grid, wishes map[Meaning]string, unused []string) (*List, error) {
	l := &List{
		Name: name, Encoding: g.encoding, Delimiter: g.delimiter, Foreign: g.foreign,
		Total: g.total, places: g.places, abreast: 1,
	}
	if g.encoding == workbookEncoding {
		l.Delimiter = g.sheet
	}
	if g.doubtful {
		l.ask("some letters look wrong, as in %s; name how the file is encoded, as in --encoding windows-1252", strings.Join(g.foreign, ", "))
	}
	if len(g.unseen) > 0 {
		l.ask("%s hidden in the sheet and read like the others: %s; --undo takes the list back, to import it without", countRows(len(g.unseen)), someOf(g.unseen))
	}
	return l, l.lookOver(g.records, wishes, unused)
}

// someOf lists numbers, the first few where there are many.
func someOf(numbers []int) *words.Told {
	var texts []string
	for i, n := range numbers {
		if i == 5 {
			return words.Sayf("%s and others", strings.Join(texts, ", "))
		}
		texts = append(texts, strconv.Itoa(n))
	}
	return words.Sayf("%s", strings.Join(texts, ", "))
}

// lookOver finds the heading, the columns and the kind of each line.
func (l *List) lookOver(records []record, wishes map[Meaning]string, unused []string) error {
	if at := slices.IndexFunc(records[:min(len(records), 2)], func(rec record) bool { return isSetAside(rec.cells) }); at >= 0 {
		l.mended = true
		return l.lookOverMended(records, at, wishes)
	}
	if len(wishes) == 0 && slices.ContainsFunc(records[:min(len(records), 2)], isMarksGrid) {
		return words.Errorf("this is a grid of marks, not a list of items; evenhand mark QUIZ FILE reads it")
	}
	dropNumbering(records)
	heading := findHeading(records, spelledOut(wishes))
	sample := records[:min(len(records), sniffedRecords)]
	width := usualWidth(sample[heading+1:], 2)
	if heading < 0 {
		width = usualWidth(sample, 5)
		columns := l.newColumns(width)
		guessed(columns, sample)
		heading = findForeignHeading(sample, holder(columns, Question))
		l.askAboutHeading(records, heading)
	}
	if heading >= 0 {
		l.headings = records[heading].cells[:filled(records[heading].cells)]
	}
	if l.own = isOwn(l.headings) && len(wishes) == 0; l.own {
		l.Columns = l.newColumns(0)
		understandOwn(l.Columns)
	} else {
		l.Columns = l.newColumns(width)
		if err := l.understand(wishes, unused, sample[heading+1:]); err != nil {
			return err
		}
	}
	l.sort(records, heading)
	l.standAbreast()
	return nil
}

// isMarksGrid says whether a line is the heading of a marking grid: pupils' answers are no items.
func isMarksGrid(rec record) bool {
	return strings.EqualFold(rec.cell(0), "pupil") && strings.EqualFold(rec.cell(1), "form")
}

// askAboutHeading asks about a first line that was taken for a heading only because it is
// unlike the rows below it.
func (l *List) askAboutHeading(records []record, heading int) {
	if heading >= 0 && strings.Count(strings.Join(records[heading].cells, " "), " ") > 3 {
		l.ask("line %d was taken for the headings; if it is an item, put headings such as Question and Answer above it", records[heading].first)
	}
}

// ask notes what a person should say of the list.
func (l *List) ask(format string, args ...any) {
	l.Asked = append(l.Asked, words.Sayf(format, args...))
}

// lookOverMended does the same for a file of rows set aside, whose first line, or that
// after "sep=;", is its heading and every other a row.
func (l *List) lookOverMended(records []record, heading int, wishes map[Meaning]string) error {
	l.headings = records[heading].cells[:filled(records[heading].cells)]
	l.Columns = l.newColumns(0)
	if l.own = isOwn(l.headings) && len(wishes) == 0; l.own {
		understandOwn(l.Columns)
	} else if err := named(l.Columns, wishes, nil); err != nil {
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
func (l *List) understand(wishes map[Meaning]string, unused []string, sample []record) error {
	if err := named(l.Columns, wishes, unused); err != nil {
		return err
	}
	headed(l.Columns, sample)
	l.abreast = alongside(l.Columns, sample)
	guessed(l.Columns, sample)
	if l.column(Question) < 0 && l.column(QuestionEs) < 0 {
		return &NoQuestionsError{l.Columns}
	}
	l.askAboutColumns(sample)
	return nil
}

// NoQuestionsError says that no column looks like questions. Options.Columns can say which it is.
type NoQuestionsError struct{ Columns []Column }

func (e *NoQuestionsError) Error() string { return e.Told().String() }

// Told is what the error tells.
func (e *NoQuestionsError) Told() *words.Told {
	return words.Sayf("no column looks like the questions; say which it is, as in --column question=1; %s", columnsThere(e.Columns))
}

// surelyAsks says whether the list's questions were known by more than their length.
func (l *List) surelyAsks() bool {
	at := max(l.column(Question), l.column(QuestionEs), l.column(Meaning("task")))
	return at >= 0 && l.Columns[at].Why != longestTexts
}

// spelledOut are the headings that a person named in words, not by number or letter.
func spelledOut(wishes map[Meaning]string) (headings []string) {
	for _, wish := range wishes {
		if !looksLikeAPlace(wish) {
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
