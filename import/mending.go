package intake

import (
	"encoding/csv"
	"io"
	"strconv"

	"evenhand/standards/words"
)

// Mending is the rows set aside of a list as a table that a person can mend.
type Mending struct {
	Headings []string // so that each column is understood the same way again
	Columns  []int    // their places in the list, 1 the leftmost; 0 for an answer column that it lacks
	Rows     []MendingRow
}

// MendingRow is a row set aside.
type MendingRow struct {
	Outcome int         // its place among the report's outcomes
	Line    int         // in the list it first stood in
	Column  string      // what is to be mended, such as answer; empty when it is the whole row
	Reason  *words.Told // why it was set aside
	Cells   []string    // under the headings, guarded against being run as formulas
}

// Mending gives the rows set aside: their cells as they were, and a column for the answer always.
func (r *Report) Mending() Mending {
	kept := r.keptColumns()
	var m Mending
	for _, column := range kept {
		m.Headings = append(m.Headings, guarded(r.List.headingAgain(column)))
		m.Columns = append(m.Columns, r.List.place(column)+1)
	}
	answer := !r.List.own && r.List.column(Answer) < 0
	if answer {
		m.Headings, m.Columns = append(m.Headings, string(Answer)), append(m.Columns, 0)
	}
	for i, o := range r.Outcomes {
		if o.Problem == nil {
			continue
		}
		cells := o.row.at(kept)
		if answer {
			cells = append(cells, "")
		}
		_, line := r.List.origin(*o.row)
		m.Rows = append(m.Rows, MendingRow{i, line, o.Problem.Column, o.Problem.Reason, cells})
	}
	return m
}

// Write writes the table as the CSV file that WriteSetAside describes. OpenBook reads it again, under a
// name that SetAsidePath gives, as rows of the list they came from.
func (m Mending) Write(w io.Writer) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	out.Write(append(m.Headings[:len(m.Headings):len(m.Headings)], mendingHeadings...)) // an error shows in Flush
	for _, row := range m.Rows {
		cells := row.Cells[:len(row.Cells):len(row.Cells)]
		out.Write(append(cells, strconv.Itoa(row.Line), row.Column, guarded(row.Reason.String())))
	}
	out.Flush()
	return out.Error()
}
