package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// A question to choose from has its choices in columns of their own (A, B, C, D or
// Choice 1 to 4) or in one cell, and a key that is a letter, a number or the choice
// itself.

var choiceHeading = regexp.MustCompile(`^(?:(?:answer )?(?:choice|option|opcion|alternative|alternativa|auswahl|` +
	`choix|reponse|antwort|answer|respuesta) )?([a-h]|[1-8])$`)

// headChoices finds columns headed A, B, C or Choice 1, Choice 2, one after the other.
func headChoices(columns []Column) {
	for start := 0; start < len(columns); start++ {
		run := 0
		for start+run < len(columns) && columns[start+run].Meaning == "" && choiceNumber(columns[start+run].Heading) == run+1 {
			run++
		}
		if run < 2 || sideBySide(columns, start) {
			continue
		}
		for i := start; i < start+run; i++ {
			columns[i].Meaning, columns[i].Why = Choice, "one of the choices"
		}
	}
}

// sideBySide says whether "Answer 1" and its like stand for answers to questions of the
// same numbers, not for choices.
func sideBySide(columns []Column, at int) bool {
	words := strings.Fields(plainWords(columns[at].Heading))
	return len(words) == 2 && understand(words[0]).meaning == Answer && words[1] == "1"
}

// choiceNumber is the number that a heading gives a choice, or 0.
func choiceNumber(heading string) int {
	if len(heading) > longestHeadingBytes {
		return 0
	}
	m := choiceHeading.FindStringSubmatch(plainWords(heading))
	if m == nil {
		return 0
	}
	return ordinal(m[1])
}

// ordinal reads a choice's letter or number, A or 1 being the first; 0 for neither.
func ordinal(text string) int {
	if n, err := strconv.Atoi(text); err == nil {
		return n
	}
	if text = strings.ToUpper(text); len(text) == 1 && text[0] >= 'A' && text[0] <= 'H' {
		return int(text[0]-'A') + 1
	}
	return 0
}

var (
	choiceMark  = regexp.MustCompile(`(?:^|[\s,;|])\(?([A-Ha-h]|[1-8])[).:]\s*`)
	choiceBreak = regexp.MustCompile(`\s*[\n;|]\s*|\s*,\s+|\s+/\s+`)
	keyMark     = regexp.MustCompile(`^\(?([A-Ha-h]|[1-8])\)?[).:]?$`)
	keyAndText  = regexp.MustCompile(`^\(?([A-Ha-h]|[1-8])[).:]\s*(\S.*)$`)
)

// choices are the choices of a row, in order; none for other rows.
func (j *judge) choices(rec record) []string {
	var list []string
	for i, c := range j.list.Columns {
		if c.Meaning == Choice {
			list = append(list, plainText(rec.cell(i)))
		}
	}
	for len(list) > 0 && list[len(list)-1] == "" {
		list = list[:len(list)-1]
	}
	if len(list) > 0 {
		return list
	}
	return splitChoices(plainText(j.cell(rec, Choices)))
}

// splitChoices takes a cell such as "A) 11 B) 12 C) 13", "11; 12; 13" or "11 / 12" apart.
func splitChoices(cell string) []string {
	if cell == "" || len(cell) > longestQuestion {
		return nil
	}
	marks := choiceMark.FindAllStringSubmatchIndex(cell, -1)
	inOrder := len(marks) > 1
	for i, m := range marks {
		inOrder = inOrder && ordinal(cell[m[2]:m[3]]) == i+1
	}
	if !inOrder {
		return choiceBreak.Split(cell, -1)
	}
	var list []string
	for i, m := range marks {
		end := len(cell)
		if i+1 < len(marks) {
			end = marks[i+1][0]
		}
		list = append(list, strings.Trim(cell[m[1]:end], " ,;|\n"))
	}
	return list
}

// chosen is the choice that a key points to, counted from 0; ok is false when the key is
// no letter or number of a choice. A number may also be the answer itself: then what
// most rows of the list mean decides.
func (j *judge) chosen(key string, choices []string) (at int, ok bool) {
	if m := keyAndText.FindStringSubmatch(key); m != nil {
		if at := ordinal(m[1]) - 1; at < len(choices) && sameText(choices[at], m[2]) {
			return at, true
		}
	}
	m := keyMark.FindStringSubmatch(key)
	if m == nil || len(choices) < 2 {
		return 0, false
	}
	at = ordinal(m[1]) - 1
	if at < 0 || at >= len(choices) || choices[at] == "" {
		return 0, false
	}
	if _, err := strconv.Atoi(m[1]); err == nil {
		return at, j.keysPoint
	}
	return at, saidBy(key, choices) < 0
}

// saidBy is the first choice that a key is in its own words, counted from 0; -1 for none.
func saidBy(key string, choices []string) int {
	return slices.IndexFunc(choices, func(c string) bool { return sameText(c, key) })
}

// readKeys finds out whether numbers in the answer column of a list with choices point to
// choices or say the answer: more keys can be read in only one of these ways, or more
// tasks are answered rightly in it.
func (j *judge) readKeys() {
	points, says := 0, 0
	for _, rec := range j.list.rows[:min(len(j.list.rows), sniffedRecords)] {
		choices, key := j.choices(rec), j.cell(rec, Answer)
		n, err := strconv.Atoi(key)
		if err != nil || len(choices) < 2 {
			continue
		}
		could := n >= 1 && n <= len(choices)
		said := saidBy(key, choices) >= 0
		if asked, ok := taskOf(j.cell(rec, Question)); ok {
			could, said = could && judgeAnswer(asked, choices[max(0, min(n, len(choices))-1)]), judgeAnswer(asked, key)
		}
		points += int(truth(could && !said))
		says += int(truth(said && !could))
	}
	j.keysPoint, j.keysSay = points > says, says > points
}

// doubtfulKey says what is not known of a key to a question by hand that may point to a
// choice or be one, or that is none of them.
func (j *judge) doubtfulKey(key string, choices []string) *words.Told {
	at := saidBy(key, choices)
	if _, points := j.chosen(key, choices); key != "" && len(choices) > 1 && !points && at < 0 {
		return words.Sayf("%s is none of the choices, %s; write the letter of the right one",
			shorten(key), shorten(strings.Join(choices, ", ")))
	}
	n, err := strconv.Atoi(key)
	if err != nil || n < 1 || n > len(choices) || at < 0 || sameText(choices[n-1], key) || j.keysPoint || j.keysSay {
		return nil
	}
	return words.Sayf("%s may be choice number %s, which is %s, or the answer %s itself; "+
		"write the choice's letter, %c or %c", key, key, shorten(choices[n-1]), key, 'A'+n-1, 'A'+at)
}

// lettered shows choices under a question.
func lettered(choices []string) string {
	var b strings.Builder
	for i, c := range choices {
		fmt.Fprintf(&b, "\n%c) %s", 'A'+i, c)
	}
	return b.String()
}
