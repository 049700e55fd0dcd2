package intake

import (
	"fmt"
	"slices"
	"strings"
)

// deepestHeading is how many rows may stand above the heading.
const deepestHeading = 20

// longestHeading is how many words a heading may have.
const longestHeading = 6

// meaningsOf lists the meanings that the cells name as headings, each once; none when
// a cell is a task or too long for a heading.
func meaningsOf(cells []string) []Meaning {
	var found []Meaning
	for _, cell := range cells {
		if len(cell) > longestHeadingBytes || len(strings.Fields(cell)) > longestHeading || isTask(cell) {
			return nil
		}
		if m := understand(cell); m.meaning != "" && !slices.Contains(found, m.meaning) {
			found = append(found, m.meaning)
		}
	}
	return found
}

// findHeading is the index of the record that holds the headings, or -1: the one
// with all the headings that were asked for by name, else the one that names the
// most meanings, above the first task.
func findHeading(records []record, wanted []string) int {
	best, most := -1, 0
	for i, rec := range records[:min(len(records), deepestHeading)] {
		if len(wanted) > 0 && holdsAll(rec.cells, wanted) {
			return i
		}
		if hasTask(rec.cells) {
			break
		}
		if n := headingSense(rec.cells); n > most {
			best, most = i, n
		}
	}
	return best
}

// headingSense is how many meanings a row names, or 0 when that is too little for a
// heading: it must name a question or an answer, and when it names nothing else, in so
// many words and beside words only.
func headingSense(cells []string) int {
	found := meaningsOf(cells)
	asks := slices.Contains(found, Question) || slices.Contains(found, QuestionEs)
	if !asks && !slices.Contains(found, Answer) {
		return 0
	}
	if len(found) == 1 {
		exact := slices.ContainsFunc(cells, func(cell string) bool { return understand(cell).exact })
		if !exact || !asks && filledCells(cells) < 2 || !wordsOnly(cells) {
			return 0
		}
	}
	return len(found)
}

// wordsOnly says that no cell holds a digit or asks anything.
func wordsOnly(cells []string) bool {
	return !strings.ContainsAny(strings.Join(cells, ""), "0123456789?¿")
}

func holdsAll(cells, wanted []string) bool {
	for _, heading := range wanted {
		if columnHeaded(cells, heading) < 0 {
			return false
		}
	}
	return true
}

// columnHeaded is the index of the cell that is the heading, whatever its capitals
// and spaces, or -1.
func columnHeaded(cells []string, heading string) int {
	same := func(cell string) bool {
		return strings.EqualFold(strings.Join(strings.Fields(cell), " "), strings.Join(strings.Fields(heading), " "))
	}
	return slices.IndexFunc(cells, same)
}

// findForeignHeading is the index of a heading in words that aren't known here, or -1:
// the first row with two filled cells, when all of them are a few words and they stand
// above cells of another kind: tasks where the questions are, numbers elsewhere.
func findForeignHeading(records []record, question int) int {
	at := slices.IndexFunc(records, func(rec record) bool { return filledCells(rec.cells) > 1 })
	if at < 0 || records[at].cell(question) == "" || !wordsOnly(records[at].cells) {
		return -1
	}
	words, phrases := 0, true // no answer to a question in words above tasks, such as "triangle"
	for _, cell := range records[at].cells {
		n := len(strings.Fields(cell))
		words, phrases = max(words, n), phrases && n != 1
	}
	below := records[at+1:]
	tasks := 0
	for _, rec := range below {
		tasks += int(truth(isTask(rec.cell(question))))
	}
	switch {
	case tasks > 0 && 2*tasks >= len(below) && words <= 2,
		words <= longestHeading && aboveNumbers(records[at], below, phrases && tasks == len(below)):
		return at
	}
	return -1
}

// aboveNumbers says whether a row stands above a column that has a figure in every filled
// cell, and in three at least unless one is enough or the row is of single words.
func aboveNumbers(top record, below []record, one bool) bool {
	least := 3
	if one || !slices.ContainsFunc(top.cells, func(cell string) bool { return len(strings.Fields(cell)) > 1 }) {
		least = 1
	}
	for column := range top.cells {
		figures, cells := 0, 0
		for _, rec := range below {
			cells += int(truth(rec.cell(column) != ""))
			figures += int(truth(strings.ContainsAny(rec.cell(column), "0123456789")))
		}
		if top.cell(column) != "" && figures >= least && figures == cells {
			return true
		}
	}
	return false
}

// isHeadingAgain says whether a row below the heading is one as well, as where lists were
// pasted one under the other: every filled cell is a known heading, and they say what a
// question is or an answer.
func isHeadingAgain(cells []string) bool {
	if !wordsOnly(cells) {
		return false
	}
	known := 0
	for _, cell := range cells {
		if strings.TrimSpace(cell) == "" {
			continue
		}
		if !understand(cell).exact {
			return false
		}
		known++
	}
	return known > 1 && headingSense(cells) > 1
}

// filledCells is how many cells hold something.
func filledCells(cells []string) int {
	n := 0
	for _, cell := range cells {
		if strings.TrimSpace(cell) != "" {
			n++
		}
	}
	return n
}

// quoteHeadings names the headings for a message.
func quoteHeadings(cells []string) string {
	var quoted []string
	for _, cell := range cells {
		if cell = strings.TrimSpace(cell); cell != "" {
			quoted = append(quoted, fmt.Sprintf("%q", cell))
		}
	}
	return strings.Join(quoted, ", ")
}
