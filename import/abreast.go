package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Some lists have several items a row: two tables side by side, or "Question 1, Answer 1,
// Question 2, Answer 2". Their rows are read as several.

// alongside finds further columns of questions and answers that stand beside the first,
// in the same order, and gives them a block number; it returns how many items a row has.
func alongside(columns []Column, rows []record) int {
	questions := columnsThat(columns, func(i int, c Column) bool {
		asks := c.Meaning == Question || c.rival == Question || c.Meaning == "" && c.rival == "" && taskColumn(rows, i)
		return asks && !allNumbers(rows, i)
	})
	if len(questions) < 2 {
		return 1
	}
	answers := columnsThat(columns, func(i int, c Column) bool {
		return c.Meaning == Answer || c.rival == Answer || c.Meaning == "" && c.rival == "" && answersOf(rows, i, questions)
	})
	if !takeTurns(questions, answers) {
		return 1
	}
	for block, at := range questions {
		c := &columns[at]
		c.block = block
		if block == 0 && c.Meaning == "" {
			c.Meaning, c.Why = Question, "its cells are tasks"
		}
		if block > 0 {
			c.Meaning, c.Why = "", fmt.Sprintf("questions too: %d items a row", len(questions))
		}
	}
	for block, at := range answers {
		c := &columns[at]
		c.block, c.rival = block, ""
		if block == 0 && c.Meaning == "" {
			c.Meaning, c.Why = Answer, "its cells answer the questions beside them"
		}
		if block > 0 {
			c.Meaning, c.Why = "", fmt.Sprintf("answers too: %d items a row", len(questions))
		}
	}
	for _, at := range questions {
		columns[at].rival = ""
	}
	return len(questions)
}

// takeTurns says whether there is an answer for each question, each behind its question
// or each before it, or no answers at all.
func takeTurns(questions, answers []int) bool {
	if len(answers) == 0 {
		return true
	}
	if len(answers) != len(questions) {
		return false
	}
	behind, before := true, true
	for i := range questions {
		next, last := len(questions)*widestSheet, -1
		if i+1 < len(questions) {
			next = questions[i+1]
		}
		if i > 0 {
			last = questions[i-1]
		}
		behind = behind && questions[i] < answers[i] && answers[i] < next
		before = before && last < answers[i] && answers[i] < questions[i]
	}
	return behind || before
}

// columnsThat are the columns for which something holds, from left to right.
func columnsThat(columns []Column, holds func(int, Column) bool) (at []int) {
	for i, c := range columns {
		if c.Why != "you said so" && holds(i, c) {
			at = append(at, i)
		}
	}
	return at
}

// taskColumn says whether most cells of a column are tasks, more than bare times.
func taskColumn(rows []record, column int) bool {
	sum, n := 0.0, 0
	for _, rec := range rows {
		if points, counts := taskShare(rec, rec.cell(column)); counts {
			sum, n = sum+points, n+1
		}
	}
	return n > 0 && sum > 0.6*float64(n)
}

// answersOf says whether most cells of a column answer the questions in the nearest
// column of questions to its left or to its right.
func answersOf(rows []record, column int, questions []int) bool {
	at, _ := slices.BinarySearch(questions, column)
	for _, question := range questions[max(0, at-1):min(len(questions), at+1)] {
		right, n := 0, 0
		for _, rec := range rows {
			if asked, ok := taskOf(rec.cell(question)); ok && rec.cell(column) != "" {
				right += int(truth(judgeAnswer(asked, rec.cell(column))))
				n++
			}
		}
		if n > 0 && 2*right >= n {
			return true
		}
	}
	return false
}

// standAbreast makes a row of each item where several stand in one: the further ones get
// their cells in the columns of the first.
func (l *List) standAbreast() {
	if l.abreast < 2 {
		return
	}
	var rows []record
	for _, rec := range l.rows {
		for block := range l.abreast {
			if one := l.oneOf(rec, block); block == 0 || one.cell(l.column(Question)) != "" {
				rows = append(rows, one)
			}
		}
	}
	l.rows = rows
}

// oneOf is one item of a row.
func (l *List) oneOf(rec record, block int) record {
	one := rec
	one.cells = slices.Clone(rec.cells)
	further := map[Meaning]string{}
	for i, c := range l.Columns {
		if c.block == 0 || i >= len(rec.cells) {
			continue
		}
		if c.block == block {
			meaning := Question
			if strings.HasPrefix(c.Why, "answers") {
				meaning = Answer
			}
			further[meaning] = rec.cells[i]
		}
		one.cells[i] = ""
	}
	if block > 0 {
		for _, meaning := range []Meaning{Question, Answer} {
			if at := l.column(meaning); at >= 0 && at < len(one.cells) {
				one.cells[at] = further[meaning]
			}
		}
	}
	return one
}

// numbering is the number that people write before a question: "1. 47 + 36", "b) ...".
var numbering = regexp.MustCompile(`^\s*(?:(?i:question|q|no|nr|item|problem|pregunta|frage|aufgabe)\.?\s*)?#?\s*(\d{1,3})\s*(?:[.:]\s+|\)\s*)(\S.*)$`)

// dropNumbering takes the numbers off the questions of columns in which nearly all cells
// are numbered in order. It changes the records.
func dropNumbering(records []record) {
	width := 0
	for _, rec := range records[:min(len(records), sniffedRecords)] {
		width = max(width, len(rec.cells))
	}
	for column := range width {
		last, numbered, cells := 0, 0, 0
		for _, rec := range records[:min(len(records), sniffedRecords)] {
			if rec.cell(column) == "" {
				continue
			}
			cells++
			if m := numberedCell(rec.cell(column)); m != nil {
				n, _ := strconv.Atoi(m[1])
				if n == last+1 || numbered == 0 {
					last, numbered = n, numbered+1
				}
			}
		}
		if numbered < 2 || 5*numbered < 4*(cells-2) { // a title and a heading may stand above
			continue
		}
		for i, rec := range records {
			if m := numberedCell(rec.cell(column)); m != nil {
				records[i].cells[column] = m[2]
			}
		}
	}
}

func numberedCell(cell string) []string {
	if len(cell) > longestQuestion || cell == "" {
		return nil
	}
	return numbering.FindStringSubmatch(cell)
}
