package export

import (
	"io"
	"iter"
	"strconv"
	"time"

	"evenhand/bank"
)

// bankRow is one line of a bank as CSV: an item as it stands now, all of it, so that
// an empty bank can be filled from the file again.
//
// To read a row back, take the guard off every cell (cells.Unguard). Where there
// is a task, key, skill, standards, seconds and traits follow from it and the look,
// and predicted from the skill and traits; band, share_right and difficulty follow
// always. All other cells are the item's own.
type bankRow struct {
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
	Band       string `csv:"band"`
	ShareRight string `csv:"share_right"` // in 100 answers, rounded
	Difficulty string `csv:"difficulty"`  // measured where there is evidence, else predicted
	Predicted  string `csv:"predicted"`

	// Empty where there is no evidence.
	Measured        string `csv:"measured"`
	MeasuredError   string `csv:"measured_error"`
	MeasuredAnswers string `csv:"measured_answers"`

	Seconds string `csv:"seconds"`

	Origin   string `csv:"origin"`    // generated, written or imported
	OriginBy string `csv:"origin_by"` // who wrote or brought it
	File     string `csv:"file"`      // imported
	Row      string `csv:"row"`       // imported: the line in the file
	Seed     string `csv:"seed"`      // generated

	By     string `csv:"by"` // who made this revision
	At     string `csv:"at"` // when: RFC 3339, UTC
	Reason string `csv:"reason"`
	Notes  string `csv:"notes"`
	Traits
}

// WriteBank writes one row for each item, up to the first error. What a bank keeps
// beside its items, earlier revisions and uses, is not in the file; nothing in
// it is about a pupil.
func WriteBank(w io.Writer, items iter.Seq2[bank.Item, error]) error {
	return writeRows(w, func(yield func(bankRow, error) bool) {
		for item, err := range items {
			if !yield(rowOf(item), err) {
				return
			}
		}
	})
}

func rowOf(item bank.Item) bankRow {
	difficulty := item.Difficulty()
	row := bankRow{
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
		Traits:     TraitsOf(item.Traits),
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
		row.Row = strconv.Itoa(item.Origin.Row)
	}
	if item.Origin.Kind == "generated" {
		row.Seed = strconv.FormatUint(item.Origin.Seed, 10)
	}
	return row
}
