package intake

import (
	"encoding/csv"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"evenhand/bank"
)

// SetAsidePath is where the rows set aside of a list go when nobody says otherwise:
// beside it, "clocks.txt" to "clocks.set-aside.csv".
func SetAsidePath(list string) string {
	return strings.TrimSuffix(list, filepath.Ext(list)) + ".set-aside.csv"
}

// WriteSetAside writes the rows set aside to a CSV file that can be mended and
// imported again: their cells as they were, then the line in the list, the column
// and the reason. Without any it writes nothing, and leaves a file of an earlier
// import as it is.
//
// The file is UTF-8 with a byte-order mark, so that spreadsheets read its marks
// rightly, and no cell in it runs as a formula. It appears whole or not at all.
func (r *Report) WriteSetAside(path string) error {
	if r.Count(SetAside) == 0 {
		return nil
	}
	if err := bank.WriteFile(path, 0o600, r.writeSetAside); err != nil {
		return fmt.Errorf("the rows set aside could not be written: %w", err)
	}
	return nil
}

func (r *Report) writeSetAside(w io.Writer) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	kept := r.keptColumns()
	header := make([]string, 0, len(kept)+3)
	for _, column := range kept {
		header = append(header, bank.GuardCell(r.List.headingAgain(column)))
	}
	out.Write(append(header, "line", "column", "reason")) // an error shows in Flush
	for _, o := range r.Outcomes {
		if o.Problem != nil {
			out.Write(setAsideRow(o, kept))
		}
	}
	out.Flush()
	return out.Error()
}

func setAsideRow(o Outcome, kept []int) []string {
	cells := make([]string, 0, len(kept)+3)
	for _, column := range kept {
		cell := ""
		if column < len(o.row.cells) {
			cell = bank.UnguardCell(o.row.cells[column])
		}
		cells = append(cells, bank.GuardCell(cell))
	}
	return append(cells, strconv.Itoa(o.Problem.Line), o.Problem.Column, bank.GuardCell(o.Problem.Reason))
}

// keptColumns are the columns to write: all that a row set aside has cells in, but
// not what an earlier import wrote into the list.
func (r *Report) keptColumns() (kept []int) {
	width := len(r.List.Columns)
	for _, o := range r.Outcomes {
		if o.Problem != nil {
			width = max(width, filled(o.row.cells))
		}
	}
	for column := range width {
		if column >= len(r.List.Columns) || r.List.Columns[column].Meaning != MarkOfMends {
			kept = append(kept, column)
		}
	}
	return kept
}

// headingAgain heads a column so that it is understood the same way when the file is
// imported again: its own heading where that says what it means, else the meaning.
func (l *List) headingAgain(column int) string {
	if column >= len(l.Columns) {
		return fmt.Sprintf("extra %d", column+1)
	}
	c := l.Columns[column]
	known := understand(c.Heading).meaning
	switch {
	case l.own || c.Heading != "" && known == c.Meaning:
		return c.Heading
	case c.Meaning != "":
		return string(c.Meaning)
	case c.Heading == "":
		return fmt.Sprintf("extra %d", column+1)
	}
	return "not used: " + c.Heading
}
