package desk

import (
	"bytes"
	"context"
	"fmt"
	"maps"
	"slices"
	"strconv"

	"evenhand/bank"
	guard "evenhand/bank/cells"
	intake "evenhand/import"
	"evenhand/standards/words"
)

// judged is a list with what becomes, or became, of its rows.
type judged struct {
	List    *intake.List
	Report  *intake.Report
	Mending []mendRow
	again   *intake.Report // of the rows that were mended; nil without any
}

// mendRow is a row set aside, as it is mended in place.
type mendRow struct {
	Key    string // its line, and its place in it where several items stand in one
	Line   int
	Reason *words.Told // why it can't come in; nil where it was mended
	Column string
	Fate   intake.Fate
	Cells  []mendCell
}

// mendCell is a cell to mend.
type mendCell struct {
	Heading string         // as the colleague wrote it; empty where there is none
	Meaning intake.Meaning // what its column holds
	Text    string
	Column  int
	Wrong   bool // the reason is here
}

// Lines are how many its field shows.
func (c mendCell) Lines() int { return min(4, 1+len(c.Text)/22) }

// options are what the person said of the list.
func (u upload) options(columns []intake.Column) intake.Options {
	o := intake.Options{Columns: map[string]string{}, Encoding: u.Encoding}
	if u.Sheet != "" {
		o.Sheets = []string{u.Sheet}
	}
	for _, number := range slices.Sorted(maps.Keys(u.Columns)) {
		if meaning := u.Columns[number]; meaning == string(intake.Unused) {
			o.Unused = append(o.Unused, placeOf(columns, number))
		} else {
			o.Columns[meaning] = placeOf(columns, number)
		}
	}
	return o
}

// placeOf names a column by its number, or by its letter where a heading is that number.
func placeOf(columns []intake.Column, number int) string {
	name := strconv.Itoa(number)
	if slices.ContainsFunc(columns, func(c intake.Column) bool { return c.Heading == name && c.Number != number }) {
		return intake.Column{Number: number}.Letter()
	}
	return name
}

// open reads the list as the person said.
func (u upload) open(data []byte) (*intake.List, error) {
	l, err := intake.Open(u.Name, data, u.options(nil))
	if err != nil {
		return l, err
	}
	if o := u.options(l.Columns); len(u.Columns) > 0 { // now its headings are known
		return intake.Open(u.Name, data, o)
	}
	return l, nil
}

// judge says what becomes of every row, and unless dry brings in those that can come.
func (v *visit) judge(u upload, data []byte, dry bool) (j judged, err error) {
	release, err := v.desk.turn(v.Context())
	if err != nil {
		return j, err
	}
	defer release()
	if j.List, err = u.open(data); err != nil {
		return j, err
	}
	o := intake.ImportOptions{By: v.by(), At: v.now(), Skill: u.Skill, LeaveOut: u.LeaveOut, Revise: u.Revise, DryRun: dry}
	if j.Report, err = intake.Import(v.desk.bank, j.List, o); err != nil {
		return j, err
	}
	return j, j.mend(v.desk.bank, u, o)
}

// turn waits until a list may be judged; two are at once, as each takes memory and time.
func (d *Desk) turn(ctx context.Context) (release func(), err error) {
	select {
	case d.judging <- struct{}{}:
		return func() { <-d.judging }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// mend judges the rows that were mended.
func (j *judged) mend(b *bank.Bank, u upload, o intake.ImportOptions) error {
	table := j.Report.Mending()
	part := table // the rows that were mended
	part.Rows = nil
	var places []int // of these among the rows to mend
	seen := map[int]int{}
	for _, row := range table.Rows {
		key := fmt.Sprintf("%d-%d", row.Line, seen[row.Line])
		seen[row.Line]++
		mended := u.Mends[key]
		one := mendRow{Key: key, Line: row.Line, Reason: row.Reason, Column: row.Column, Fate: intake.SetAside}
		cells := slices.Clone(row.Cells)
		for i, column := range table.Columns {
			if text, ok := mended[column]; ok {
				cells[i] = guard.Guard(text)
			}
			heading, meaning := j.columnOf(column)
			one.Cells = append(one.Cells, mendCell{Heading: heading, Meaning: meaning, Text: guard.Unguard(cells[i]), Column: column})
		}
		if len(mended) > 0 {
			places = append(places, len(j.Mending))
			row.Cells = cells
			part.Rows = append(part.Rows, row)
		}
		j.Mending = append(j.Mending, one)
	}
	if len(part.Rows) > 0 {
		var file bytes.Buffer
		if err := part.Write(&file); err != nil {
			return err
		}
		list, err := intake.Open(intake.SetAsidePath(u.Name), file.Bytes(), intake.Options{})
		if err != nil {
			return err
		}
		if j.again, err = intake.Import(b, list, o); err != nil {
			return err
		}
		for i, out := range j.again.Outcomes {
			if i >= len(places) {
				break
			}
			row := &j.Mending[places[i]]
			row.Fate, row.Reason, row.Column = out.Fate, nil, ""
			if out.Problem != nil {
				row.Reason, row.Column = out.Problem.Reason, out.Problem.Column
			}
		}
	}
	for i := range j.Mending {
		for k := range j.Mending[i].Cells {
			cell := &j.Mending[i].Cells[k]
			cell.Wrong = j.Mending[i].Column != "" && string(cell.Meaning) == j.Mending[i].Column
		}
		j.Mending[i].Cells = slices.DeleteFunc(j.Mending[i].Cells, func(c mendCell) bool {
			return !c.Wrong && (c.Meaning == intake.Unused || c.Meaning == intake.Number) // of no use to an item
		})
	}
	return nil
}

// count is how many rows, mended ones too, have a fate.
func (j judged) count(f intake.Fate) int {
	n := j.Report.Count(f)
	if j.again != nil {
		if f == intake.SetAside {
			n -= len(j.again.Outcomes)
		}
		n += j.again.Count(f)
	}
	return n
}

// columnOf is how a column of the list is headed and what it holds, by its number; 0 is the answers that the
// list lacks.
func (j *judged) columnOf(number int) (heading string, holds intake.Meaning) {
	for _, c := range j.List.Columns {
		if c.Number == number {
			return c.Heading, c.Meaning
		}
	}
	return "", intake.Answer
}
