package intake

import (
	"encoding/xml"
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"evenhand/standards/words"
)

// sheetRow is a row of a sheet as far as it is filled.
type sheetRow struct {
	number int // as the spreadsheet shows it
	hidden bool
	cells  []sheetCell
}

type sheetCell struct {
	column int // 0 is A
	text   string
}

// readSheet reads the rows of one sheet that have something in their cells. A cell
// merged down over several rows stands in each of them.
func (w *workbook) readSheet(s sheetPart) ([]sheetRow, error) {
	var rows []sheetRow
	last := 0
	err := w.read(s.part, func(d *xml.Decoder, start xml.StartElement) error {
		switch start.Name.Local {
		case "row":
			if last = rowNumber(attribute(start, "r"), last); last > longestSheet {
				return errUnpacked
			}
			row := sheetRow{number: last, hidden: slices.Contains([]string{"1", "true"}, attribute(start, "hidden"))}
			if err := w.readRow(d, &row); err != nil {
				return words.Errorf("row %d: %w", last, torn(err))
			}
			if len(row.cells) > 0 {
				rows = append(rows, row)
			}
		case "mergeCell":
			return w.fillDown(rows, attribute(start, "ref"))
		}
		return nil
	})
	switch {
	case errors.Is(err, errUnpacked):
		return nil, errUnpacked
	case err != nil:
		return nil, words.Errorf("sheet %q can't be read (%w); save it as CSV and import that", s.name, err)
	}
	return rows, nil
}

// rowNumber is the row's own number where it has a possible one, else the next.
func rowNumber(own string, last int) int {
	if n, err := strconv.Atoi(own); err == nil && n > last && n <= longestSheet {
		return n
	}
	return last + 1
}

func (w *workbook) readRow(d *xml.Decoder, row *sheetRow) error {
	next := 0
	for {
		token, err := d.Token()
		if err != nil {
			return err
		}
		switch token := token.(type) {
		case xml.EndElement:
			if token.Name.Local == "row" {
				return nil
			}
		case xml.StartElement:
			if token.Name.Local != "c" {
				continue
			}
			at := columnOf(attribute(token, "r"), next)
			text, err := w.readCell(d, token)
			if err != nil {
				return err
			}
			if next >= widestSheet {
				return errUnpacked
			}
			if strings.TrimSpace(text) != "" && at >= next && at < widestSheet {
				if err := w.bounds.keep(text); err != nil {
					return err
				}
				row.cells = append(row.cells, sheetCell{at, text})
			}
			next = max(next, at+1)
		}
	}
}

// columnOf reads the column of a reference such as "AB12"; without one it is the next.
func columnOf(reference string, next int) int {
	n := 0
	for _, r := range strings.ToUpper(reference) {
		if r < 'A' || r > 'Z' || n > widestSheet {
			break
		}
		n = 26*n + int(r-'A') + 1
	}
	if n == 0 {
		return next
	}
	return n - 1
}

// readCell is the text of a cell as a person sees it, nearly: a time as 3:30:00, a date
// as 2026-01-02, TRUE and FALSE in words.
func (w *workbook) readCell(d *xml.Decoder, cell xml.StartElement) (text string, err error) {
	for {
		token, err := d.Token()
		if err != nil {
			return "", err
		}
		switch token := token.(type) {
		case xml.StartElement:
			switch token.Name.Local {
			case "is":
				text, err = richText(d, "is")
			case "v":
				err = d.DecodeElement(&text, &token)
				if err == nil {
					text, err = w.shown(text, attribute(cell, "t"), attribute(cell, "s"))
				}
			default:
				err = d.Skip()
			}
			if err != nil {
				return "", err
			}
		case xml.EndElement:
			return text, nil
		}
	}
}

// shown is a cell's value by its type and style.
func (w *workbook) shown(value, kind, style string) (string, error) {
	switch kind {
	case "s":
		n, err := strconv.Atoi(strings.TrimSpace(value))
		if err != nil || n < 0 || n >= len(w.shared) {
			return "", words.Errorf("a cell points to shared text number %s, and there are %d", shorten(value), len(w.shared))
		}
		return w.shared[n], nil
	case "b":
		if strings.TrimSpace(value) == "1" {
			return "TRUE", nil
		}
		return "FALSE", nil
	case "", "n":
		at, err := strconv.Atoi(style)
		if x, numeric := strconv.ParseFloat(value, 64); numeric == nil && err == nil && at >= 0 && at < len(w.dates) && w.dates[at] {
			return shownDate(x, value), nil
		}
	}
	return value, nil
}

// shownDate is a number that a style shows as a date or a time: days since 1899-12-30,
// the time of day behind the point (ECMA-376 Part 1, 18.17.4).
func shownDate(days float64, value string) string {
	whole := math.Floor(days)
	if whole < 0 || whole >= 2958466 { // 9999-12-31 is the last
		return value
	}
	seconds := int(math.Round((days - whole) * 24 * 60 * 60))
	day := time.Date(1899, 12, 30+int(whole), 0, 0, seconds, 0, time.UTC)
	switch {
	case whole == 0 || whole == 1 && days > whole:
		return day.Format("15:04:05")
	case seconds == 0:
		return day.Format("2006-01-02")
	}
	return day.Format("2006-01-02 15:04:05")
}

// fillDown writes a cell that is merged over several rows into each of them that has
// something else.
func (w *workbook) fillDown(rows []sheetRow, ref string) error {
	from, to, _ := strings.Cut(ref, ":")
	column := columnOf(from, -1)
	at, found := slices.BinarySearchFunc(rows, rowOf(from), func(row sheetRow, n int) int { return row.number - n })
	if !found || column < 0 {
		return nil
	}
	place, found := rows[at].find(column)
	if !found {
		return nil
	}
	text := rows[at].cells[place].text
	for i := at + 1; i < len(rows) && rows[i].number <= rowOf(to); i++ {
		place, taken := rows[i].find(column)
		if taken {
			return nil // no merged cell has another below it
		}
		if err := w.bounds.keep(text); err != nil {
			return err
		}
		rows[i].cells = slices.Insert(rows[i].cells, place, sheetCell{column, text})
	}
	return nil
}

// rowOf is the row of a reference such as "AB12", or 0.
func rowOf(reference string) int {
	n, _ := strconv.Atoi(strings.TrimLeft(strings.ToUpper(reference), "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
	return n
}

func (r sheetRow) find(column int) (int, bool) {
	return slices.BinarySearchFunc(r.cells, column, func(c sheetCell, n int) int { return c.column - n })
}
