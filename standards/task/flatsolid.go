package task

import "regexp"

// FlatSolid asks whether a shape is flat or solid: "flat or solid: cone".
type FlatSolid struct{ Figure Figure }

// LookFlatSolid is a shape and two words to choose from.
const LookFlatSolid Look = "flat-solid"

var _ = ownLook(LookFlatSolid, "shape with flat and solid to choose from", 0)

var flatSolidPattern = regexp.MustCompile(`^(?:flat or solid|solid or flat|plana o sólida)[:?] ?(.+)$`)

func readFlatSolid(text string) (Task, error) {
	m := flatSolidPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	f, err := readFigure(m[1])
	if err != nil {
		return nil, err
	}
	return FlatSolid{f}, nil
}

func (t FlatSolid) String() string { return "flat or solid: " + t.Figure.String() }

// Key is "flat" or "solid".
func (t FlatSolid) Key() string {
	if t.Figure.Solid() {
		return "solid"
	}
	return "flat"
}

// flatWords are what people write for flat and solid.
var flatWords = map[string]string{
	"flat": "flat", "f": "flat", "plane": "flat", "2d": "flat", "plana": "flat", "plano": "flat", "2 d": "flat",
	"2 - d": "flat", "two - dimensional": "flat", "two dimensional": "flat",
	"solid": "solid", "s": "solid", "3d": "solid", "3 d": "solid",
	"3 - d": "solid", "three - dimensional": "solid", "three dimensional": "solid",
	"solida": "solid", "solido": "solid",
}

// Judge accepts the word, also in Spanish.
func (t FlatSolid) Judge(answer string) bool {
	said, ok := oneWord(answer, flatWords)
	return ok && said == t.Key()
}

// Possible takes one of the words.
func (t FlatSolid) Possible(answer string) bool { _, ok := oneWord(answer, flatWords); return ok }

// Prompt asks which it is.
func (t FlatSolid) Prompt(lang string) string {
	if lang == "es" {
		return "¿Es una figura plana o sólida?"
	}
	return "Is this shape flat or solid?"
}

// Short tells the shape.
func (t FlatSolid) Short(lang string) string { return shown(t, lang, t.Figure.short(lang)) }

// Traits of flat and solid: a solid that shows a flat face to the front, or a round flat shape, misleads.
func (t FlatSolid) Traits() Traits {
	var ts Traits
	ts[Asks] = "flat or solid"
	form := t.Figure.Form
	ts.setFlag(Misleads, form == "sphere" || form == "circle" || !t.Figure.plainly())
	return ts
}

// Codes of flat and solid: kindergarten.
func (t FlatSolid) Codes() []Code { return []Code{"K.G.A.3"} }

var flatMixed = newMisstep("flat and solid mixed up",
	"goes by the outline on the paper, or takes the words flat and solid for each other",
	"se guía por el contorno en el papel o confunde las palabras plana y sólida",
	"trace a block: what is on the paper is flat, what is in the hand is solid",
	"trazar el contorno de un bloque: lo del papel es plano, lo de la mano es sólido", "common practice")

// Missteps of flat and solid.
func (t FlatSolid) Missteps() []Misstep {
	other := map[string]string{"flat": "solid", "solid": "flat"}
	return gather(t, []slip{{flatMixed, other[t.Key()]}})
}

// Clashes of flat and solid: the form.
func (t FlatSolid) Clashes() []string { return []string{"flat:" + string(t.Figure.Form)} }

// Fingerprint of flat and solid is its text.
func (t FlatSolid) Fingerprint() string { return t.String() }

// Looks of flat and solid.
func (t FlatSolid) Looks() []Look { return []Look{LookFlatSolid} }

// Offers are the two words.
func (t FlatSolid) Offers() []string { return []string{"flat", "solid"} }

// AnswerIn is flat or solid.
func (t FlatSolid) AnswerIn(answer, lang string) string {
	return inSpanish(answer, lang, map[string]string{"flat": "plana", "solid": "sólida"})
}
