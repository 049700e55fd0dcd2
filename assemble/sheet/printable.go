package sheet

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// instead is what stands for some characters; a blank to fill in is drawn as a
// line, because a printed box looks like a missing character.
var instead = map[rune]string{
	'□': "___", '▢': "___", '☐': "___", '\u2212': "-", '\u00a0': " ", '\u202f': " ", '…': "...",
	'’': "'", '‘': "'", '“': `"`, '”': `"`, '–': "-", '—': "-", '\t': " ", '\n': " ", '\r': " ",
}

// printable replaces what the face can't show: by a likeness, by the letter without
// its accent, and else by a question mark. Joiners and variation marks vanish.
func (f *face) printable(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r >= asciiEnd || !f.ascii[r].has }) {
		return s
	}
	var b strings.Builder
	for _, r := range norm.NFC.String(s) {
		b.WriteString(f.likeness(r))
	}
	return b.String()
}

// unprintable are the characters of the text that become question marks, each once.
func (f *face) unprintable(s string) []rune {
	var list []rune
	for _, r := range norm.NFC.String(s) {
		if r != '?' && f.likeness(r) == "?" && !slices.Contains(list, r) {
			list = append(list, r)
		}
	}
	return list
}

func (f *face) likeness(r rune) string {
	if f.has(r) {
		return string(r)
	}
	if other, ok := instead[r]; ok {
		return other
	}
	if unicode.In(r, unseen...) {
		return ""
	}
	if base := []rune(norm.NFKD.String(string(r)))[0]; base != r && f.has(base) {
		return string(base)
	}
	return "?"
}

// unseen are joiners, variation marks, controls and lone accents.
var unseen = []*unicode.RangeTable{unicode.Mn, unicode.Cf, unicode.Cc}

// has says whether both weights have a glyph for the character that may be printed.
// Above U+FFFF it always says no, because the PDF writer can't embed such characters.
func (f *face) has(r rune) bool {
	if r > 0xffff || r == unicode.ReplacementChar || unicode.In(r, unseen...) || strings.HasPrefix(instead[r], "_") {
		return false
	}
	for _, weight := range f.fonts {
		if glyph, err := weight.GlyphIndex(nil, r); err != nil || glyph == 0 {
			return false
		}
	}
	return true
}
