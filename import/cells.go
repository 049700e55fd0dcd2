package intake

import "errors"

// Row is one row of cells as it stands in a file.
type Row struct {
	Line  int // where it begins, counted from 1
	Cells []string
}

// Cells reads the rows of a file that is no list of items, such as a filled-in grid,
// in any encoding, with any delimiter, or the first sheet with something in it of a
// workbook that is not hidden, as Open reads lists. Guards of spreadsheets and spaces
// around cells are taken off; rows with nothing in them are left out.
func Cells(_ string, data []byte) ([]Row, error) {
	g, err := firstGrid(data)
	if err != nil {
		return nil, err
	}
	rows := make([]Row, len(g.records))
	for i, rec := range g.records {
		rows[i] = Row{rec.first, make([]string, len(rec.cells))}
		for j := range rec.cells {
			rows[i].Cells[j] = rec.cell(j)
		}
	}
	return rows, nil
}

func firstGrid(data []byte) (grid, error) {
	if !isWorkbook(data) {
		return readText(data, "")
	}
	grids, err := readWorkbook(data)
	if err != nil {
		return grid{}, err
	}
	for _, g := range grids {
		if len(g.records) > 0 && !g.hidden {
			return g, nil
		}
	}
	return grid{}, errors.New("the workbook has no sheet with anything in it")
}

// Times puts right the times in an answer that a spreadsheet has changed: 0.1458333 and
// 3:30:00 are 3:30.
func Times(cell string) string {
	mended, _ := mendTimes(cell, true)
	return mended
}

// Date says whether a whole cell is a date, or the number by which a spreadsheet keeps
// one, and explains it.
func Date(cell string) (explained string, ok bool) { return readDate(cell) }
