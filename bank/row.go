package bank

import (
	"reflect"
	"strconv"
	"time"
)

// Row is an item as one line of a table, as it stands now: the columns of a bank as CSV, beside those of the
// traits, for whoever writes and whoever reads it. An empty bank can be filled from such rows again.
//
// Where there is a task, key, skill, standards and seconds follow from it and the look, and predicted from the
// skill and traits; band, share_right and difficulty follow always. All other cells are the item's own. Who
// reads it back leaves out what follows and what the new bank gives anew (read:"no").
type Row struct {
	ID         string `csv:"id"`
	Revision   string `csv:"revision"`
	Task       string `csv:"task"`        // empty for an item by hand
	QuestionEN string `csv:"question_en"` // the wording, where it is more than the task
	QuestionES string `csv:"question_es"`
	Key        string `csv:"key"`
	Skill      string `csv:"skill"`
	Standards  string `csv:"standards"` // codes separated by a space, or why there is none
	Look       string `csv:"look"`
	Standing   string `csv:"standing"`
	Band       string `csv:"band" read:"no"`
	ShareRight string `csv:"share_right" read:"no"` // in 100 answers, rounded
	Difficulty string `csv:"difficulty" read:"no"`  // measured where there is evidence, else predicted
	Predicted  string `csv:"predicted"`

	// Empty where there is no evidence.
	Measured        string `csv:"measured"`
	MeasuredError   string `csv:"measured_error"`
	MeasuredAnswers string `csv:"measured_answers"`

	Seconds string `csv:"seconds"`

	Origin   string `csv:"origin"`    // generated, written or imported
	OriginBy string `csv:"origin_by"` // who wrote or brought it
	File     string `csv:"file"`      // imported
	Line     string `csv:"row"`       // imported: the line in the file
	Seed     string `csv:"seed"`      // generated

	By     string `csv:"by" read:"no"` // who made this revision
	At     string `csv:"at" read:"no"` // when: RFC 3339, UTC
	Reason string `csv:"reason" read:"no"`
	Notes  string `csv:"notes"`
}

// RowOf is the row of an item.
func RowOf(item Item) Row {
	difficulty := item.Difficulty()
	row := Row{
		ID:         item.ID,
		Revision:   strconv.Itoa(item.Revision),
		Task:       item.Task,
		QuestionEN: item.Wording["en"],
		QuestionES: item.Wording["es"],
		Key:        item.Key,
		Skill:      string(item.Skill),
		Standards:  item.Standards(),
		Look:       string(item.Look),
		Standing:   string(item.Standing),
		Band:       string(difficulty.Band()),
		ShareRight: strconv.Itoa(difficulty.Percent()),
		Difficulty: difficulty.String(),
		Predicted:  item.Predicted.String(),
		Seconds:    strconv.Itoa(item.Seconds),
		Origin:     item.Origin.Kind,
		OriginBy:   item.Origin.By,
		File:       item.Origin.File,
		By:         item.By,
		At:         item.At.UTC().Format(time.RFC3339Nano),
		Reason:     item.Reason,
		Notes:      item.Notes,
	}
	if !item.Predictable() { // nothing is known to tell them by
		row.Band, row.ShareRight, row.Difficulty = "", "", ""
		if len(item.Codes) == 0 {
			row.Standards = "not known"
		}
	}
	if m := item.Measured; m != nil {
		row.Measured, row.MeasuredError, row.MeasuredAnswers = m.Difficulty.String(), m.StandardError.String(), strconv.Itoa(m.Answers)
	}
	if item.Origin.Row != 0 {
		row.Line = strconv.Itoa(item.Origin.Row)
	}
	if item.Origin.Kind == "generated" {
		row.Seed = strconv.FormatUint(item.Origin.Seed, 10)
	}
	return row
}

// rowColumns are the places in a Row of the columns that are read back, by name, and rowNames the names in their order.
var rowColumns, rowNames = func() (map[string]int, []string) {
	places, names := map[string]int{}, []string{}
	for i, of := 0, reflect.TypeFor[Row](); i < of.NumField(); i++ {
		if field := of.Field(i); field.Tag.Get("read") != "no" {
			places[field.Tag.Get("csv")], names = i, append(names, field.Tag.Get("csv"))
		}
	}
	return places, names
}()

// RowColumns names the columns that are read back.
func RowColumns() []string { return rowNames }

// Set fills the cell of a column that is read back.
func (r *Row) Set(column, cell string) {
	reflect.ValueOf(r).Elem().Field(rowColumns[column]).SetString(cell)
}
