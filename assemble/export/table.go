package export

import (
	"encoding/csv"
	"io"
	"iter"
	"slices"
	"strings"

	"github.com/gocarina/gocsv"

	"evenhand/bank/cells"
)

// batch is how many rows are handed to gocsv at a time.
const batch = 1000

// writeRows writes a heading and the rows as they come, up to the first error.
func writeRows[Row any](w io.Writer, rows iter.Seq2[Row, error]) error {
	out := newSafeWriter(w)
	ready := make([]Row, 0, batch)
	if err := gocsv.MarshalCSV(ready, out); err != nil { // the heading
		return err
	}
	for row, err := range rows {
		if err != nil {
			return err
		}
		if ready = append(ready, row); len(ready) < batch {
			continue
		}
		if err := gocsv.MarshalCSVWithoutHeaders(ready, out); err != nil {
			return err
		}
		ready = ready[:0]
	}
	return gocsv.MarshalCSVWithoutHeaders(ready, out)
}

// sure is rows that come without an error.
func sure[Row any](rows iter.Seq[Row]) iter.Seq2[Row, error] {
	return func(yield func(Row, error) bool) {
		for row := range rows {
			if !yield(row, nil) {
				return
			}
		}
	}
}

// logitColumns hold numbers that may be negative and nothing else.
var logitColumns = []string{"difficulty", "predicted", "measured", "measured_error"}

// safeWriter writes records whose cells no spreadsheet runs.
type safeWriter struct {
	*csv.Writer
	plain []bool // columns of logits, known from the heading
}

func newSafeWriter(w io.Writer) *safeWriter {
	out := &safeWriter{Writer: csv.NewWriter(w)}
	out.UseCRLF = true
	return out
}

// Write takes the first record as the heading. It changes the cells of the record that it is given.
func (w *safeWriter) Write(record []string) error {
	if w.plain == nil {
		w.plain = make([]bool, len(record))
		for i, heading := range record {
			w.plain[i] = slices.Contains(logitColumns, heading)
		}
	}
	for i, cell := range record {
		if !w.plain[i] {
			record[i] = cells.Guard(plainLineEnds(cell))
		}
	}
	return w.Writer.Write(record)
}

// plainLineEnds makes every line end inside a cell a line feed. That is what a reader
// gets back: encoding/csv writes it as CR LF, and would drop a carriage return that stands alone.
func plainLineEnds(cell string) string {
	if !strings.Contains(cell, "\r") {
		return cell
	}
	return lineEnds.Replace(cell)
}

var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")
