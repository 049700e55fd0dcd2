package task

import (
	"fmt"
	"regexp"

	"evenhand/standards/words"
)

// Where asks where one shape is, seen from another: "where: circle above square".
type Where struct {
	Shape, Other Form
	Place        string // one of whereWords
}

// LookWhere is two shapes, and places to choose from.
const LookWhere Look = "where"

var _ = ownLook(LookWhere, "two shapes with places to choose from", 0)

// whereWords are where things are, and how children get them wrong: the opposite.
var whereWords = map[string]struct{ opposite, es string }{
	"above": {"below", "arriba"}, "below": {"above", "abajo"}, "beside": {"", "al lado"},
	"in front of": {"behind", "delante"}, "behind": {"in front of", "detrás"},
}

var wherePattern = regexp.MustCompile(`^where[:?]? ?(circle|triangle|square|rectangle|hexagon) ` +
	`(above|below|beside|in front of|behind) (circle|triangle|square|rectangle|hexagon)$`)

func readWhere(text string) (Task, error) {
	m := wherePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	if m[1] == m[3] {
		return nil, words.Errorf("%q has two shapes of one name; choose two, as in where: circle above square", text)
	}
	return Where{Form(m[1]), Form(m[3]), m[2]}, nil
}

func (t Where) String() string { return fmt.Sprintf("where: %s %s %s", t.Shape, t.Place, t.Other) }

// Key is the place.
func (t Where) Key() string { return t.Place }

// placeWords are what people write for places.
var placeWords = map[string]string{
	"above": "above", "over": "above", "on top": "above", "up": "above", "arriba": "above", "encima": "above",
	"below": "below", "under": "below", "beneath": "below", "down": "below", "abajo": "below", "debajo": "below",
	"beside": "beside", "next to": "beside", "al lado": "beside", "junto": "beside", "by the side": "beside",
	"in front of": "in front of", "in front": "in front of", "front": "in front of", "delante": "in front of", "enfrente": "in front of",
	"behind": "behind", "in back": "behind", "back": "behind", "detras": "behind", "atras": "behind",
}

// Judge accepts the word, also in Spanish.
func (t Where) Judge(answer string) bool {
	said, ok := oneWord(answer, placeWords)
	return ok && said == t.Place
}

// Possible takes one of the words.
func (t Where) Possible(answer string) bool { _, ok := oneWord(answer, placeWords); return ok }

// Prompt asks where, without saying it.
func (t Where) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("¿Dónde está el %s, visto desde el %s?", forms[t.Shape].name[1], forms[t.Other].name[1])
	}
	return fmt.Sprintf("Where is the %s, seen from the %s?", t.Shape, t.Other)
}

// Short tells the place.
func (t Where) Short(lang string) string { return shown(t, lang, t.AnswerIn(t.Place, lang)) }

// Traits of a place.
func (t Where) Traits() Traits {
	var ts Traits
	ts[Asks] = "where"
	if t.Place == "in front of" || t.Place == "behind" {
		ts[Asks] = "where, one covered"
	}
	return ts
}

// Codes of a place: kindergarten.
func (t Where) Codes() []Code { return []Code{"K.G.A.1"} }

var placesMixed = newMisstep("opposite place",
	"says the opposite place, as if seen from the other shape",
	"dice el lugar opuesto, como visto desde la otra figura",
	"put a block above, below and behind a box while saying the words",
	"poner un bloque arriba, abajo y detrás de una caja mientras se dicen las palabras", "common practice")

// Missteps of a place.
func (t Where) Missteps() []Misstep {
	return gather(t, []slip{{placesMixed, whereWords[t.Place].opposite}})
}

// Clashes of a place: the two shapes.
func (t Where) Clashes() []string {
	return []string{fmt.Sprintf("where:%s,%s", min(t.Shape, t.Other), max(t.Shape, t.Other))}
}

// Fingerprint of a place is its text.
func (t Where) Fingerprint() string { return t.String() }

// Looks of a place.
func (t Where) Looks() []Look { return []Look{LookWhere} }

// Offers are the places.
func (t Where) Offers() []string {
	return []string{"above", "below", "beside", "in front of", "behind"}
}

// AnswerIn is the place.
func (t Where) AnswerIn(answer, lang string) string {
	if row, ok := whereWords[answer]; ok && lang == "es" {
		return row.es
	}
	return answer
}
