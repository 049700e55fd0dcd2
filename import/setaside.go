package intake

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"evenhand/bank/files"
	"evenhand/standards/words"
)

// SetAsidePath is where the rows set aside of a list go when nobody says otherwise:
// beside it, "clocks.txt" to "clocks.txt.set-aside.csv". Rows of such a file that
// are still wrong go to another beside it.
func SetAsidePath(list string) string { return firstName(list) + ".set-aside.csv" }

// WriteSetAside writes the rows set aside to a CSV file that can be mended and
// imported again, and says where: their cells as they were, a column for the answer
// always, then the line in the list, the column and the reason. Without any it writes
// nothing, and leaves a file of an earlier import as it is.
//
// A file that stands at the path is never replaced, as somebody may be mending it:
// where it holds the same rows it is left, else the rows go to the next free name,
// "clocks.txt.set-aside-2.csv".
//
// The file is UTF-8 with a byte-order mark, so that spreadsheets read its marks
// rightly, and no cell in it runs as a formula. It appears whole or not at all.
func (r *Report) WriteSetAside(path string) (written string, err error) {
	if r.Count(SetAside) == 0 {
		return "", nil
	}
	var file bytes.Buffer
	if err := r.writeSetAside(&file); err != nil {
		return "", err
	}
	written, there, err := freePath(path, file.Bytes())
	if err == nil && !there {
		err = files.New(written, files.Private, func(w io.Writer) error { _, err := w.Write(file.Bytes()); return err })
	}
	if err != nil {
		return "", words.Errorf("the rows set aside could not be written: %w", err)
	}
	return written, nil
}

// freePath is the first name, counted from the path, that no file has or only one with
// this very content.
func freePath(path string, content []byte) (free string, there bool, err error) {
	stem := setAsideEnding.ReplaceAllString(path, "")
	for n := 2; ; n++ {
		here, err := os.ReadFile(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return path, false, nil
		case err != nil:
			return "", false, err
		case bytes.Equal(here, content):
			return path, true, nil
		}
		path = fmt.Sprintf("%s.set-aside-%d.csv", stem, n)
	}
}

func (r *Report) writeSetAside(w io.Writer) error { return r.Mending().Write(w) }

// at gives the cells of some columns as they can be written.
func (rec record) at(columns []int) []string {
	cells := make([]string, len(columns))
	for i, column := range columns {
		if column < len(rec.cells) {
			cells[i] = guarded(rec.cells[column])
		}
	}
	return cells
}

// keptColumns are the columns to write: all that a row set aside has cells in, but
// not what an earlier import wrote into the list.
func (r *Report) keptColumns() (kept []int) {
	width := len(r.List.Columns)
	for _, o := range r.Outcomes {
		if o.Problem != nil {
			width = max(width, filled(o.row.cells))
		}
	}
	for column := range width {
		if column >= len(r.List.Columns) || r.List.Columns[column].Meaning != MarkOfMends {
			kept = append(kept, column)
		}
	}
	return kept
}

// headingAgain heads a column so that it is understood the same way when the file is
// imported again: its own heading where that says what it means, else the meaning.
func (l *List) headingAgain(column int) string {
	if column >= len(l.Columns) {
		return fmt.Sprintf("%s%d", extra, column+1)
	}
	c := l.Columns[column]
	known := understand(c.Heading).meaning
	switch {
	case l.own, l.mended && c.Meaning == "", c.Heading != "" && known == c.Meaning && known != "":
		return c.Heading
	case c.Meaning != "":
		return string(c.Meaning)
	case c.Heading == "":
		return fmt.Sprintf("%s%d", extra, column+1)
	}
	return notUsed + c.Heading
}
