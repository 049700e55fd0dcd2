package qti

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// acceptedBy are ways to write the right answer of a task that asks for words or a time, the usual
// one first. All are right by the task's own judgement; a machine that compares texts knows
// only these.
func acceptedBy(asked task.Task, lang string) []string {
	var list []string
	for _, text := range candidates(asked, lang) {
		if asked.Judge(text) && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return list
}

func candidates(asked task.Task, lang string) []string {
	switch t := asked.(type) {
	case task.Clock:
		return timeTexts(t, lang)
	case task.WriteNumber:
		return nameTexts(t.Number, lang)
	}
	return []string{asked.Key()}
}

// timeTexts are "4:30", "04:30", "half past 4", "half past four" and the like, in both
// languages; words first where they are asked for.
func timeTexts(t task.Clock, lang string) []string {
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
	if t.Verb == task.Say {
		return append(spoken, digits...)
	}
	return append(digits, spoken...)
}

var digits = regexp.MustCompile(`[0-9]+`)

// named writes the numbers of a text in words.
func named(text, lang string) string {
	return digits.ReplaceAllStringFunc(text, func(number string) string {
		n, _ := strconv.Atoi(number)
		return words.NumberName(n, lang)
	})
}

// nameTexts are a number's names, with and without hyphen and "and".
func nameTexts(n int, lang string) []string {
	var list []string
	for _, l := range []string{lang, "en", "es"} {
		name := words.NumberName(n, l)
		and := strings.Replace(name, "hundred ", "hundred and ", 1)
		list = append(list, name, strings.ReplaceAll(name, "-", " "), and, strings.ReplaceAll(and, "-", " "))
	}
	return list
}
