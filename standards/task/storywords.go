package task

import (
	"strconv"
	"strings"
	"unicode"

	"evenhand/standards/words"
)

// telling is a story with places for its words, in English and Spanish: {A} and {B} are the
// children and {he} {him} {his} the first of them; {1} {2} {3} the numbers of the sentence in
// order with their unit, its result last, and {#1} {#2} {#3} the bare numbers; the rest are the
// words of the thing. Where the Spanish words follow the thing's gender they are written as for
// a feminine one, {Cuántas}; {Cuántas u} follows its unit's.
type telling struct{ en, es string }

// steps is a two-step story: it opens, two things happen, each as something got or lost, and
// it asks.
type steps struct {
	open          telling
	first, second [2]telling
	ask           telling
}

// StoryTellings is how many ways there are to tell a story of each situation.
const StoryTellings = 3

// telling is the story's wording before its words are filled in.
func (t Story) telling() telling {
	told, inSteps := countedTellings, countedSteps
	switch t.thing().Kind {
	case words.Measured:
		told, inSteps = measuredTellings, measuredSteps
	case words.Money:
		told, inSteps = moneyTellings, moneySteps
	}
	way := max(0, t.Telling-1)
	if t.Situation != TwoSteps {
		return told[t.Situation][way]
	}
	s := inSteps[way]
	var whole telling
	for _, part := range []telling{s.open, s.first[signIndex(t.Sentence.Minus[1])], s.second[signIndex(t.Sentence.Minus[2])], s.ask} {
		whole.en += " " + part.en
		whole.es += " " + part.es
	}
	return telling{strings.TrimSpace(whole.en), strings.TrimSpace(whole.es)}
}

func signIndex(minus bool) int {
	if minus {
		return 1
	}
	return 0
}

// Prompt is the story.
func (t Story) Prompt(lang string) string {
	thing, text := t.thing(), t.telling().en
	if lang == "es" {
		text = t.telling().es
	}
	said := thing.In(lang)
	who := words.ChildNamed(t.Name)
	pairs := []string{
		"{A}", who.NameIn(lang), "{B}", words.ChildNamed(t.Other).NameIn(lang),
		"{things}", said.Things, "{unit}", said.Things, "{whole}", said.Whole,
		"{gets}", said.Gets, "{get}", said.Get, "{loses}", said.Loses, "{lose}", said.Lose,
		"{kind}", said.Kinds[0], "{kind2}", said.Kinds[1],
	}
	for i, n := range append(t.Sentence.Operands(), t.Sentence.Result()) {
		place := strconv.Itoa(i + 1)
		pairs = append(pairs, "{"+place+"}", thing.Amount(n, lang), "{#"+place+"}", strconv.Itoa(n))
	}
	pairs = append(pairs, pronouns(who.Girl)...)
	pairs = append(pairs, genderWords(thing.Feminine, thing.UnitFeminine)...)
	return strings.NewReplacer(pairs...).Replace(text)
}

// pronouns are the English ones of a child.
func pronouns(girl bool) []string {
	if girl {
		return []string{"{he}", "she", "{He}", "She", "{him}", "her", "{his}", "her"}
	}
	return []string{"{he}", "he", "{He}", "He", "{him}", "him", "{his}", "his"}
}

// masculine are the small Spanish words that go with a thing, as they are for one of that gender,
// by their feminine form.
var masculine = map[string]string{
	"cuántas": "cuántos", "algunas": "algunos", "otras": "otros", "las": "los", "la": "el", "una": "un", "otra": "otro",
}

// genderWords are the small Spanish words that go with the thing and with its unit, with a small
// and with a capital first letter. "The ones" is "los" and "them" is, too.
func genderWords(feminine, unit bool) []string {
	var list []string
	for her, his := range masculine {
		form := his
		if feminine {
			form = her
		}
		list = append(list, "{"+her+"}", form, "{"+capital(her)+"}", capital(form))
	}
	form := "Cuántos"
	if unit {
		form = "Cuántas"
	}
	return append(list, "{Cuántas u}", form)
}

func capital(word string) string {
	letters := []rune(word)
	letters[0] = unicode.ToUpper(letters[0])
	return string(letters)
}

// Unit is what the answer counts: "shells", "cm", "dollars".
func (t Story) Unit(lang string) string { return t.thing().In(lang).Things }
