package marks

import (
	"regexp"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"evenhand/bank/results"
)

// plain brings a cell to the form in which signs are looked up: full-width forms as
// plain ones, the many dashes as one, without the marks that only choose a picture's
// look or colour, in small letters, without a full stop at the end of a word.
func plain(cell string) string {
	text := strings.Map(plainRune, norm.NFKC.String(cell))
	text = strings.ToLower(strings.Join(strings.Fields(text), " "))
	if word := strings.TrimRight(text, ".!"); strings.ContainsFunc(word, unicode.IsLetter) {
		text = dotsBetween.ReplaceAllString(word, "$1$2")
	}
	if bare := strings.TrimSuffix(text, "."); text != bare && signs[bare].family == tickFamily {
		text = bare
	}
	switch text {
	case "()", "( )", "[]", "❏", "❑", "□", "◻", "⬜", "⬛", "▢", "🔲", "🔳", "◽", "◾":
		return map[bool]string{true: "[ ]", false: "☐"}[strings.ContainsAny(text, "([")]
	case "(x)":
		return "[x]"
	case "[✔]", "(✓)", "(✔)":
		return "[✓]"
	case "◯", "⭕", "〇", "⚪":
		return "○"
	case "⬤", "⚫":
		return "●"
	}
	return text
}

var dotsBetween = regexp.MustCompile(`(\pL)\.(\pL)`)

// symbolFont are the characters that word processors keep for the ticks, crosses and
// boxes of the usual symbol fonts, in the private part of Unicode.
var symbolFont = map[rune]rune{
	0xF0FC: '✓', 0xF0FB: '✗', 0xF0FE: '☑', 0xF0FD: '☒', 0xF0A8: '☐', 0xF06F: '☐',
	0xF050: '✓', 0xF04F: '✗', 0xF052: '☑', 0xF051: '☒', 0xF053: '☒', 0xF0A3: '☐',
}

// plainRune maps a character to the plain one, or drops it.
func plainRune(r rune) rune {
	switch {
	case strings.ContainsRune("–—−‐‑‒﹣⁻ー", r):
		return '-'
	case r == '’' || r == '‘':
		return '\''
	case r >= 0xFE00 && r <= 0xFE0F, // variation selectors
		r >= 0x1F3FB && r <= 0x1F3FF, // skin tones
		r == 0x20E3,                  // the frame of a key
		unicode.Is(unicode.Cf, r):
		return -1
	}
	if known, ok := symbolFont[r]; ok {
		return known
	}
	return r
}

var (
	oneOrZero = regexp.MustCompile(`^\+?([01])(?:[.,]0*)?$`)
	points    = regexp.MustCompile(`^([01])(?:[.,]0+)? ?(?:p|pt|pts|point|points|pto|ptos|punto|puntos|pkt|` +
		`punkte?|mark|marks|(?:/|of|out of|de|von|sur) ?1(?:[.,]0+)?)$`)
	percent = regexp.MustCompile(`^(100|0)(?:[.,]0+)? ?%$`)
	inPart  = regexp.MustCompile(`^(?:0?[.,]\d+|[1-9]\d?(?:[.,]\d+)? ?%|½|1⁄2|half|partly|partial|partial credit|~|±|medio|media|parcial|a medias)$`)
)

// signOf is the sign that a cell may be.
func signOf(text string) (sign, bool) {
	if s, ok := signs[text]; ok {
		return s, true
	}
	if strings.HasPrefix(text, "\\") {
		return sign{}, false
	}
	if m := oneOrZero.FindStringSubmatch(text); m != nil {
		return digit(digitFamily, m[1] == "1"), true
	}
	if m := points.FindStringSubmatch(text); m != nil {
		return digit(pointFamily, m[1] == "1"), true
	}
	if m := percent.FindStringSubmatch(text); m != nil {
		return digit(pointFamily, m[1] == "100"), true
	}
	if text != "" && strings.Trim(text, text[:1]) == "" && (text[0] == '-' || text[0] == '.') {
		return signs[text[:1]], true
	}
	return sign{}, false
}

func digit(f family, right bool) sign {
	state := results.Wrong
	if right {
		state = results.Right
	}
	return sign{f, []reading{{state: state}}}
}

// plainly is the one state that a sign always means; ok is false where it may mean
// others.
func (s sign) plainly() (state results.State, ok bool) {
	if len(s.readings) == 1 && s.readings[0].with == "" {
		return s.readings[0].state, true
	}
	return "", false
}

// Sign reads a mark that always means the same, such as ✓, x for wrong, "absent" or
// "not reached"; nothing at all is not reached.
func Sign(cell string) (state results.State, ok bool) {
	text := plain(cell)
	if text == "" {
		return results.NotReached, true
	}
	if text == "x" {
		return results.Wrong, true
	}
	s, ok := signOf(text)
	if !ok || s.family == digitFamily {
		return "", false
	}
	return s.plainly()
}
