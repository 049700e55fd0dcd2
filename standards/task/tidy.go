package task

import (
	"regexp"
	"strings"

	"evenhand/standards/words"
)

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
	s := strings.Map(words.PlainRune, text)
	s = strings.ToLower(strings.Join(strings.Fields(s), " "))
	s = itemNumber.ReplaceAllString(s, "")
	s = leadIn.ReplaceAllString(s, "")
	s = wordedOps.Replace(s)
	s = blankRun.ReplaceAllString(s, "?")
	return strings.TrimSpace(s)
}
