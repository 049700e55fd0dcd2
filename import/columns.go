package intake

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Column says how one column of a list was understood.
type Column struct {
	Number  int     // 1 is the leftmost
	Heading string  // as it stands in the list, empty where the list has none
	Meaning Meaning // empty when the column is not used
	Why     string  // why so, in a few words

	rival Meaning // what its heading says, where another column is that
	block int     // 1 for questions and answers of the second item a row, and so on
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
	meaning := string(c.Meaning)
	if c.block > 0 {
		return fmt.Sprintf("%s: %s", c.name(), c.Why)
	}
	if meaning == "" {
		meaning = "not used"
	}
	return fmt.Sprintf("%s: %s (%s)", c.name(), meaning, c.Why)
}

// newColumns makes a column for each heading and each further cell of a usual row.
func (l *List) newColumns(width int) []Column {
	columns := make([]Column, max(len(l.headings), width))
	for i := range columns {
		columns[i] = Column{Number: l.place(i) + 1, Why: "nothing known by this heading or in these cells"}
		if i < len(l.headings) {
			columns[i].Heading = strings.TrimSpace(plainText(l.headings[i]))
		}
	}
	return columns
}

// place is where a column stands in the file, counted from 0.
func (l *List) place(column int) int {
	if column < len(l.places) {
		return l.places[column]
	}
	return column
}

// named gives each meaning to the column that a person named for it, by heading,
// number or letter, and takes those out that were said to hold nothing.
func named(columns []Column, wishes map[Meaning]string, unused []string) error {
	take := func(wish string, meaning Meaning, why string) error {
		at := columnHeaded(headingsOf(columns), wish)
		if at < 0 {
			at = columnAt(columns, wish)
		}
		if at < 0 {
			return wrongf("no column %q for the %s; %s", wish, meaning, columnsThere(columns))
		}
		if other := columns[at].Meaning; other != "" {
			return wrongf("column %q can't be both the %s and the %s", wish, other, meaning)
		}
		columns[at].Meaning, columns[at].Why = meaning, why
		return nil
	}
	for _, meaning := range slices.Sorted(maps.Keys(wishes)) {
		if err := take(wishes[meaning], meaning, "you said so"); err != nil {
			return err
		}
	}
	for _, wish := range unused {
		if err := take(wish, Unused, "you said so"); err != nil {
			return err
		}
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
func columnsThere(columns []Column) *words.Told {
	if quoted := quoteHeadings(headingsOf(columns)); quoted != "" {
		return words.Sayf("the headings are %s; a number from 1 to %d will do too", quoted, len(columns))
	}
	return words.Sayf("the list has no headings; name its columns by number, 1 to %d", len(columns))
}

// columnAt is the index of the column with a number or letter, or -1.
func columnAt(columns []Column, name string) int {
	name = strings.TrimSpace(name)
	return slices.IndexFunc(columns, func(c Column) bool {
		return strconv.Itoa(c.Number) == name || strings.EqualFold(c.Letter(), name)
	})
}

// looksLikeAPlace says whether a column's name is a number or one or two letters.
func looksLikeAPlace(name string) bool { return placeName.MatchString(strings.TrimSpace(name)) }

var placeName = regexp.MustCompile(`^(?:\d+|[A-Za-z]{1,2})$`)

// headed gives meanings to columns by their headings. Where several name the same,
// the one that names it most surely gets it. A heading of questions above nothing
// but whole numbers ("Item": 1, 2, 3) is a numbering.
func headed(columns []Column, rows []record) {
	headChoices(columns)
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
		if rival >= 0 && !slices.Contains(severalColumns, m.meaning) {
			columns[i].rival = m.meaning
			columns[i].Why = fmt.Sprintf("column %s is the %s", columns[rival].Letter(), m.meaning)
			continue
		}
		columns[i].Meaning, columns[i].Why = m.meaning, "headed so"
	}
}

// severalColumns are the meanings that several columns may have.
var severalColumns = []Meaning{Number, Notes, WrongAnswers, PupilsAnswer, Choice}

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
