package export

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/gocarina/gocsv"
	"golang.org/x/text/encoding/charmap"

	"evenhand/bank/cells"
	"evenhand/standards/task"
)

// readRows reads rows that writeRows wrote. By itself gocsv takes a missing column
// for zeros and the last of two equal headings, and counts lines wrongly after a
// cell with a line end; so headings and lines are looked after here.
func readRows[Row any](r io.Reader) ([]Row, error) {
	records, lines, err := readRecords(r)
	if err != nil {
		return nil, err
	}
	if err := checkHeading[Row](records[0]); err != nil {
		return nil, err
	}
	var rows []Row
	err = gocsv.UnmarshalDecoder(records, &rows)
	var at *csv.ParseError
	if errors.As(err, &at) { // its line is the number of the record
		return nil, fmt.Errorf("line %d, %s: %w", lines[at.Line-1], records[0][at.Column-1], at.Err)
	}
	return rows, err
}

// table is records of cells, the heading first.
type table [][]string

// GetCSVRows gives the records to gocsv.
func (t table) GetCSVRows() ([][]string, error) { return t, nil }

// readRecords reads at least a heading, takes the guards off the cells, and says on
// which line each record begins.
func readRecords(r io.Reader) (records table, lines []int, err error) {
	text, comma, err := spreadsheetText(r)
	if err != nil {
		return nil, nil, err
	}
	in := csv.NewReader(strings.NewReader(text))
	in.Comma = comma
	for {
		record, err := in.Read()
		if err == io.EOF && len(records) > 0 {
			return records, lines, nil
		}
		if err == io.EOF {
			return nil, nil, errors.New("the file is empty; give one that evenhand wrote")
		}
		if err != nil && len(records) == 0 {
			return nil, nil, fmt.Errorf("this is no table that evenhand wrote (%w)", err)
		}
		if err != nil {
			return nil, nil, err
		}
		for i, cell := range record {
			record[i] = cells.Unguard(cell)
		}
		line, _ := in.FieldPos(0)
		records, lines = append(records, record), append(lines, line)
	}
}

// spreadsheetText is a file of ours as a spreadsheet may have saved it: with a byte-order
// mark, in Windows-1252, with semicolons or tabs between cells.
func spreadsheetText(r io.Reader) (text string, comma rune, err error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return "", 0, err
	}
	if !utf8.Valid(data) {
		if data, err = charmap.Windows1252.NewDecoder().Bytes(data); err != nil {
			return "", 0, err
		}
	}
	text = strings.TrimPrefix(string(data), "\ufeff")
	heading, _, _ := strings.Cut(text, "\n")
	comma = ','
	for _, other := range ";\t" {
		if strings.Count(heading, string(other)) > strings.Count(heading, string(comma)) {
			comma = other
		}
	}
	return text, comma, nil
}

// firstTraits are those of the first format. A file of then doesn't have the columns of later
// ones; they are empty, and nothing is read from them.
const firstTraits = task.Addends

func isLater(name string) bool {
	trait, ok := task.TraitNamed(name)
	return ok && trait > firstTraits || name == "basis"
}

// checkHeading wants every column of ours once, but for those that came later.
func checkHeading[Row any](heading []string) error {
	ours, err := gocsv.MarshalString([]Row{})
	if err != nil {
		return err
	}
	count := make(map[string]int)
	for _, name := range heading {
		count[name]++
	}
	for name := range strings.SplitSeq(strings.TrimSpace(ours), ",") {
		switch count[name] {
		case 0:
			if isLater(name) {
				continue
			}
			return fmt.Errorf("line 1: there is no column %q; give a file that evenhand wrote, separated by commas", name)
		case 1:
		default:
			return fmt.Errorf("line 1: there are %d columns %q; leave the right one", count[name], name)
		}
	}
	return nil
}
