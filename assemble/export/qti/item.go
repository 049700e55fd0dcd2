package qti

import (
	"fmt"
	"strconv"
	"strings"

	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards/task"
)

// NewItem is an item of a bank as a question on a screen, in the look that the item has and in
// the language "en" or "es".
func NewItem(item bank.Item, lang string) (Item, error) {
	it := Item{
		ID:      "item-" + item.ID, // a name in XML may not begin with a digit
		BankID:  item.ID,
		Lang:    lang,
		Task:    item.Task,
		Skill:   item.Skill,
		Codes:   item.Codes,
		Band:    item.Difficulty().Band(),
		Seconds: item.Seconds,
	}
	question := sheet.Question{Number: 1, Look: item.Look, Text: item.OwnWords(lang), Key: item.Key}
	a := byHand(item, lang)
	if asked, err := task.Parse(item.Task); err == nil {
		question.Task = asked
		a = answerOf(question, lang)
	}
	if len(a.stem) == 0 {
		return Item{}, fmt.Errorf("item %s has no question in any language; write one with evenhand revise", item.ID)
	}
	title, picture, err := pictured(question, lang)
	if err != nil {
		return Item{}, fmt.Errorf("item %s: %w", item.ID, err)
	}
	it.Title, it.Picture = title, picture
	it.Stem, it.Responses, it.Scoring, it.Rubric = a.stem, a.responses, a.scoring, a.rubric
	return it, nil
}

// longest is the longest key, in characters, that a machine compares; what is longer, a person
// reads.
const longest = 40

// byHand is the answer to an item whose mathematics is not understood: its key, a number or
// words.
func byHand(item bank.Item, lang string) answer {
	question := firstOf(item.Question(lang), item.Question("en"), item.Question("es"))
	stem, key := lines(question), plain(item.Key)
	if len(stem) == 0 {
		return answer{}
	}
	if n, err := strconv.Atoi(key); err == nil && strconv.Itoa(n) == key {
		r := numbers(key)
		return answer{stem: append(stem, []Part{{Response: only}}), responses: r, scoring: Scoring{By: ByMatch}}
	}
	if key == "" || len([]rune(key)) > longest || strings.Contains(item.Key, "\n") {
		return answer{stem, []Response{{ID: only, Kind: Text}}, Scoring{By: ByPerson}, key}
	}
	r := Response{ID: only, Kind: Words, Correct: []string{key}, Accepted: []string{key}}
	return answer{stem: append(stem, []Part{{Response: only}}), responses: []Response{r}, scoring: Scoring{By: ByMap}}
}

// plain is a text in one line.
func plain(text string) string {
	return strings.Join(strings.Fields(strings.Map(printable, text)), " ")
}

func firstOf(texts ...string) string {
	for _, text := range texts {
		if text != "" {
			return text
		}
	}
	return ""
}
