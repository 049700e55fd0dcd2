package words

import (
	"strings"
	"unicode"
)

// blankMarks are the marks people use for the place to fill in.
const blankMarks = "□☐▢▭⬜◻◯○_△▲■●★☆◇◆▽▼"

// PlainRune maps one character to the plain one it stands for, or drops it.
func PlainRune(r rune) rune {
	switch {
	case r >= '！' && r <= '～': // the full-width forms of ASCII
		r -= '！' - '!'
	case strings.ContainsRune("−–—‐‑‒﹣⁻➖˗─", r):
		return '-'
	case r == '⁺', r == '➕':
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

// Plain brings a written answer to one alphabet, without touching the
// meaning of its marks.
func Plain(answer string) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.Map(PlainRune, answer)), " "))
}
