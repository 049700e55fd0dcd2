package qti

import (
	"fmt"
	"strconv"
	"strings"

	"evenhand/assemble/sheet"
	"evenhand/standards/task"
)

// answer is how a question is answered: what stands there to read, the responses, and how they
// are scored.
type answer struct {
	stem      [][]Part
	responses []Response
	scoring   Scoring
	rubric    string
}

// only is the ID of a response that is the only one; the standard's templates ask for it.
const only = "RESPONSE"

// answerOf chooses the way to answer a task. What has a few possible answers is a
// choice, as has the look of one; clocks to join are a match, hands to draw are a drawing that a
// person marks, and all else is typed: a place for each number.
func answerOf(q sheet.Question, lang string) answer {
	asked, prompt := q.Task, asking(q, lang)
	if options, at, ok := task.Options(asked); ok && q.Look == task.LookChoice {
		for i := range options {
			options[i] = task.Offered(asked, options[i])
		}
		return choice(prompt, options[at], lettered(options[:]))
	}
	if fixed := task.FixedAnswers(asked); fixed != nil {
		return choice(prompt, optionID(asked.Key()), closed(asked, fixed, lang))
	}
	if task.AnswersOf(asked) == task.Drawn {
		return answer{lines(prompt), []Response{{ID: only, Kind: Drawing}}, Scoring{By: ByPerson}, asked.Key()}
	}
	switch t := asked.(type) {
	case task.Match:
		return match(prompt, t, lang)
	case task.Clock:
		if t.Verb == task.Draw {
			return answer{lines(prompt), []Response{{ID: only, Kind: Drawing}}, Scoring{By: ByPerson}, t.Key()}
		}
	case task.Pairs:
		return pairs(prompt, t)
	case task.Story:
		if t.Situation == task.TogetherBoth {
			return parts(prompt, t)
		}
	}
	return typed(prompt, asked, lang)
}

// asking is the question in words. Words of the item's own stand in place of a story or of a
// question in words, and before what else has to be read.
func asking(q sheet.Question, lang string) string {
	prompt := spoken(q.Task.Prompt(lang))
	if _, alone, found := strings.Cut(prompt, ": "); found && q.Look == task.LookChoice {
		prompt = alone // nothing is written there
	}
	if q.Text == "" {
		return prompt
	}
	switch q.Task.(type) {
	case task.Story, task.MoreLess:
		return spoken(q.Text)
	}
	if q.Look == task.LookWords {
		return spoken(q.Text)
	}
	return spoken(q.Text) + "\n" + prompt
}

// typed asks for numbers, one at each blank of the prompt, or for words.
func typed(prompt string, asked task.Task, lang string) answer {
	keys := task.Fills(asked)
	if _, err := strconv.Atoi(keys[0]); err != nil {
		r := Response{ID: only, Kind: Words, Accepted: task.Accepted(asked, lang)}
		r.Correct = r.Accepted[:1:1]
		return answer{stem: filled(prompt, r), responses: []Response{r}, scoring: Scoring{By: ByMap}}
	}
	responses := numbers(keys...)
	a := answer{stem: filled(prompt, responses...), responses: responses, scoring: Scoring{By: ByMatch}}
	if len(responses) > 1 {
		a.scoring = Scoring{ByRule, allCorrect(responses)}
	}
	return a
}

// numbers are responses with these right values.
func numbers(keys ...string) []Response {
	if len(keys) == 1 {
		return []Response{{ID: only, Kind: Number, Correct: keys}}
	}
	list := make([]Response, len(keys))
	for i, key := range keys {
		list[i] = Response{ID: fmt.Sprintf("%s%d", only, i+1), Kind: Number, Correct: []string{key}}
	}
	return list
}

// pairs asks twice for two numbers that make the whole. Any two pairs are right; as they make the
// same whole, they are different pairs when a number of the second is not the
// first's.
func pairs(prompt string, t task.Pairs) answer {
	keys := strings.Split(strings.ReplaceAll(t.Key(), ", ", " + "), " + ")
	r := numbers(keys...)
	a, b, c, d := variable(r[0].ID), variable(r[1].ID), variable(r[2].ID), variable(r[3].ID)
	rules := []Rule{
		op("equal", op("sum", a, b), whole(t.Whole)), op("equal", op("sum", c, d), whole(t.Whole)),
		op("not", op("equal", a, c)), op("not", op("equal", a, d)),
	}
	for _, n := range []Rule{a, b, c, d} {
		rules = append(rules, op("gte", n, whole(0)))
	}
	stem := lines(prompt)
	for i := range 2 {
		stem = append(stem, []Part{
			{Text: fmt.Sprintf("%d = ", t.Whole)}, {Response: r[2*i].ID}, {Text: " + "}, {Response: r[2*i+1].ID},
		})
	}
	return answer{stem: stem, responses: r, scoring: Scoring{ByRule, op("and", rules...)}}
}

// parts asks for two numbers of at least 1 that make the whole of a story.
func parts(prompt string, t task.Story) answer {
	r := numbers(strings.Split(t.Key(), " + ")...)
	a, b := variable(r[0].ID), variable(r[1].ID)
	rule := op("and", op("equal", op("sum", a, b), whole(t.Sentence.Result())), op("gte", a, whole(1)), op("gte", b, whole(1)))
	stem := append(lines(prompt), []Part{{Response: r[0].ID}, {Text: " + "}, {Response: r[1].ID}})
	return answer{stem: stem, responses: r, scoring: Scoring{ByRule, rule}}
}

// choice asks for one of some options; key is the text or the ID of the right one.
func choice(prompt, key string, options []Option) answer {
	r := Response{ID: only, Kind: Choice, Options: options}
	for _, option := range options {
		if option.ID == key || option.Text == key {
			r.Correct = []string{option.ID}
		}
	}
	return answer{stem: lines(prompt), responses: []Response{r}, scoring: Scoring{By: ByMatch}}
}

// signNames are the identifiers of answers that are signs; QTI takes letters there.
var signNames = map[string]string{"<": "less", "=": "equal", ">": "greater"}

// closed are the few answers that a task itself offers, named after their English word.
func closed(asked task.Task, fixed []string, lang string) []Option {
	list := make([]Option, len(fixed))
	for i, answer := range fixed {
		list[i] = Option{ID: optionID(answer), Text: task.AnswerIn(asked, answer, lang)}
	}
	return list
}

// optionID is an answer as a name in XML, which begins with a letter and holds no space.
func optionID(answer string) string {
	if name, ok := signNames[answer]; ok {
		return name
	}
	name := strings.ReplaceAll(answer, " ", "-")
	if name[0] >= '0' && name[0] <= '9' {
		name = "about-" + name
	}
	return name
}

// lettered are options named A, B, C.
func lettered(texts []string) []Option {
	list := make([]Option, len(texts))
	for i, text := range texts {
		list[i] = Option{ID: string(rune('A' + i)), Text: text}
	}
	return list
}
