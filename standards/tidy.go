package standards

import (
	"regexp"
	"strings"
	"unicode"
)

// blankMarks are the marks people use for the place to fill in.
const blankMarks = "□☐▢▭⬜◻◯○_"

var (
	blankRun   = regexp.MustCompile(`\?+|\[\s*\]|\(\s*\)|\.{3,}|…`)
	wordedOps  = strings.NewReplacer(" plus ", " + ", " minus ", " - ", " take away ", " - ", " equals ", " = ", " is equal to ", " = ")
	leadIn     = regexp.MustCompile(`^(what is|what's|calculate|work out|solve|find|cuánto es|calcula)\s*:?\s+`)
	itemNumber = regexp.MustCompile(`^\(?[0-9]{1,3}\)\s+|^[0-9]{1,3}\.\s+`)
)

// tidy brings what people type to one alphabet: full-width digits and signs,
// the many minus signs and the many marks for a blank become plain ones, runs of
// spaces one space, letters small; a leading item number ("3) ") or "What is"
// goes.
func tidy(text string) string {
	s := strings.Map(plainRune, text)
	s = strings.ToLower(strings.Join(strings.Fields(s), " "))
	s = itemNumber.ReplaceAllString(s, "")
	s = leadIn.ReplaceAllString(s, "")
	s = wordedOps.Replace(s)
	s = blankRun.ReplaceAllString(s, "?")
	return strings.TrimSpace(s)
}

// plainRune maps one character to the plain one it stands for, or drops it.
func plainRune(r rune) rune {
	switch {
	case r >= '！' && r <= '～': // the full-width forms of ASCII
		r -= '！' - '!'
	case strings.ContainsRune("−–—‐‑‒﹣⁻", r):
		return '-'
	case r == '⁺':
		return '+'
	case r == '’' || r == '‘':
		return '\''
	case unicode.IsSpace(r):
		return ' '
	case unicode.Is(unicode.Cf, r): // joiners, direction and byte-order marks
		return -1
	}
	if strings.ContainsRune(blankMarks, r) {
		return '?'
	}
	return r
}

// tidyAnswer brings a written answer to one alphabet, without touching the
// meaning of its marks.
func tidyAnswer(answer string) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.Map(plainRune, answer)), " "))
}
