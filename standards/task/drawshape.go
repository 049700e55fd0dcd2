package task

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// DrawShape asks for a shape of a sort, drawn by the child: "draw shape: 5 corners". What a child drew is
// its answer: a name, or how many corners.
type DrawShape struct{ Sort string }

// LookDrawShape is a field of dots to draw on.
const LookDrawShape Look = "dot-field"

var _ = ownLook(LookDrawShape, "field of dots to draw a shape on", 15)

// drawnSorts are the sorts of shapes to draw, and their corners.
var drawnSorts = map[string]int{
	"triangle": 3, "square": 4, "rectangle": 4, "quadrilateral": 4, "pentagon": 5, "hexagon": 6,
	"3 corners": 3, "4 corners": 4, "5 corners": 5, "6 corners": 6,
}

// cornersOf are the corners of named shapes.
var cornersOf = map[string]int{
	"circle": 0, "triangle": 3, "square": 4, "rectangle": 4, "rhombus": 4, "trapezoid": 4, "quadrilateral": 4,
	"pentagon": 5, "hexagon": 6,
}

var drawShapePattern = regexp.MustCompile(`^draw (?:a )?shape(?: with)?:? (.+)$`)

func readDrawShape(text string) (Task, error) {
	m := drawShapePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	sort := strings.NewReplacer("sides", "corners", "angles", "corners").Replace(m[1])
	if drawnSorts[sort] == 0 {
		return nil, errOther
	}
	return DrawShape{sort}, nil
}

func (t DrawShape) String() string { return "draw shape: " + t.Sort }

// Corners are how many it has to have.
func (t DrawShape) Corners() int { return drawnSorts[t.Sort] }

// Key is the sort.
func (t DrawShape) Key() string { return t.Sort }

// exact says that the number of corners alone makes a shape one of the sort.
func (t DrawShape) exact() bool { return t.Sort != "square" && t.Sort != "rectangle" }

// Judge accepts the name of a shape of the sort, or its number of corners where that says it all.
func (t DrawShape) Judge(answer string) bool {
	name, corners, ok := t.reply(answer)
	switch {
	case !ok:
		return false
	case t.exact():
		return corners == t.Corners()
	}
	return name == t.Sort || t.Sort == "rectangle" && name == "square"
}

// Possible takes names and numbers of corners, but not four corners where they could be right or wrong.
func (t DrawShape) Possible(answer string) bool { _, _, ok := t.reply(answer); return ok }

func (t DrawShape) reply(answer string) (name string, corners int, ok bool) {
	if name, ok = oneWord(answer, shapeWords); ok {
		corners, ok = cornersOf[name]
		return name, corners, ok
	}
	r, ok := readReply(answer, vocabulary(t.Prompt, "corner corners side sides angle angles esquina esquinas lado lados"))
	return "", r.number, ok && r.equation == nil && (t.exact() || r.number != t.Corners())
}

// Prompt asks for the drawing.
func (t DrawShape) Prompt(lang string) string {
	number, counted := strings.CutSuffix(t.Sort, " corners")
	switch {
	case counted && lang == "es":
		return "Dibuja una figura cerrada con " + number + " lados y " + number + " esquinas."
	case counted:
		return "Draw a closed shape with " + number + " sides and " + number + " corners."
	case lang == "es":
		return "Dibuja un " + spanishNames[t.Sort] + "."
	}
	return "Draw a " + t.Sort + "."
}

// Traits of drawing a shape.
func (t DrawShape) Traits() Traits {
	var ts Traits
	ts.setNumber(Largest, t.Corners())
	ts[Asks] = "a drawing"
	return ts
}

// Codes of drawing a shape: kindergarten draws its own shapes, grade 1 by what makes them those, grade 2 by angles.
func (t DrawShape) Codes() []Code {
	switch {
	case slices.Contains(flatNames, t.Sort) && t.Sort != "hexagon":
		return []Code{"K.G.B.5", "1.G.A.1"}
	case t.Sort == "3 corners":
		return []Code{"1.G.A.1", "2.G.A.1"}
	}
	return []Code{"2.G.A.1"}
}

// The missteps in drawing shapes.
var (
	cornersOff = newMisstep("one corner too many or too few",
		"draws a shape with one corner more or less than asked",
		"dibuja una figura con una esquina de más o de menos",
		"put down a dot for each corner first, then join the dots and close the shape",
		"marcar primero un punto por cada esquina, luego unirlos y cerrar la figura", "common practice")
	lengthsUnlike = newMisstep("sides of other lengths",
		"draws four square corners but not four sides of the same length",
		"dibuja cuatro esquinas rectas, pero no cuatro lados del mismo largo",
		"count from dot to dot along each side",
		"contar de punto a punto a lo largo de cada lado", "common practice")
	cornersSlanted = newMisstep("corners not square",
		"draws four sides without square corners",
		"dibuja cuatro lados sin esquinas rectas",
		"lay the corner of a card on each corner",
		"poner la esquina de una tarjeta sobre cada esquina", "common practice")
)

// Missteps of drawing a shape.
func (t DrawShape) Missteps() []Misstep {
	var slips []slip
	switch t.Sort {
	case "square":
		slips = []slip{{lengthsUnlike, "rectangle"}, {cornersSlanted, "rhombus"}}
	case "rectangle":
		slips = []slip{{cornersSlanted, "quadrilateral"}}
	}
	return gather(t, append(slips, slip{cornersOff, strconv.Itoa(t.Corners() - 1)}, slip{cornersOff, strconv.Itoa(t.Corners() + 1)}))
}

// Clashes of drawing a shape: its corners.
func (t DrawShape) Clashes() []string { return []string{"drawn:" + strconv.Itoa(t.Corners())} }

// Fingerprint of drawing a shape is its text.
func (t DrawShape) Fingerprint() string { return t.String() }

// Looks of drawing a shape.
func (t DrawShape) Looks() []Look { return []Look{LookDrawShape} }

// AnswerIn is a sort of shapes or a number of corners.
func (t DrawShape) AnswerIn(answer, lang string) string {
	if number, ok := strings.CutSuffix(answer, " corners"); ok && lang == "es" {
		return number + " esquinas"
	}
	return inSpanish(answer, lang, spanishNames)
}

// Answers to it are drawings.
func (t DrawShape) Answers() Answers { return Drawn }
