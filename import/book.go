package intake

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"evenhand/standards/words"
)

// Book is all that was read of a file: one list, or one of each sheet.
type Book struct {
	Lists  []*List
	Left   []*words.Told // sheets that were not read though nobody asked for others, and why
	Unread []string      // the names of these sheets
}

// Open reads the list of a file that holds one, the first that OpenBook reads.
func Open(name string, data []byte, o Options) (*List, error) {
	book, err := OpenBook(name, data, o)
	if err != nil {
		return nil, err
	}
	return book.Lists[0], nil
}

// OpenBook reads the lists from the bytes of a file: CSV in any usual encoding and with any
// usual delimiter, or an .xlsx workbook with one on each sheet. Every sheet is either
// read or named in Left. The error says what is wrong with the file or the options as
// a whole; what is wrong in a row only shows when it is imported.
func OpenBook(name string, data []byte, o Options) (*Book, error) {
	book, err := openBook(name, data, o)
	if err != nil {
		return nil, words.Errorf("%s: %w", name, err)
	}
	return book, nil
}

func openBook(name string, data []byte, o Options) (*Book, error) {
	wishes, err := parseWishes(o.Columns)
	if err != nil {
		return nil, err
	}
	workbook := isWorkbook(data)
	if !workbook && len(o.Sheets) > 0 {
		return nil, wrongf("only a workbook has sheets, and this is none")
	}
	if workbook && o.Encoding != "" {
		return nil, wrongf("a workbook says itself how it is encoded; leave off the encoding")
	}
	grids, err := readGrids(data, o.Encoding)
	if err != nil {
		return nil, err
	}
	if workbook {
		return readSheets(name, grids, wishes, o)
	}
	l, err := newList(name, grids[0], wishes, o.Unused)
	return &Book{Lists: []*List{l}}, err
}

// readGrids reads all sheets of a workbook, or a text, which is one grid.
func readGrids(data []byte, encoding string) ([]grid, error) {
	if isWorkbook(data) {
		return readWorkbook(data)
	}
	g, err := readText(data, encoding)
	return []grid{g}, err
}

var errNothingIn = words.Errorf("the workbook has no sheet with anything in it")

// readSheets reads the sheets that are wanted, else those that can be seen and hold
// questions.
func readSheets(name string, grids []grid, wishes map[Meaning]string, o Options) (*Book, error) {
	wanted, err := wantedSheets(grids, o.Sheets)
	if err != nil {
		return nil, err
	}
	book := &Book{}
	var why error
	for i, g := range grids {
		switch {
		case len(g.records) == 0:
		case wanted == nil && g.hidden:
			book.leave(g.sheet, "sheet %q is hidden, and its %s were not read; --sheet %q reads it", g.sheet, countRows(len(g.records)), g.sheet)
		case wanted != nil && !wanted[i]: // as was asked for
		default:
			l, err := newList(name, g, wishes, o.Unused)
			if err != nil && (wanted != nil || len(wishes) > 0 && !errors.As(err, new(*NoQuestionsError))) {
				return nil, words.Errorf("sheet %q: %w", g.sheet, err)
			}
			if err != nil {
				book.leave(g.sheet, "sheet %q with %s was not read: %v", g.sheet, countRows(len(g.records)), err)
				why = err
				continue
			}
			book.Lists = append(book.Lists, l)
		}
	}
	book.leaveCovers(wanted != nil)
	switch {
	case len(book.Lists) == 0 && why != nil:
		return nil, why
	case len(book.Lists) == 0 && len(book.Left) > 0:
		return nil, words.Joined(book.Left, "%s; %s")
	case len(book.Lists) == 0:
		return nil, errNothingIn
	}
	if len(book.Lists) > 1 {
		for _, l := range book.Lists {
			l.Name = fmt.Sprintf("%s (%s)", name, fileName(l.Delimiter))
		}
	}
	return book, nil
}

// leaveCovers takes out sheets whose questions were guessed from nothing but long texts,
// where another sheet surely holds questions: covers, instructions and the like.
func (b *Book) leaveCovers(all bool) {
	if all || !slices.ContainsFunc(b.Lists, (*List).surelyAsks) {
		return
	}
	b.Lists = slices.DeleteFunc(b.Lists, func(l *List) bool {
		if l.surelyAsks() {
			return false
		}
		b.leave(l.Delimiter, "sheet %q with %s was not read, as it doesn't look like a list of items; --sheet "+
			"%q reads it", l.Delimiter, countRows(l.Rows()), l.Delimiter)
		return true
	})
}

func (b *Book) leave(sheet, format string, args ...any) {
	b.Unread = append(b.Unread, sheet)
	b.Left = append(b.Left, words.Sayf(format, args...))
}

// wantedSheets are the sheets that were asked for by name, nil when none was.
func wantedSheets(grids []grid, names []string) (map[int]bool, error) {
	if len(names) == 0 {
		return nil, nil
	}
	wanted := map[int]bool{}
	for _, name := range names {
		found := false
		for i, g := range grids {
			if strings.EqualFold(strings.TrimSpace(name), "all") || strings.EqualFold(strings.TrimSpace(name), strings.TrimSpace(g.sheet)) {
				wanted[i], found = true, true
			}
		}
		if !found {
			var there []string
			for _, g := range grids {
				there = append(there, fmt.Sprintf("%q", g.sheet))
			}
			return nil, wrongf("no sheet %q; the workbook has %s", name, strings.Join(there, ", "))
		}
	}
	return wanted, nil
}

// fileName is a text as part of a file's name.
func fileName(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, text)
}

// countRows is so many rows, in words.
func countRows(n int) *words.Told { return words.SayCount(n, "%d row", "%d rows") }

// WrongOptionsError says that the options ask for what the list doesn't have.
type WrongOptionsError struct{ error }

// Unwrap is what they ask for.
func (e *WrongOptionsError) Unwrap() error { return e.error }

func wrongf(format string, args ...any) error {
	return &WrongOptionsError{words.Errorf(format, args...)}
}
