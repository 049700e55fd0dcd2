package intake

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"evenhand/bank/cells"
	"evenhand/standards/words"
)

// A file of rows set aside comes back when a colleague has mended it, from any program
// that writes CSV: with other delimiters, quotation marks, line ends and encodings. It is
// known by these words in its first line, and so is its delimiter. Its headings were
// written by setaside.go and are believed; no cell of it is guessed from.

// mendingHeadings are the last headings of a file of rows set aside; somebody may have
// put columns behind them.
var mendingHeadings = []string{"line", "column", "reason"}

// notUsed and extra head columns that meant nothing when the rows were set aside: those
// of the list, and those that only longer rows had.
const (
	notUsed = "not used: "
	extra   = "extra "
)

// isSetAside says whether a first line is that of a file of rows set aside.
func isSetAside(cells []string) bool { return mendingAt(cells) > 0 }

// mendingAt is the column in which the mending headings begin, or -1.
func mendingAt(headings []string) int {
	for at := range len(headings) - len(mendingHeadings) + 1 {
		if slices.EqualFunc(headings[at:at+len(mendingHeadings)], mendingHeadings, func(cell, word string) bool {
			return strings.EqualFold(strings.TrimSpace(cell), word)
		}) {
			return at
		}
	}
	return -1
}

// setAsideDelimiter is what stands between the cells of a file of rows set aside; ok is
// false for any other text.
func setAsideDelimiter(text string) (comma rune, name string, ok bool) {
	text = head(text)
	if first, rest, _ := strings.Cut(text, "\n"); strings.HasPrefix(strings.ToLower(first), "sep=") {
		text = rest
	}
	for _, d := range delimiters[1:] {
		good, _, _ := readStrict(nil, text, d.comma, 1, 1)
		if len(good) > 0 && isSetAside(good[0].cells) {
			return d.comma, d.name, true
		}
	}
	return 0, "", false
}

// IsSetAside says whether the bytes of a file are rows that an import set aside.
func IsSetAside(data []byte) bool {
	text, _ := decode(data)
	_, _, ok := setAsideDelimiter(text)
	return ok
}

// understandMended gives the columns of a file of rows set aside their meanings by their
// headings alone.
func understandMended(columns []Column) {
	mending := mendingAt(headingsOf(columns))
	for i := range columns {
		c := &columns[i]
		meaning := understand(c.Heading).meaning
		switch {
		case mending <= i && i < mending+len(mendingHeadings):
			c.Meaning, c.Why = MarkOfMends, "written when the rows were set aside"
		case c.Meaning != "": // as a person said
		case strings.HasPrefix(c.Heading, notUsed), strings.HasPrefix(c.Heading, extra):
			c.Why = "not used when the rows were set aside"
		case meaning == "" || holder(columns, meaning) >= 0 && meaning != Notes:
		default:
			c.Meaning, c.Why = meaning, "headed so"
		}
	}
}

// origin is the list that a row first stood in, and its line there.
func (l *List) origin(rec record) (file string, line int) {
	if !l.mended {
		return l.Name, rec.first
	}
	line, err := strconv.Atoi(rec.cell(mendingAt(l.headings)))
	if err != nil || line < 1 {
		line = rec.first
	}
	return firstName(l.Name), line
}

var setAsideEnding = regexp.MustCompile(`\.set-aside(?:-\d+)?\.csv$`)

// firstName is the name of the list whose rows a file of rows set aside holds.
func firstName(name string) string { return setAsideEnding.ReplaceAllString(name, "") }

// leftBeyond says what is wrong with a row that was set aside for having too many cells
// and still has them.
func (l *List) leftBeyond(rec record) *words.Told {
	for i, c := range l.Columns {
		if l.mended && strings.HasPrefix(c.Heading, extra) && c.Meaning == "" && rec.cell(i) != "" {
			return words.Sayf("there is still %q in the column %q; move it where it belongs, or empty that cell",
				shorten(rec.cell(i)), c.Heading)
		}
	}
	return nil
}

// neverClosed is the reason for rows with a stray quotation mark.
const neverClosed = "a quotation mark opens a cell and is never closed; close it or take it off"

// leftOpen says whether a row still has a cell that was set aside because its quotation
// mark is never closed.
func (l *List) leftOpen(rec record) bool {
	if rec.cell(mendingAt(l.headings)+len(mendingHeadings)-1) != neverClosed {
		return false
	}
	for i, c := range l.Columns {
		text := rec.cell(i)
		if c.Meaning != MarkOfMends && strings.HasPrefix(text, `"`) && strings.Count(text, `"`)%2 == 1 {
			return true
		}
	}
	return false
}

// guarded is a cell as a file of rows set aside holds it: no spreadsheet runs it, and no
// control character makes the file look like no text.
func guarded(cell string) string {
	clean := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && !strings.ContainsRune("\t\r\n", r) {
			return -1
		}
		return r
	}, cells.Unguard(cell))
	return cells.Guard(clean)
}
