package intake

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"evenhand/standards/words"
)

// grid is the filled cells of a file, or of one sheet of a workbook, before anyone asks
// what they mean.
type grid struct {
	sheet     string // its name, in a workbook
	hidden    bool
	encoding  string
	delimiter string
	foreign   []string // words with foreign letters whose encoding was guessed
	doubtful  bool     // no encoding known here makes all of them words
	unseen    []int    // rows that are hidden
	records   []record
	places    []int // of the columns in the file, counted from 0; nil where they stand side by side
	total     int
}

// foreignFiles are the first bytes of files that get mistaken for lists.
var foreignFiles = []struct{ start, what string }{
	{"%PDF", "a PDF"},
	{"\xd0\xcf\x11\xe0", "an old workbook or document (.xls, .doc)"},
	{"\x89PNG", "a picture"}, {"\xff\xd8\xff", "a picture"},
	{"{\\rtf", "a text document (.rtf)"},
	{"<!DOCTYPE html", "a web page"}, {"<html", "a web page"},
	{"<?xml", "an XML file"},
}

// beginning is the first of a file's letters.
func beginning(data []byte) string {
	return string(bytes.TrimLeft(data[:min(len(data), 64)], "\ufeff \t\r\n"))
}

// foreignKind is what kind of foreign file begins so.
func foreignKind(start string) (what string, foreign bool) {
	for _, f := range foreignFiles {
		if strings.HasPrefix(start, f.start) || f.start[0] == '<' && strings.HasPrefix(strings.ToLower(start), strings.ToLower(f.start)) {
			return f.what, true
		}
	}
	return "", false
}

// NoText says what a file is that holds no plain text such as a plan; ok is false for text.
func NoText(data []byte) (what string, ok bool) {
	switch what, foreign := foreignKind(beginning(data)); {
	case foreign:
		return what, true
	case isWorkbook(data):
		return "a workbook or document (.xlsx, .docx)", true
	}
	text, _, err := decodeAs(data, "")
	return "no text", err == nil && isBinary(text)
}

// workbookEncoding stands for an encoding where the list is a workbook.
const workbookEncoding = "xlsx"

// widest is how many filled columns a list may have; no list of items needs a fifth of it.
// From narrowed columns on, those in which nothing stands are left out.
const (
	widest   = 100
	narrowed = 26
)

// readText splits a text into records.
func readText(data []byte, encoding string) (g grid, err error) {
	start := beginning(data)
	if what, foreign := foreignKind(start); foreign {
		return g, words.Errorf("this is %s, not a list; save it as CSV or .xlsx and take that", words.Term(what))
	}
	text, found, err := decodeAs(data, encoding)
	if err != nil {
		return g, err
	}
	if isBinary(text) {
		return g, words.Errorf("this is no text, so it is no list; save it as CSV or .xlsx and take that")
	}
	if (strings.HasPrefix(start, "{") || strings.HasPrefix(start, "[")) && json.Valid([]byte(text)) {
		return g, words.Errorf("this is JSON, not a list; write its questions into a spreadsheet, a row for each, save it as CSV and import that")
	}
	if planTable.MatchString(text) {
		return g, words.Errorf("this is a plan, not a list of items; evenhand plan FILE checks it, and evenhand assemble FILE makes its quiz")
	}
	comma, delimiter := sniff(text)
	g = grid{encoding: found.name, delimiter: delimiter, total: lineCount(text)}
	if found.guessed {
		g.foreign = foreignWords(text)
		g.doubtful = oddLetters(text[:min(len(text), sniffedBytes)]) > 0
	}
	g.records = slices.DeleteFunc(readRecords(text, comma), record.blank)
	if len(g.records) == 0 || !strings.ContainsFunc(text, isWord) {
		return g, words.Errorf("the list is empty; it needs a row for each item, such as 47 + 36 = ?,83")
	}
	return g, g.narrow()
}

// readWorkbook reads the sheets of a workbook, empty ones too.
func readWorkbook(data []byte) ([]grid, error) {
	w, err := openWorkbook(data)
	if err != nil {
		return nil, err
	}
	var grids []grid
	for _, s := range w.sheets {
		g := grid{sheet: s.name, hidden: s.hidden, encoding: workbookEncoding}
		if w.parts[s.part] != nil { // a chart sheet has none
			rows, err := w.readSheet(s)
			if err != nil {
				return nil, err
			}
			if err := g.fill(rows); err != nil {
				return nil, words.Errorf("sheet %q: %w", s.name, err)
			}
		}
		grids = append(grids, g)
	}
	return grids, nil
}

// fill takes the rows of a sheet, leaving out the columns in which nothing stands.
func (g *grid) fill(rows []sheetRow) error {
	used := map[int]bool{}
	for _, row := range rows {
		for _, c := range row.cells {
			used[c.column] = true
		}
	}
	last := -1
	for column := range used {
		last = max(last, column)
	}
	if last >= narrowed {
		if err := g.keepOnly(used); err != nil {
			return err
		}
	}
	for _, row := range rows {
		rec := record{first: row.number, last: row.number}
		for _, c := range row.cells {
			at := c.column
			if g.places != nil {
				at, _ = slices.BinarySearch(g.places, c.column)
			}
			for len(rec.cells) < at {
				rec.cells = append(rec.cells, "")
			}
			rec.cells = append(rec.cells, c.text)
		}
		g.records = append(g.records, rec)
		if row.hidden {
			g.unseen = append(g.unseen, row.number)
		}
	}
	if len(rows) > 0 {
		g.total = rows[len(rows)-1].number
	}
	return nil
}

// narrow leaves out the columns in which nothing stands from records that are too wide.
func (g *grid) narrow() error {
	used, last := map[int]bool{}, 0
	for _, rec := range g.records {
		last = max(last, filled(rec.cells))
	}
	if last <= narrowed {
		return nil
	}
	for _, rec := range g.records {
		for i, cell := range rec.cells {
			if strings.TrimSpace(cell) != "" {
				used[i] = true
			}
		}
	}
	if err := g.keepOnly(used); err != nil {
		return err
	}
	for i, rec := range g.records {
		cells := make([]string, 0, len(g.places))
		for _, at := range g.places {
			if at < len(rec.cells) {
				cells = append(cells, rec.cells[at])
			}
		}
		g.records[i].cells = cells
	}
	return nil
}

// keepOnly notes the places of the used columns, if they aren't too many.
func (g *grid) keepOnly(used map[int]bool) error {
	if len(used) > widest {
		return words.Errorf("something stands in %d columns, and a list of items has no more than %d; take out what isn't part of it", len(used), widest)
	}
	for column := range used {
		g.places = append(g.places, column)
	}
	slices.Sort(g.places)
	return nil
}

// planTable is a line that only a plan has.
var planTable = regexp.MustCompile(`(?m)^\[\[(?:row|quota|new)\]\]\s*$`)

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
