package sheet

import (
	"strings"

	"evenhand/standards"
)

// sentence prints a task as it is written, with a box for each "?". The boxes leave room
// for one digit more than the numbers have, so that their size tells nothing.
func sentence(k kit, task standards.Task) (drawing, bool) {
	answers := strings.FieldsFunc(task.Key(), func(r rune) bool { return r == ' ' || r == '+' })
	digits := boxDigits(task)
	var parts []drawing
	for _, token := range strings.Fields(task.String()) {
		if token == "?" && len(answers) > 0 {
			parts = append(parts, k.answerBox(digits, answers[0]))
			answers = answers[1:]
			continue
		}
		parts = append(parts, k.text(k.token(token)))
	}
	return flow(k.width, k.gap(), k.gap(), parts...), true
}

// boxDigits is how many digits the boxes of a sentence have room for.
func boxDigits(task standards.Task) int {
	switch t := task.(type) {
	case standards.PlaceValue:
		if !t.Compose {
			return 2
		}
		return t.Places + 1
	case standards.Expanded:
		return longestNumber(task.String())
	}
	return longestNumber(task.String()) + 1
}

// longestNumber is the length of the longest run of digits.
func longestNumber(s string) int {
	longest, run := 0, 0
	for _, r := range s {
		if r < '0' || r > '9' {
			run = 0
			continue
		}
		run++
		longest = max(longest, run)
	}
	return longest
}

// tokens are the words and signs that a sentence prints otherwise than it types.
var tokens = map[string]phrase{
	"-":        {minus, minus},
	"hundreds": {"hundreds", "centenas"},
	"tens":     {"tens", "decenas"},
	"ones":     {"ones", "unidades"},
}

// minus is the printed sign, as wide as a plus.
const minus = "\u2212"

func (k kit) token(token string) string {
	if p, ok := tokens[token]; ok {
		return k.say(p)
	}
	return token
}
