package intake

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/thedatashed/xlsxreader"
)

// The .xlsx format allows a sheet so many columns and rows.
const (
	widestSheet  = 16384
	longestSheet = 1 << 20
)

// isWorkbook says whether the bytes are a zip archive, as .xlsx files are.
func isWorkbook(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }

// readWorkbook reads the first sheet that has rows, and gives its name. Rows keep
// the numbers that the spreadsheet shows.
func readWorkbook(data []byte) (records []record, sheet string, err error) {
	book, err := openWorkbook(data)
	if err != nil {
		return nil, "", fmt.Errorf("this is no .xlsx workbook that can be read (%w); save it as CSV and import that", err)
	}
	for _, sheet := range book.Sheets {
		records, err := readSheet(book, sheet)
		if err != nil {
			return nil, "", fmt.Errorf("sheet %q can't be read (%w); save it as CSV and import that", sheet, err)
		}
		if len(records) > 0 {
			return records, sheet, nil
		}
	}
	return nil, "", errors.New("the workbook has no sheet with anything in it; put the items on its first sheet")
}

// openWorkbook opens the archive, refusing what would bring the reader down.
func openWorkbook(data []byte) (*xlsxreader.XlsxFile, error) {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	for _, part := range archive.File {
		if err := checkPart(part); err != nil {
			return nil, fmt.Errorf("%s: %w", part.Name, err)
		}
	}
	return xlsxreader.NewReaderZip(archive)
}

// largestPart bounds one unpacked part of a workbook, in bytes; a list of 100,000
// rows takes about a tenth of it.
const largestPart = 256 << 20

// checkPart reads one part of a workbook before the library does, for two things
// that would stop the whole program there: a part that unpacks without end, and a
// cell that points before the first shared string.
func checkPart(part *zip.File) error {
	body, err := part.Open()
	if err != nil {
		return err
	}
	defer body.Close()
	limited := &io.LimitedReader{R: body, N: largestPart}
	err = checkShared(xml.NewDecoder(limited))
	if err != nil && !strings.HasSuffix(part.Name, ".xml") {
		err = nil // a picture, or the like
	}
	if _, copyErr := io.Copy(io.Discard, limited); err == nil {
		err = copyErr
	}
	if limited.N == 0 {
		err = fmt.Errorf("larger than %d MB", largestPart>>20)
	}
	return err
}

// checkShared looks for a cell of shared text (<c t="s">) with a negative number.
func checkShared(d *xml.Decoder) error {
	shared := false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil { // the library would take this for the end of the sheet
			return err
		}
		switch token := token.(type) {
		case xml.StartElement:
			if token.Name.Local == "c" {
				shared = isShared(token)
			}
		case xml.CharData:
			if shared && bytes.ContainsRune(token, '-') {
				return fmt.Errorf("a cell points to shared text number %s", bytes.TrimSpace(token))
			}
		case xml.EndElement:
			shared = shared && token.Name.Local != "c"
		}
	}
}

func isShared(cell xml.StartElement) bool {
	for _, attr := range cell.Attr {
		if attr.Name.Local == "t" && attr.Value == "s" {
			return true
		}
	}
	return false
}

// readSheet reads the rows of one sheet that have something in their cells.
func readSheet(book *xlsxreader.XlsxFile, sheet string) (records []record, err error) {
	last := 0
	for row := range book.ReadRows(sheet) { // read to the end, or its goroutine stays
		if row.Error != nil {
			err = errors.Join(err, fmt.Errorf("row %d: %w", row.Index, row.Error))
			continue
		}
		last = rowNumber(row.Index, last)
		rec := record{first: last, last: last, cells: rowCells(row)}
		if !rec.blank() {
			records = append(records, rec)
		}
	}
	return records, err
}

// rowNumber is the row's own number where it has a possible one, else the next.
func rowNumber(own, last int) int {
	if own > last && own <= longestSheet {
		return own
	}
	return last + 1
}

// rowCells puts the cells that a row has in their columns; a cell that doesn't say
// its column stands in the next.
func rowCells(row xlsxreader.Row) []string {
	var cells []string
	for _, cell := range row.Cells {
		at := cell.ColumnIndex()
		if cell.Column == "" || at < 0 {
			at = len(cells)
		}
		if at >= widestSheet {
			continue
		}
		for len(cells) <= at {
			cells = append(cells, "")
		}
		cells[at] = cellText(cell)
	}
	return cells
}

// cellText is what a spreadsheet shows of a cell: TRUE and FALSE, which the file keeps as
// 1 and 0.
func cellText(cell xlsxreader.Cell) string {
	if cell.Type != xlsxreader.TypeBoolean {
		return cell.Value
	}
	return map[string]string{"1": "TRUE", "0": "FALSE"}[cell.Value]
}
