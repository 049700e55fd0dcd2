package intake

import (
	"strings"

	"evenhand/standards/task"
)

// delimiters are the marks that lists put between cells, the usual ones first. Before
// all is none, one cell a line: what makes sense whole isn't cut.
var delimiters = []struct {
	comma rune
	name  string
}{
	{'\x1f', "nothing"}, {',', "commas"}, {';', "semicolons"}, {'\t', "tabs"}, {'|', "bars"},
}

// sniffed is how many bytes and how many records of a list are looked at to find its
// delimiter, its heading and its columns.
const (
	sniffedBytes   = 64 << 10
	sniffedRecords = 200
)

// sniff finds the delimiter under which a list makes most sense: rows of one width,
// known headings, cells that are tasks. The first line "sep=;" that some
// spreadsheets write says it outright.
func sniff(text string) (comma rune, name string) {
	if comma, name, ok := setAsideDelimiter(text); ok {
		return comma, name
	}
	text = head(text)
	best := -1.0
	for _, d := range delimiters {
		if strings.HasPrefix(strings.ToLower(text), "sep="+string(d.comma)) {
			return d.comma, d.name
		}
		if s := sense(readRecords(text, d.comma)); s > best {
			best, comma, name = s, d.comma, d.name
		}
	}
	return comma, name
}

// head is the first part of a text, cut at a line end.
func head(text string) string {
	if len(text) <= sniffedBytes {
		return text
	}
	text = text[:sniffedBytes]
	if end := strings.LastIndexByte(text, '\n'); end >= 0 {
		return text[:end+1]
	}
	return text
}

// sense is how much sense records make: from 0 to 1 for rows of one width, the same
// for rows with a task in a cell, and for the headings a fifth each.
func sense(records []record) float64 {
	records = records[:min(len(records), sniffedRecords)]
	widths := map[int]int{}
	rows, tasks, headings := 0, 0, 0
	for i, rec := range records {
		if rec.blank() {
			continue
		}
		rows++
		widths[filled(rec.cells)]++
		if hasTask(rec.cells) {
			tasks++
		}
		if i < deepestHeading {
			headings = max(headings, len(meaningsOf(rec.cells)))
		}
	}
	if rows == 0 {
		return 0
	}
	common := 0
	for width, n := range widths {
		if width > 1 {
			common = max(common, n)
		}
	}
	return float64(common+tasks)/float64(rows) + float64(headings)/5
}

// filled is the number of cells up to the last that holds something.
func filled(cells []string) int {
	n := len(cells)
	for n > 0 && strings.TrimSpace(cells[n-1]) == "" {
		n--
	}
	return n
}

func hasTask(cells []string) bool {
	for _, cell := range cells {
		if isTask(cell) {
			return true
		}
	}
	return false
}

// longestTask is how many bytes a task may have; the reader of tasks takes no longer ones.
const longestTask = 400

// isTask says whether a cell reads as a task and not as a date.
func isTask(cell string) bool {
	if cell == "" || len(cell) > longestTask {
		return false
	}
	if _, dated := readDate(cell); dated {
		return false
	}
	_, err := task.Parse(cell)
	return err == nil
}
