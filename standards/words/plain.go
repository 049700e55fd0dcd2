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

// unaccented are the letters of Spanish without their accents.
var unaccented = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n")

// Unaccented is a text in small letters without the accents of Spanish, which many leave out as they type. Where answers
// are read, both sides are compared so: of the words known there, no two are told apart by an accent alone.
func Unaccented(text string) string { return unaccented.Replace(text) }

// Plain brings a written answer to one alphabet, without touching the
// meaning of its marks.
func Plain(answer string) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.Map(PlainRune, answer)), " "))
}
