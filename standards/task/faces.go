package task

import (
	"fmt"
	"slices"
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

// Said is what a task asks as it is read aloud, without the places to fill in that only print has.
// Usually it is the prompt.
func Said(t Task, lang string) string {
	if said, ok := t.(interface{ Said(lang string) string }); ok {
		return said.Said(lang)
	}
	return t.Prompt(lang)
}

// withoutPlaces is a question without the place for a number behind each name: "A ?, B ?" is "A, B.".
func withoutPlaces(question string) string { return strings.ReplaceAll(question, " ?", "") + "." }

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

// AnswerIn is a right or wrong answer to the task, as its key and missteps give it, in the
// language ("en" or "es"); itself where it is no word and no time.
func AnswerIn(t Task, answer, lang string) string {
	if worded, ok := t.(interface {
		AnswerIn(answer, lang string) string
	}); ok {
		return worded.AnswerIn(answer, lang)
	}
	return answer
}

// inSpanish gives the answer in Spanish where that is asked for and known.
func inSpanish(answer, lang string, spanish map[string]string) string {
	if said, ok := spanish[answer]; ok && lang == "es" {
		return said
	}
	return answer
}

// Offered is an answer as it stands among others to choose from; usually as it is.
func Offered(t Task, answer string) string {
	if offers, ok := t.(interface{ Offered(answer string) string }); ok {
		return offers.Offered(answer)
	}
	return answer
}

// Accepted are ways to write the right answer, the usual one first, for a machine that compares
// texts and knows no more; all of them are right. Usually it is the key alone.
func Accepted(t Task, lang string) []string {
	several, ok := t.(interface{ Accepted(lang string) []string })
	if !ok {
		return []string{t.Key()}
	}
	var list []string
	for _, text := range several.Accepted(lang) {
		if t.Judge(text) && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return list
}

// ReadIn is a task as a person reads it in a list: its plain text, or in words where that is only
// for the program.
func ReadIn(t Task, lang string) string {
	if told, ok := t.(interface{ ReadIn(lang string) string }); ok {
		return told.ReadIn(lang)
	}
	return t.String()
}

// Judged is the statement or number that the words offered are about: "7 = 8 - 1" with true and
// false; false for other tasks.
func Judged(t Task) (statement string, ok bool) {
	judged, ok := t.(interface{ Judged() string })
	if !ok {
		return "", false
	}
	return judged.Judged(), true
}

// Answers says what the answers to a task are, as far as programs that people type them into
// change them.
type Answers int

// What answers are.
const (
	Numbers Answers = iota // or words, signs, sentences
	OneTime
	SeveralTimes
	Money
	Drawn // on the sheet; typed in as what the drawing shows
)

// AnswersOf says what the answers to a task are; nil has Numbers.
func AnswersOf(t Task) Answers {
	if a, ok := t.(interface{ Answers() Answers }); ok {
		return a.Answers()
	}
	return Numbers
}
