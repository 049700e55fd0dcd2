package task

import (
	"strconv"
	"strings"
)

// telling is a story with places for its words, in English and Spanish: {who} and
// {other} are the children, {1} {2} {3} the numbers of the sentence in order, its
// result last; the rest are the words of the thing.
type telling struct{ en, es string }

// countedTellings tell of things to count.
var countedTellings = map[StorySituation]telling{
	AddToResult: {
		"{who} has {1} {things}. Then {who} {gets} {2} more. How many {things} does {who} have now?",
		"{who} tiene {1} {things}. Luego {gets} {2} más. ¿{Cuántas} tiene ahora?"},
	AddToChange: {
		"{who} has {1} {things}. Then {who} {gets} some more. Now {who} has {3} {things}. How many did {who} {get}?",
		"{who} tiene {1} {things}. Luego {gets} más. Ahora tiene {3}. ¿{Cuántas} {get} {who}?"},
	AddToStart: {
		"{who} has some {things}. Then {who} {gets} {2} more. Now {who} has {3} {things}. How many did {who} have at first?",
		"{who} tiene {unas} {things}. Luego {gets} {2} más. Ahora tiene {3}. ¿{Cuántas} tenía al principio?"},
	TakeFromResult: {
		"{who} has {1} {things}. Then {who} {loses} {2}. How many {things} are left?",
		"{who} tiene {1} {things}. Luego {loses} {2}. ¿{Cuántas} le quedan?"},
	TakeFromChange: {
		"{who} has {1} {things}. Then {who} {loses} some. Now {who} has {3} {things}. How many did {who} {lose}?",
		"{who} tiene {1} {things}. Luego {loses} {unas}. Ahora tiene {3}. ¿{Cuántas} {lose} {who}?"},
	TakeFromStart: {
		"{who} has some {things}. Then {who} {loses} {2}. Now {who} has {3} {things}. How many did {who} have at first?",
		"{who} tiene {unas} {things}. Luego {loses} {2}. Ahora tiene {3}. ¿{Cuántas} tenía al principio?"},
	TogetherTotal: {
		"{who} sees {1} {kind} {things}. {who} sees {2} {other kind} {things}. How many {things} does {who} see in all?",
		"{who} ve {1} {things} {kind}. Ve {2} {things} {other kind}. ¿{Cuántas} ve en total?"},
	TogetherAddend: {
		"{who} sees {3} {things}. There are {1} {kind} ones. The rest are {other kind}. How many are {other kind}?",
		"{who} ve {3} {things}. Hay {1} {kind}. {Las} demás son {other kind}. ¿{Cuántas} son {other kind}?"},
	TogetherBoth: {
		"{who} has {3} {things}. Some are {kind} and some are {other kind}. How many of each can there be?",
		"{who} tiene {3} {things}. {Unas} son {kind} y {otras} son {other kind}. ¿{Cuántas} puede haber de cada tipo?"},
	CompareDifference: {
		"{who} has {1} {things}. {other} has {2}. How many more does {who} have?",
		"{who} tiene {1} {things}. {other} tiene {2}. ¿{Cuántas} más tiene {who}?"},
	CompareBigger: {
		"{other} has {1} {things}. {who} has {2} more than {other}. How many does {who} have?",
		"{other} tiene {1} {things}. {who} tiene {2} más que {other}. ¿{Cuántas} tiene {who}?"},
	CompareBiggerLess: {
		"{other} has {1} {things}. {other} has {2} fewer than {who}. How many does {who} have?",
		"{other} tiene {1} {things}. {other} tiene {2} menos que {who}. ¿{Cuántas} tiene {who}?"},
	CompareSmaller: {
		"{who} has {1} {things}. {other} has {2} fewer than {who}. How many does {other} have?",
		"{who} tiene {1} {things}. {other} tiene {2} menos que {who}. ¿{Cuántas} tiene {other}?"},
	CompareSmallerMore: {
		"{who} has {1} {things}. {who} has {2} more than {other}. How many does {other} have?",
		"{who} tiene {1} {things}. {who} tiene {2} más que {other}. ¿{Cuántas} tiene {other}?"},
}

