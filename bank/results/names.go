package results

import (
	"regexp"
	"strings"
	"unicode"
)

var nameForm = regexp.MustCompile(`^(\pL{2,3})[-_ ]?\d{1,4}$`)

// LooksLikeName says that a text has the form of a code but is most likely a short name
// with a number, such as Ada1 or BOB7: letters that can be said aloud, and none of the
// other codes, which may be many, begins with the same.
func LooksLikeName(text string, others ...string) bool {
	m := nameForm.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return false
	}
	letters := strings.ToUpper(m[1])
	for _, other := range others {
		o := nameForm.FindStringSubmatch(strings.TrimSpace(other))
		if o != nil && strings.ToUpper(o[1]) == letters && !strings.EqualFold(strings.TrimSpace(other), strings.TrimSpace(text)) {
			return false
		}
	}
	vowel := strings.ContainsAny(letters, "AEIOUYÁÉÍÓÚÄÖÜ")
	consonant := strings.ContainsFunc(letters, func(r rune) bool { return unicode.IsLetter(r) && !strings.ContainsRune("AEIOUYÁÉÍÓÚÄÖÜ", r) })
	return vowel && consonant
}
