package task

import (
	"fmt"
	"strings"
)

// What other rooms ask of a task beyond Task. A kind fills a face where the usual answer does not
// do; the functions here give the usual one.

// FixedAnswers are the few answers that a task itself offers, such as true and false, in
// their usual order; nil where the answer is a number, a time or words to find. With so few
// answers a form of many such tasks can't do without two of the same key.
func FixedAnswers(t Task) []string {
	if few, ok := t.(interface{ Offers() []string }); ok {
		return few.Offers()
	}
	return nil
}

// Fills are the right values for the places to fill in, one for each; usually the key alone.
func Fills(t Task) []string {
	if several, ok := t.(interface{ Fills() []string }); ok {
		return several.Fills()
	}
	return []string{t.Key()}
}

// Short is what a task asks as a teacher would say it in a line, with all that only its picture
// shows: two tasks that ask for different things are told apart by it. Usually it is the prompt.
func Short(t Task, lang string) string {
	if short, ok := t.(interface{ Short(lang string) string }); ok {
		return short.Short(lang)
	}
	return t.Prompt(lang)
}

// shown is a prompt with what the picture shows behind it.
func shown(t Task, lang string, picture any) string {
	return fmt.Sprintf("%s (%v)", t.Prompt(lang), picture)
}

// alone is a prompt without what leads to its question, "Write the missing number".
func alone(t Task, lang string) string {
	_, question, _ := strings.Cut(t.Prompt(lang), ": ")
	return question
}

// Written is a task as it stands on paper in numbers and signs, "?" for each blank; false where it
// is asked in words or by a picture.
func Written(t Task) (sentence string, ok bool) {
	written, ok := t.(interface{ Written() string })
	if !ok {
		return "", false
	}
	return written.Written(), true
}
