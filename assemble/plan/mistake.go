package plan

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"evenhand/standards/words"
)

// Mistake is one thing that is wrong in a plan or a pacing list.
type Mistake struct {
	Line, Column int         // counted from 1; the column in characters
	Message      *words.Told // what was read and what would be right
	Excerpt      string      // the line as it stands
	Mark         string      // spaces and ~~~ under what is wrong
	Hint         *words.Told // what to do next, may be nil
}

// MistakesError tells everything that is wrong with a file, in the order of its
// lines.
type MistakesError struct {
	Name     string // the file's name
	Mistakes []Mistake
}

// longestExcerpt is how long a line may be, in bytes, that is shown: more would bury the message.
const longestExcerpt = 300

func (e *MistakesError) Error() string {
	parts := make([]string, len(e.Mistakes))
	for i, m := range e.Mistakes {
		parts[i] = fmt.Sprintf("%s:%d:%d: %s", e.Name, m.Line, m.Column, m.Message)
		if strings.TrimSpace(m.Excerpt) != "" && len(m.Excerpt) <= longestExcerpt {
			parts[i] += "\n    " + m.Excerpt + "\n    " + m.Mark
		}
		if m.Hint != nil {
			parts[i] += "\n" + m.Hint.String()
		}
	}
	return strings.Join(parts, "\n\n")
}

// add notes a mistake at a span of the text; what runs over several lines is
// marked on the first only. Of a line that was broken no more is told than that.
func (d *document) add(at span, message, hint *words.Told) {
	at.from = min(at.from, len(d.text))
	line := d.lineAt(at.from)
	number := bytes.Count(d.text[:line.from], []byte("\n")) + 1
	if d.broken[number] {
		return
	}
	before := string(d.text[line.from:at.from])
	marked := strings.TrimRight(string(d.text[at.from:min(max(at.to, at.from), line.to)]), " \t\r")
	d.mistakes = append(d.mistakes, Mistake{
		Line:    number,
		Column:  utf8.RuneCountInString(before) + 1,
		Message: message,
		Excerpt: strings.ToValidUTF8(strings.TrimRight(string(d.text[line.from:line.to]), " \t\r"), "�"),
		Mark:    blank(before) + strings.Repeat("~", max(1, utf8.RuneCountInString(marked))),
		Hint:    hint,
	})
}

// lineAt is the line around a byte of the text, without its end.
func (d *document) lineAt(at int) span {
	line := span{bytes.LastIndexByte(d.text[:at], '\n') + 1, len(d.text)}
	if end := bytes.IndexByte(d.text[at:], '\n'); end >= 0 {
		line.to = at + end
	}
	return line
}

// blank keeps tabs and turns all else into spaces, so that the mark stands
// under what it marks.
func blank(before string) string {
	return strings.Map(func(r rune) rune {
		if r == '\t' {
			return r
		}
		return ' '
	}, before)
}
