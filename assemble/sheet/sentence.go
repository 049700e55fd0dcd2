package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// sentence prints a task as it is written, with a box for each "?". The boxes leave room
// for one digit more than the numbers have, so that their size tells nothing.
func sentence(k kit, asked task.Task) (drawing, bool) {
	answers := strings.FieldsFunc(asked.Key(), func(r rune) bool { return r == ' ' || r == '+' })
	return k.sentenceOf(asked.String(), answers, boxDigits(asked)), true
}

// smallestWords is how far the names of places may shrink to keep a sentence on one line.
const smallestWords = .7

// sentenceOf prints a sentence with the answers in its boxes, each with room for so
// many digits; in one line where smaller names of places make that possible, but in large print, where all is to
// stay as large.
func (k kit) sentenceOf(text string, answers []string, digits int) drawing {
	parts := k.sentenceParts(text, answers, digits, 1)
	if line := row(k.gap(), parts...); line.w <= k.width {
		return line
	}
	for share := .95; k.scale == 1 && share >= smallestWords; share -= .05 {
		if line := row(k.gap(), k.sentenceParts(text, answers, digits, share)...); line.w <= k.width {
			return line
		}
	}
	return flow(k.width, k.gap(), k.gap(), k.signsFirst(text, parts)...)
}

// signsFirst are the parts of a sentence for several lines: a sign begins a line and never ends one.
func (k kit) signsFirst(text string, parts []drawing) []drawing {
	var lines []drawing
	var sign *drawing
	at := 0
	for _, token := range strings.Fields(text) {
		if _, name := placeWords[token]; name {
			continue // it stands behind its number
		}
		part := parts[at]
		at++
		if _, ok := signWords[token]; ok {
			sign = &part
			continue
		}
		if sign != nil {
			part, sign = row(k.gap(), *sign, part), nil
		}
		lines = append(lines, part)
	}
	return lines
}

// sentenceParts are the numbers, signs and boxes of a sentence; the names of places are
// printed at a share of the usual size.
func (k kit) sentenceParts(text string, answers []string, digits int, share float64) []drawing {
	tokens := strings.Fields(text)
	parts := make([]drawing, 0, len(tokens))
	for i, token := range tokens {
		if token == "?" && len(answers) > 0 {
			parts = append(parts, k.answerBox(digits, answers[0]))
			answers = answers[1:]
			continue
		}
		if name, ok := placeWords[token]; ok {
			form := 0
			if tokens[i-1] == "1" {
				form = 1
			}
			last := len(parts) - 1 // "4 tens" stays on one line
			word := k.print(k.say(name[form]), lettering{size: share * k.size})
			parts[last] = row(k.gap(), parts[last], word)
			continue
		}
		parts = append(parts, k.text(printed(token)))
	}
	return parts
}

// boxDigits is how many digits the boxes of a sentence have room for.
func boxDigits(asked task.Task) int {
	switch t := asked.(type) {
	case task.PlaceValue:
		if !t.Compose {
			return 2
		}
		return t.Places + 1
	case task.Expanded:
		return longestNumber(asked.String())
	}
	return longestNumber(asked.String()) + 1
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

// placeWords are the printed names of places, for one and for more.
var placeWords = map[string][2]phrase{
	"hundreds": {{"hundreds", "centenas"}, {"hundred", "centena"}},
	"tens":     {{"tens", "decenas"}, {"ten", "decena"}},
	"ones":     {{"ones", "unidades"}, {"one", "unidad"}},
}

// minus is the printed sign, as wide as a plus.
const minus = "\u2212"

// printed is a sentence with the printed minus sign.
func printed(s string) string { return strings.ReplaceAll(s, "-", minus) }
