package intake

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// Column says how one column of a list was understood.
type Column struct {
	Number  int     // 1 is the leftmost
	Heading string  // as it stands in the list, empty where the list has none
	Meaning Meaning // empty when the column is not used
	Why     string  // why so, in a few words
}

// Letter is the column's letter in a spreadsheet: A, B, ... Z, AA.
func (c Column) Letter() string {
	letters := ""
	for n := c.Number; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return letters
}

// String is one line for people: `B "Lösung": answer (headed so)`.
func (c Column) String() string {
	name := c.Letter()
	if c.Heading != "" {
		name += fmt.Sprintf(" %q", c.Heading)
	}
	meaning := string(c.Meaning)
	if meaning == "" {
		meaning = "not used"
	}
	return fmt.Sprintf("%s: %s (%s)", name, meaning, c.Why)
}

// newColumns makes a column for each heading and each further cell of a usual row.
func newColumns(headings []string, width int) []Column {
	columns := make([]Column, max(len(headings), width))
	for i := range columns {
		columns[i] = Column{Number: i + 1, Why: "nothing known by this heading or in these cells"}
		if i < len(headings) {
			columns[i].Heading = strings.TrimSpace(headings[i])
		}
	}
	return columns
}

// named gives each meaning to the column that a person named for it, by heading,
// number or letter.
func named(columns []Column, wishes map[Meaning]string) error {
	headings := headingsOf(columns)
	for _, meaning := range slices.Sorted(maps.Keys(wishes)) {
		wish := wishes[meaning]
		at := columnHeaded(headings, wish)
		if at < 0 {
			at = columnAt(wish, len(columns))
		}
		if at < 0 {
			return fmt.Errorf("no column %q for the %s; %s", wish, meaning, columnsThere(columns))
		}
		if other := columns[at].Meaning; other != "" {
			return fmt.Errorf("column %q can't be both the %s and the %s", wish, other, meaning)
		}
		columns[at].Meaning, columns[at].Why = meaning, "you said so"
	}
	return nil
}

func headingsOf(columns []Column) []string {
	headings := make([]string, len(columns))
	for i, c := range columns {
		headings[i] = c.Heading
	}
	return headings
}

// columnsThere says by what names columns can be named.
func columnsThere(columns []Column) string {
	if quoted := quoteHeadings(headingsOf(columns)); quoted != "" {
		return fmt.Sprintf("the headings are %s; a number from 1 to %d will do too", quoted, len(columns))
	}
	return fmt.Sprintf("the list has no headings; name its columns by number, 1 to %d", len(columns))
}

// columnAt reads a column's number or letter; -1 when there is no such column.
func columnAt(name string, width int) int {
	n, err := strconv.Atoi(strings.TrimSpace(name))
	if err != nil {
		n = 0
		for c := 1; c <= width; c++ {
			if strings.EqualFold(strings.TrimSpace(name), Column{Number: c}.Letter()) {
				n = c
			}
		}
	}
	if n < 1 || n > width {
		return -1
	}
	return n - 1
}

// headed gives meanings to columns by their headings. Where several name the same,
// the one that names it most surely gets it. A heading of questions above nothing
// but whole numbers ("Item": 1, 2, 3) is a numbering.
func headed(columns []Column, rows []record) {
	matches := make([]match, len(columns))
	for i, c := range columns {
		matches[i] = understand(c.Heading)
		if matches[i].meaning == Question && allNumbers(rows, i) {
			matches[i].meaning = Number
		}
	}
	for i := range columns {
		m := matches[i]
		if m.meaning == "" || columns[i].Meaning != "" {
			continue
		}
		rival := holder(columns, m.meaning)
		for j := range columns {
			if j != i && columns[j].Meaning == "" && matches[j].meaning == m.meaning && matches[j].better(m) {
				rival = j
			}
		}
		if rival >= 0 && m.meaning != Number {
			columns[i].Why = fmt.Sprintf("column %s is the %s", columns[rival].Letter(), m.meaning)
			continue
		}
		columns[i].Meaning, columns[i].Why = m.meaning, "headed so"
	}
}

// holder is the index of the column that has the meaning, or -1.
func holder(columns []Column, m Meaning) int {
	return slices.IndexFunc(columns, func(c Column) bool { return c.Meaning == m })
}

// allNumbers says whether a column's filled cells are all whole numbers, and any.
func allNumbers(rows []record, column int) bool {
	any := false
	for _, rec := range rows {
		if column >= len(rec.cells) || strings.TrimSpace(rec.cells[column]) == "" {
			continue
		}
		if _, err := strconv.Atoi(strings.Trim(rec.cells[column], " .)#")); err != nil {
			return false
		}
		any = true
	}
	return any
}
