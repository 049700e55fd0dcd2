package task

import (
	"regexp"
	"strings"

	"evenhand/standards/words"
)

// NameShape asks what a shape is called, at any size and turn: "name shape: thin triangle at 45".
type NameShape struct{ Figure Figure }

// LookShape is a shape and names to choose from.
const LookShape Look = "shape"

var _ = ownLook(LookShape, "shape with names to choose from", 0)

var nameShapePattern = regexp.MustCompile(`^(?:name (?:the |this )?shape|nombra la figura): ?(.+)$`)

func readNameShape(text string) (Task, error) {
	m := nameShapePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	f, err := readFigure(m[1])
	if err != nil {
		return nil, err
	}
	t := NameShape{f}
	if !t.named() {
		return nil, errOther
	}
	return t, nil
}

// flatNames and solidNames are the names of kindergarten. A square is a rectangle too, so that the
// two names never stand to choose from beside one.
var (
	flatNames  = []string{string(Circle), string(Triangle), string(Square), string(Rectangle), string(Hexagon)}
	fewNames   = []string{string(Circle), string(Triangle), string(Square), string(Hexagon)}
	solidNames = []string{string(Circle), string(Square), string(Cube), string(Cone), string(Cylinder), string(Sphere)}
)

// named says that kindergarten has a name for the shape.
func (t NameShape) named() bool {
	is := forms[t.Figure.Form].is
	for _, name := range t.Offers() {
		if len(is) > 0 && name == string(is[0]) {
			return true
		}
	}
	return false
}

func (t NameShape) String() string { return "name shape: " + t.Figure.String() }

// Key is the usual name.
func (t NameShape) Key() string { return string(forms[t.Figure.Form].is[0]) }

// shapeWords are what people write for shapes, also for more than one, and in Spanish.
var shapeWords = func() map[string]string {
	known := map[string]string{
		"diamond": "rhombus", "diamante": "rhombus", "box": "rectangular prism", "prism": "rectangular prism", "prisma": "rectangular prism",
		"ball": "sphere", "bola": "sphere", "round": "circle", "redondo": "circle", "trapezium": "trapezoid", "trapezoide": "trapezoid",
	}
	for name, spanish := range spanishNames {
		for _, word := range []string{name, name + "s", spanish, spanish + "s"} {
			known[words.Unaccented(word)] = name
		}
	}
	return known
}()

// Judge accepts any name that is true of the shape: a square is a rectangle too.
func (t NameShape) Judge(answer string) bool {
	said, ok := oneWord(answer, shapeWords)
	return ok && t.Figure.Is(ShapeName(said))
}

// Possible takes the name of a shape.
func (t NameShape) Possible(answer string) bool { _, ok := oneWord(answer, shapeWords); return ok }

// Prompt asks for the name.
func (t NameShape) Prompt(lang string) string {
	if lang == "es" {
		return "¿Cómo se llama esta figura?"
	}
	return "What is this shape called?"
}

// Short tells the shape as it lies there.
func (t NameShape) Short(lang string) string { return shown(t, lang, t.Figure.short(lang)) }

// short is the figure in a word or two and how it lies.
func (f Figure) short(lang string) string {
	text := in(lang, [2]string(forms[f.Form].name))
	return strings.Replace(f.String(), string(f.Form), text, 1)
}

// Traits of naming a shape.
func (t NameShape) Traits() Traits {
	var ts Traits
	ts[Asks] = "name"
	if t.Figure.Solid() {
		ts[Asks] = "name of a solid"
	}
	ts.setFlag(Misleads, !t.Figure.plainly())
	return ts
}

// Codes of naming a shape: at any size and turn, kindergarten.
func (t NameShape) Codes() []Code { return []Code{"K.G.A.2"} }

const shapeSource = "Clements & Sarama (2000), Young children's ideas about geometric shapes, Teaching Children Mathematics 6"

// The missteps in naming shapes.
var (
	sidesUnseen = newMisstep("square for a rectangle",
		"calls any shape with four square corners a square, whatever its sides",
		"llama cuadrado a toda figura de cuatro esquinas rectas, sin mirar sus lados",
		"fold or measure: the four sides of a square are the same length",
		"doblar o medir: los cuatro lados de un cuadrado miden lo mismo", shapeSource)
	faceNamed = newMisstep("face named",
		"names a solid by a flat shape that is seen on it",
		"nombra el cuerpo por una figura plana que se ve en él",
		"hold the solid and trace one face: the face is flat, the solid is not",
		"tomar el sólido y trazar una cara: la cara es plana, el sólido no", "common practice")
	roundSolids = newMisstep("round solids mixed up",
		"takes cones and cylinders for each other, as both stand on a round face",
		"confunde conos y cilindros, porque los dos tienen una cara redonda",
		"look at both ends: a cone runs to a point",
		"mirar los dos extremos: un cono termina en punta", "common practice")
)

// Missteps of naming a shape.
func (t NameShape) Missteps() []Misstep {
	slips := map[string][]slip{
		"rectangle": {{sidesUnseen, "square"}},
		"cube":      {{faceNamed, "square"}},
		"sphere":    {{faceNamed, "circle"}},
		"cone":      {{faceNamed, "circle"}, {roundSolids, "cylinder"}},
		"cylinder":  {{faceNamed, "circle"}, {roundSolids, "cone"}},
	}
	return gather(t, slips[t.Key()])
}

// Clashes of naming a shape: the form.
func (t NameShape) Clashes() []string { return []string{"shape:" + string(t.Figure.Form)} }

// Fingerprint of naming a shape is its text.
func (t NameShape) Fingerprint() string { return t.String() }

// Looks of naming a shape.
func (t NameShape) Looks() []Look { return []Look{LookShape} }

// Offers are names of kindergarten, never two that are both right.
func (t NameShape) Offers() []string {
	switch {
	case t.Figure.Solid():
		return solidNames
	case t.Figure.Is(Square), t.Figure.Is(Circle):
		return fewNames
	}
	return flatNames
}

// AnswerIn is the name.
func (t NameShape) AnswerIn(answer, lang string) string { return inSpanish(answer, lang, spanishNames) }
