package qti

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// lines is a text as paragraphs without places to answer at. Characters that an XML file can't hold
// go, and white space is one space.
func lines(text string) [][]Part {
	var stem [][]Part
	for line := range strings.Lines(strings.Map(printable, text)) {
		if line = strings.Join(strings.Fields(line), " "); line != "" {
			stem = append(stem, []Part{{Text: line}})
		}
	}
	return stem
}

// printable drops what the XML standard (1.0, section 2.2) leaves out.
func printable(r rune) rune {
	switch {
	case r == '\r':
		return '\n'
	case r == '\n', r == '\t':
		return r
	case r < ' ', r == 0xFFFE, r == 0xFFFF, r == utf8.RuneError:
		return -1
	}
	return r
}

// blank is a mark to fill in; the question mark of a sentence follows a word.
var blank = regexp.MustCompile(`(^| )\?`)

// filled puts places to answer at where the text has blanks. Where it has not so many, they stand in a
// paragraph of their own.
func filled(text string, responses ...Response) [][]Part {
	stem := lines(text)
	last := len(stem) - 1
	pieces := blank.Split(stem[last][0].Text, -1)
	if len(pieces) != len(responses)+1 {
		var places []Part
		for i, r := range responses {
			if i > 0 {
				places = append(places, Part{Text: " "})
			}
			places = append(places, Part{Response: r.ID})
		}
		return append(stem, places)
	}
	var mixed []Part
	for i, piece := range pieces {
		if i > 0 {
			mixed = append(mixed, Part{Response: responses[i-1].ID})
		}
		if i < len(responses) && piece != "" {
			piece += " "
		}
		if piece != "" {
			mixed = append(mixed, Part{Text: piece})
		}
	}
	stem[last] = mixed
	return stem
}

// spoken writes the minus sign as one, which a screen reader says, and not as a
// hyphen.
func spoken(text string) string { return strings.ReplaceAll(text, " - ", " − ") }