// measuredTellings tell of lengths in centimetres.
var measuredTellings = map[StorySituation]telling{
	AddToResult: {
		"{who} has a {things} of {1} cm. Then {who} {gets} {2} cm more. How long is the {things} now?",
		"{who} tiene {una} {things} de {1} cm. Luego le {gets} {2} cm más. ¿Cuántos cm mide ahora?"},
	AddToChange: {
		"{who} has a {things} of {1} cm. Then {who} {gets} some more. Now the {things} is {3} cm long. How many cm did {who} {get}?",
		"{who} tiene {una} {things} de {1} cm. Luego le {gets} más. Ahora mide {3} cm. ¿Cuántos cm le {get}?"},
	AddToStart: {
		"{who} has a {things}. Then {who} {gets} {2} cm more. Now the {things} is {3} cm long. How long was it at first?",
		"{who} tiene {una} {things}. Luego le {gets} {2} cm más. Ahora mide {3} cm. ¿Cuántos cm medía al principio?"},
	TakeFromResult: {
		"{who} has a {things} of {1} cm. Then {who} {loses} {2} cm. How long is the {things} now?",
		"{who} tiene {una} {things} de {1} cm. Luego le {loses} {2} cm. ¿Cuántos cm mide ahora?"},
	TakeFromChange: {
		"{who} has a {things} of {1} cm. Then {who} {loses} some. Now the {things} is {3} cm long. How many cm did {who} {lose}?",
		"{who} tiene {una} {things} de {1} cm. Luego le {loses} un trozo. Ahora mide {3} cm. ¿Cuántos cm le {lose}?"},
	TakeFromStart: {
		"{who} has a {things}. Then {who} {loses} {2} cm. Now the {things} is {3} cm long. How long was it at first?",
		"{who} tiene {una} {things}. Luego le {loses} {2} cm. Ahora mide {3} cm. ¿Cuántos cm medía al principio?"},
	TogetherTotal: {
		"{who} has a {things} of {1} cm. {who} also has one of {2} cm. How long are both in all?",
		"{who} tiene {una} {things} de {1} cm. También tiene {otra} de {2} cm. ¿Cuántos cm miden en total?"},
	TogetherAddend: {
		"Two bits of {things} are {3} cm long in all. One is {1} cm long. How long is the other?",
		"Dos trozos de {things} miden {3} cm en total. Uno mide {1} cm. ¿Cuántos cm mide el otro?"},
	CompareDifference: {
		"{who}'s {things} is {1} cm long. {other}'s is {2} cm long. How much longer is {who}'s?",
		"{La} {things} de {who} mide {1} cm. {La} {things} de {other} mide {2} cm. ¿Cuántos cm más mide {la} de {who}?"},
	CompareBigger: {
		"{other}'s {things} is {1} cm long. {who}'s is {2} cm longer. How long is {who}'s?",
		"{La} {things} de {other} mide {1} cm. {La} de {who} mide {2} cm más. ¿Cuántos cm mide {la} de {who}?"},
	CompareBiggerLess: {
		"{other}'s {things} is {1} cm long. It is {2} cm shorter than {who}'s. How long is {who}'s?",
		"{La} {things} de {other} mide {1} cm. Mide {2} cm menos que {la} de {who}. ¿Cuántos cm mide {la} de {who}?"},
	CompareSmaller: {
		"{who}'s {things} is {1} cm long. {other}'s is {2} cm shorter. How long is {other}'s?",
		"{La} {things} de {who} mide {1} cm. {La} de {other} mide {2} cm menos. ¿Cuántos cm mide {la} de {other}?"},
	CompareSmallerMore: {
		"{who}'s {things} is {1} cm long. It is {2} cm longer than {other}'s. How long is {other}'s?",
		"{La} {things} de {who} mide {1} cm. Mide {2} cm más que {la} de {other}. ¿Cuántos cm mide {la} de {other}?"},
}

// countedSteps are the parts of a two-step story: the first step, the second step
// (each as something got and as something lost), and the opening with the question.
var countedSteps = [3][2]telling{
	{{"{who} {gets} {2} more.", "Luego {gets} {2} más."}, {"{who} {loses} {2}.", "Luego {loses} {2}."}},
	{{"Then {who} {gets} {3} more.", "Después {gets} {3} más."}, {"Then {who} {loses} {3}.", "Después {loses} {3}."}},
	{{"{who} has {1} {things}.", "{who} tiene {1} {things}."}, {"How many {things} does {who} have now?", "¿{Cuántas} tiene ahora?"}},
}

var measuredSteps = [3][2]telling{
	{{"{who} {gets} {2} cm more.", "Luego le {gets} {2} cm más."}, {"{who} {loses} {2} cm.", "Luego le {loses} {2} cm."}},
	{{"Then {who} {gets} {3} cm more.", "Después le {gets} {3} cm más."}, {"Then {who} {loses} {3} cm.", "Después le {loses} {3} cm."}},
	{{"{who} has a {things} of {1} cm.", "{who} tiene {una} {things} de {1} cm."}, {"How long is the {things} now?", "¿Cuántos cm mide ahora?"}},
}

// telling is the story's wording before its words are filled in.
func (t Story) telling() telling {
	measured := t.thing().Measured
	if t.Situation != TwoSteps {
		if measured {
			return measuredTellings[t.Situation]
		}
		return countedTellings[t.Situation]
	}
	steps := countedSteps
	if measured {
		steps = measuredSteps
	}
	parts := []telling{steps[2][0], steps[0][signIndex(t.Sentence.Minus[1])], steps[1][signIndex(t.Sentence.Minus[2])], steps[2][1]}
	var whole telling
	for _, part := range parts {
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
	thing, told := t.thing(), t.telling()
	words, text := thing.En, told.en
	if lang == "es" {
		words, text = thing.Es, told.es
	}
	numbers := append(t.Sentence.Operands(), t.Sentence.Result())
	pairs := []string{
		"{who}", t.Name, "{other}", t.Other,
		"{1}", strconv.Itoa(numbers[0]), "{2}", strconv.Itoa(numbers[1]), "{3}", strconv.Itoa(numbers[2]),
		"{things}", words.Things, "{gets}", words.Gets, "{get}", words.Get, "{loses}", words.Loses, "{lose}", words.Lose,
		"{kind}", words.Kinds[0], "{other kind}", words.Kinds[1],
	}
	return strings.NewReplacer(append(pairs, genderWords(thing.Feminine)...)...).Replace(text)
}

// genderWords are the small Spanish words that go with the thing.
func genderWords(feminine bool) []string {
	list := []string{"{Cuántas}", "Cuántos", "{unas}", "unos", "{Unas}", "Unos", "{otras}", "otros", "{Las}", "Los", "{La}", "El", "{la}", "el", "{una}", "un", "{otra}", "otro"}
	if feminine {
		for i := 0; i < len(list); i += 2 {
			list[i+1] = strings.Trim(list[i], "{}")
		}
	}
	return list
}

// Unit is what the answer counts: "shells", "cm".
func (t Story) Unit(lang string) string {
	switch thing := t.thing(); {
	case thing.Measured:
		return "cm"
	case lang == "es":
		return thing.Es.Things
	default:
		return thing.En.Things
	}
}
