package task

import (
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// ShapeParts asks how many sides, corners or faces a shape has: "sides of: hexagon at 15".
type ShapeParts struct {
	Figure Figure
	Part   string // sides, corners, faces
}

// LookShapeParts is a shape and a box for a number.
const LookShapeParts Look = "shape-parts"

var _ = ownLook(LookShapeParts, "shape with a box for a number", 0)

var shapePartsPattern = regexp.MustCompile(`^(sides|corners|angles|faces) of:? ?(?:an? )?(.+)$`)

func readShapeParts(text string) (Task, error) {
	m := shapePartsPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	f, err := readFigure(m[2])
	if err != nil {
		return nil, err
	}
	t := ShapeParts{f, m[1]}
	if t.Part == "angles" {
		t.Part = "corners"
	}
	switch {
	case t.Part == "faces" && f.Form != "cube" && f.Form != "rectangular prism":
		return nil, words.Errorf("%q has faces that are not all flat; ask for the faces of a cube or a rectangular prism", text)
	case t.Part != "faces" && f.Sides() == 0:
		return nil, words.Errorf("%q has no straight sides that close; ask for the %s of a triangle, a square or another such shape", text, t.Part)
	}
	return t, nil
}

func (t ShapeParts) String() string { return t.Part + " of: " + t.Figure.String() }

func (t ShapeParts) answer() int {
	if t.Part == "faces" {
		return t.Figure.Faces()
	}
	return t.Figure.Sides()
}

// Key is how many.
func (t ShapeParts) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, in digits or in words.
func (t ShapeParts) Judge(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt, "angles ángulos vértices"))
	return ok && r.equation == nil && r.number == t.answer()
}

// Possible takes a number.
func (t ShapeParts) Possible(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt, "angles ángulos vértices"))
	return ok && r.equation == nil
}

var partPrompts = map[string][2]string{
	"sides":   {"How many sides does this shape have?", "¿Cuántos lados tiene esta figura?"},
	"corners": {"How many corners does this shape have?", "¿Cuántas esquinas tiene esta figura?"},
	"faces":   {"How many faces does this solid have, with those at the back?", "¿Cuántas caras tiene este cuerpo, con las de atrás?"},
}

// Prompt asks how many.
func (t ShapeParts) Prompt(lang string) string { return in(lang, partPrompts[t.Part]) }

// Short tells the shape.
func (t ShapeParts) Short(lang string) string { return shown(t, lang, t.Figure.short(lang)) }

// Traits of counting parts of a shape.
func (t ShapeParts) Traits() Traits {
	var ts Traits
	ts.setNumber(Largest, t.answer())
	ts[Asks] = t.Part
	ts.setFlag(Misleads, !t.Figure.plainly())
	return ts
}

// Codes of counting parts: shapes of kindergarten are compared by them there; by angles and faces
// all shapes are known in grade 2.
func (t ShapeParts) Codes() []Code {
	f := t.Figure
	switch {
	case t.Part == "faces":
		return []Code{"K.G.B.4", "2.G.A.1"}
	case f.Is(Triangle), f.Is(Rectangle), f.Is(Hexagon):
		return []Code{"K.G.B.4", "2.G.A.1"}
	}
	return []Code{"2.G.A.1"}
}

// The missteps in counting parts of a shape.
var (
	partMissed = newMisstep("one side missed",
		"leaves out a side or a corner while going round",
		"deja sin contar un lado o una esquina al dar la vuelta",
		"mark the first one, then go round with a finger",
		"marcar el primero y dar la vuelta con el dedo", "common practice")
	firstTwice = newMisstep("first side counted twice",
		"goes round and counts the first side or corner again",
		"da la vuelta y cuenta otra vez el primer lado o la primera esquina",
		"mark the first one, and stop when the finger is back there",
		"marcar el primero y parar cuando el dedo vuelva ahí", "common practice")
	seenFaces = newMisstep("seen faces counted",
		"counts only the faces that can be seen",
		"cuenta solo las caras que se ven",
		"hold a box and put a dot on each face, also below and behind",
		"tomar una caja y poner un punto en cada cara, también abajo y atrás", "common practice")
)

// Missteps of counting parts.
func (t ShapeParts) Missteps() []Misstep {
	if t.Part == "faces" {
		return gather(t, []slip{{seenFaces, "3"}, {partMissed, strconv.Itoa(t.answer() - 1)}})
	}
	return gather(t, []slip{{partMissed, strconv.Itoa(t.answer() - 1)}, {firstTwice, strconv.Itoa(t.answer() + 1)}})
}

// Clashes of counting parts: the form.
func (t ShapeParts) Clashes() []string { return []string{"parts:" + string(t.Figure.Form)} }

// Fingerprint of counting parts is its text.
func (t ShapeParts) Fingerprint() string { return t.String() }

// Looks of counting parts.
func (t ShapeParts) Looks() []Look { return []Look{LookShapeParts} }
