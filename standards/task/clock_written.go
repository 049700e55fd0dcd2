package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// Answers are times.
func (t Clock) Answers() Answers { return OneTime }

// Offered is a time without its half of the day, which is the same in all that are offered.
func (t Clock) Offered(answer string) string {
	said, err := words.ParseTime(answer)
	if err != nil {
		return answer
	}
	said.Half = ""
	return said.Printed()
}

// AnswerIn is the time as it is printed, or in words where those are asked for.
func (t Clock) AnswerIn(answer, lang string) string {
	said, err := words.ParseTime(answer)
	switch {
	case err != nil:
		return answer
	case t.Verb == Say:
		return said.Words(lang)
	}
	return said.Printed()
}

// Accepted are "4:30", "04:30", "half past 4", "half past four" and the like, in both
// languages; words first where they are asked for.
func (t Clock) Accepted(lang string) []string {
	time := t.Time
	dial := fmt.Sprintf("%d:%02d", time.Hour, time.Minute)
	digits := []string{time.String(), dial, "0" + time.String(), "0" + dial}
	switch time.Half {
	case words.Morning:
		digits = append(digits, fmt.Sprintf("%02d:%02d", time.Hour%12, time.Minute), dial+" a.m.")
	case words.Afternoon:
		digits = append(digits, fmt.Sprintf("%d:%02d", time.Hour%12+12, time.Minute), dial+" p.m.")
	}
	var spoken []string
	for _, l := range []string{lang, "en", "es"} {
		said := time.Words(l)
		spoken = append(spoken, said, named(said, l))
	}
	if t.Verb == Say {
		return append(spoken, digits...)
	}
	return append(digits, spoken...)
}

var digitRuns = regexp.MustCompile(`[0-9]+`)

// named writes the numbers of a text in words.
func named(text, lang string) string {
	return digitRuns.ReplaceAllStringFunc(text, func(number string) string {
		n, _ := strconv.Atoi(number)
		return words.NumberName(n, lang)
	})
}
