package marks

import (
	"slices"
	"strings"
	"unicode/utf8"

	intake "evenhand/import"

	"evenhand/bank/results"
	"evenhand/standards/task"
)

// Digits says what 1 and 0 mean in a grid.
type Digits string

// The meanings of 1 and 0.
const (
	AreMarks   Digits = "marks"
	AreAnswers Digits = "answers"
)

var (
	rightSigns  = []string{"✓", "✔", "√", "☑"}
	wrongSigns  = []string{"x", "✗", "✘", "×", "☒"}
	absentSigns = []string{"-", "–", "—", "−"}
)

// longestAnswer is the most letters that a written answer may have.
const longestAnswer = 80

// spreadsheetErrors is how cells begin that a spreadsheet could not work out.
var spreadsheetErrors = []string{"#NAME", "#VALUE", "#REF", "#DIV", "#N/A", "#NULL", "#NUM", "#####"}

// Sign reads the marks that can be no answer: ✓ and x in their forms, - for absent,
// . and nothing for not reached.
func Sign(cell string) (state results.State, ok bool) {
	switch cell = strings.ToLower(strings.TrimSpace(cell)); {
	case cell == "" || cell == ".":
		return results.NotReached, true
	case slices.Contains(absentSigns, cell):
		return results.Absent, true
	case slices.Contains(rightSigns, cell):
		return results.Right, true
	case slices.Contains(wrongSigns, cell):
		return results.Wrong, true
	}
	return "", false
}

// Written is the answer a pupil wrote, judged; a time that a spreadsheet has changed
// is put right. problem says why a cell can be no answer.
func Written(item results.Item, cell string) (answer results.Answer, problem string) {
	for _, start := range spreadsheetErrors {
		if strings.HasPrefix(cell, start) {
			return answer, "this is what a spreadsheet writes when it can't work out a formula; write the pupil's answer, with an apostrophe before it if it begins with ="
		}
	}
	if utf8.RuneCountInString(cell) > longestAnswer {
		return answer, "this is too long for an answer; write only what the pupil answered"
	}
	if isAboutTime(item) {
		cell = intake.Times(cell)
	}
	return item.Answered(cell), ""
}

func isAboutTime(item results.Item) bool {
	asked, _ := item.Task()
	switch asked.(type) {
	case task.Clock, task.Match:
		return true
	}
	return false
}

// read reads a cell of the item's column.
func (d Digits) read(item results.Item, cell string) (results.Answer, string) {
	if state, ok := Sign(cell); ok {
		return results.Answer{State: state}, ""
	}
	if state, ok := tickedBox(item, cell); ok {
		return results.Answer{State: state}, ""
	}
	if isDigit(cell) && d == AreMarks {
		return results.Answer{State: map[string]results.State{"1": results.Right, "0": results.Wrong}[cell]}, ""
	}
	return Written(item, cell)
}

// tickedBox reads TRUE and FALSE, unless that is the item's answer.
func tickedBox(item results.Item, cell string) (state results.State, ok bool) {
	if item.Judge("true") || item.Judge("false") {
		return "", false
	}
	switch strings.ToUpper(cell) {
	case "TRUE":
		return results.Right, true
	case "FALSE":
		return results.Wrong, true
	}
	return "", false
}

// isDigit says that a cell is 1 or 0 and nothing else.
func isDigit(cell string) bool { return cell == "1" || cell == "0" }

// oneDigit says that the item's key is a single digit, so that 1 or 0 may be an answer.
func oneDigit(item results.Item) bool {
	return len(item.Key) == 1 && item.Key[0] >= '0' && item.Key[0] <= '9'
}
