package intake

import (
	"slices"
	"strings"

	"evenhand/standards/words"
)

// Row is one row of cells as it stands in a file.
type Row struct {
	Line  int // where it begins, counted from 1
	Cells []string
}

// Sheet is the rows of a sheet of a workbook, or of a text.
type Sheet struct {
	Name string // empty for a text
	Rows []Row
}

// Cells reads the rows of a text that is no list of items, such as a filled-in grid, in any
// encoding, with any delimiter, or of the first sheet of a workbook that Sheets gives.
func Cells(data []byte) ([]Row, error) {
	sheets, err := Sheets(data)
	if err != nil {
		return nil, err
	}
	return sheets[0].Rows, nil
}

// Sheets reads the sheets of a workbook that have something in them and are not hidden, at
// least one, or a text as one. Guards of spreadsheets and spaces around cells are taken off;
// rows with nothing in them are left out.
func Sheets(data []byte) ([]Sheet, error) {
	grids, err := readGrids(data, "")
	if err != nil {
		return nil, err
	}
	grids = slices.DeleteFunc(grids, func(g grid) bool { return len(g.records) == 0 || g.hidden })
	if len(grids) == 0 {
		return nil, errNothingIn
	}
	sheets := make([]Sheet, len(grids))
	for i, g := range grids {
		sheets[i] = Sheet{g.sheet, make([]Row, len(g.records))}
		for k, rec := range g.records {
			row := Row{rec.first, make([]string, len(rec.cells))}
			for j := range rec.cells {
				row.Cells[j] = rec.cell(j)
			}
			sheets[i].Rows[k] = row
		}
	}
	return sheets, nil
}

// Times puts right the times in an answer that a spreadsheet has changed: 0.1458333 and
// 3:30:00 are 3:30.
func Times(cell string) string {
	mended, _ := mendTimes(cell, true)
	return mended
}

// Date says whether a whole cell is a date, or the number by which a spreadsheet keeps
// one, and explains it.
func Date(cell string) (explained *words.Told, ok bool) { return readDate(cell) }

// SheetError says whether a cell is what a spreadsheet writes where it can't work out a
// formula, such as #NAME? (ECMA-376 Part 1, 18.17.3, and what others write).
func SheetError(cell string) bool {
	cell = strings.ToUpper(cell)
	return slices.ContainsFunc(sheetErrors, func(start string) bool { return strings.HasPrefix(cell, start) })
}

var sheetErrors = []string{
	"#NAME?", "#VALUE!", "#REF!", "#DIV/0!", "#N/A", "#NULL!", "#NUM!", "#GETTING_DATA", "#SPILL!", "#CALC!",
	"#####", "ERR:5", "#FIELD!", "#BLOCKED!", "#CONNECT!", "#ERROR!",
}
