package intake

// Row is one row of cells as it stands in a file.
type Row struct {
	Line  int // where it begins, counted from 1
	Cells []string
}

// Cells reads the rows of a file that is no list of items, such as a filled-in grid,
// in any encoding, with any delimiter, or the first filled sheet of a workbook, as Open
// reads lists. Guards of spreadsheets and spaces around cells are taken off; rows with
// nothing in them are left out.
func Cells(name string, data []byte) ([]Row, error) {
	records, err := (&List{Name: name}).read(data)
	if err != nil {
		return nil, err
	}
	rows := make([]Row, len(records))
	for i, rec := range records {
		rows[i] = Row{rec.first, make([]string, len(rec.cells))}
		for j := range rec.cells {
			rows[i].Cells[j] = rec.cell(j)
		}
	}
	return rows, nil
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
