package task

import (
	"fmt"
	"regexp"
	"strings"

	"evenhand/standards/words"
)

// FindShapes asks which of some shapes are of a sort, whatever their size and turn:
// "find every triangle: thin triangle at 45, open triangle, square".
type FindShapes struct {
	Sort    string // a name, or "5 corners", "flat", "solid"
	Figures [5]Figure
	N       int // 3 to 5
}

// LookFindShapes is shapes with a box to mark under each.
const LookFindShapes Look = "find-shapes"

var _ = ownLook(LookFindShapes, "shapes, each with a box to mark", 0)

// sortRow is a sort of shapes to find.
type sortRow struct {
	is    func(Figure) bool
	said  [2]string // in the question: "each triangle"
	codes []Code
	// like are forms that look like the sort and are not of it, and but not all of the sort is seen as such.
	like func(Figure) bool
}

func sorted(name ShapeName, en, es string, codes ...Code) sortRow {
	return sortRow{
		is: func(f Figure) bool { return f.Is(name) }, said: [2]string{"each " + en, "cada " + es}, codes: codes,
		like: func(f Figure) bool {
			looks := strings.HasSuffix(string(f.Form), " "+string(name)) && forms[f.Form].flaw != ""
			return looks || name == Square && f.Is(Rectangle) && f.Form == "rectangle" ||
				name == Circle && f.Form == "oval" || name == Rectangle && f.Form == "parallelogram"
		},
	}
}

func cornered(n int) sortRow {
	return sortRow{
		is:    func(f Figure) bool { return f.Sides() == n },
		said:  [2]string{fmt.Sprintf("each shape with %d corners", n), fmt.Sprintf("cada figura con %d esquinas", n)},
		codes: []Code{"2.G.A.1"},
		like:  func(f Figure) bool { return f.Sides() == n+1 },
	}
}

// sorts are the sorts of shapes that are asked for.
var sorts = map[string]sortRow{
	"circle":        sorted(Circle, "circle", "círculo", "K.G.A.2"),
	"triangle":      sorted(Triangle, "triangle", "triángulo", "1.G.A.1", "2.G.A.1"),
	"square":        sorted(Square, "square", "cuadrado", "1.G.A.1"),
	"rectangle":     sorted(Rectangle, "rectangle", "rectángulo", "1.G.A.1"),
	"hexagon":       sorted(Hexagon, "hexagon", "hexágono", "2.G.A.1"),
	"pentagon":      sorted(Pentagon, "pentagon", "pentágono", "2.G.A.1"),
	"quadrilateral": sorted(Quadrilateral, "quadrilateral", "cuadrilátero", "2.G.A.1"),
	"cube":          sorted(Cube, "cube", "cubo", "2.G.A.1"),
	"3 corners":     cornered(3), "4 corners": cornered(4), "5 corners": cornered(5), "6 corners": cornered(6),
	"flat":  {is: func(f Figure) bool { return !f.Solid() }, said: [2]string{"each flat shape", "cada figura plana"}, codes: []Code{"K.G.A.3"}},
	"solid": {is: Figure.Solid, said: [2]string{"each solid shape", "cada cuerpo sólido"}, codes: []Code{"K.G.A.3"}},
}

var findShapesPattern = regexp.MustCompile(`^(?:find )?(?:each|every|all) ([a-z0-9 ]+?)s?: ?(.+)$`)

func readFindShapes(text string) (Task, error) {
	m := findShapesPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	if strings.HasSuffix(m[1], " corner") {
		m[1] += "s"
	}
	if sorts[m[1]].is == nil {
		return nil, errOther
	}
	figures, err := readFigures(m[2])
	if err != nil {
		return nil, err
	}
	t := FindShapes{Sort: m[1], N: len(figures)}
	if t.N < 3 || t.N > len(t.Figures) {
		return nil, words.Errorf("%q has %d shapes; a row here has 3 to %d", text, t.N, len(t.Figures))
	}
	copy(t.Figures[:], figures)
	if found := t.count(); found == 0 || found == t.N {
		return nil, words.Errorf("%q has %d of %d shapes to find; some have to be of the sort, and some not", text, found, t.N)
	}
	return t, nil
}

func (t FindShapes) String() string {
	list := make([]string, t.N)
	for i, f := range t.List() {
		list[i] = f.String()
	}
	return fmt.Sprintf("find every %s: %s", t.Sort, strings.Join(list, ", "))
}

// List is the shapes in their order.
func (t FindShapes) List() []Figure { return append([]Figure(nil), t.Figures[:t.N]...) }

// Right says that the shape at a place is one to find.
func (t FindShapes) Right(i int) bool { return sorts[t.Sort].is(t.Figures[i]) }

func (t FindShapes) count() int { return (len(t.Key()) + 2) / 3 }

// Key is the letters of the shapes to find, "A, C".
func (t FindShapes) Key() string { return lettersOf(t.N, t.Right) }

// Judge accepts the letters in any order.
func (t FindShapes) Judge(answer string) bool {
	said, ok := readLetters(answer, t.N)
	return ok && said == t.Key()
}

// Possible takes letters of the shapes.
func (t FindShapes) Possible(answer string) bool { _, ok := readLetters(answer, t.N); return ok }

// Prompt asks which shapes are of the sort.
func (t FindShapes) Prompt(lang string) string {
	if lang == "es" {
		return "Marca " + in(lang, sorts[t.Sort].said) + "."
	}
	return "Mark " + in(lang, sorts[t.Sort].said) + "."
}

// Short tells the shapes.
func (t FindShapes) Short(lang string) string {
	list := make([]string, t.N)
	for i, f := range t.List() {
		list[i] = f.short(lang)
	}
	return shown(t, lang, strings.Join(list, ", "))
}

// Traits of finding shapes.
func (t FindShapes) Traits() Traits {
	var ts Traits
	ts[Asks] = "which shapes"
	ts.setNumber(Largest, t.N)
	ts.setFlag(Misleads, len(t.Missteps()) > 1)
	return ts
}

// Codes of finding shapes: by what makes a shape that shape, grade 1; by angles and by the further names,
// grade 2; circles, and flat or solid, kindergarten.
func (t FindShapes) Codes() []Code { return sorts[t.Sort].codes }

// The missteps in finding shapes.
var (
	usualOnly = newMisstep("usual picture only",
		"takes only shapes that look like the usual picture, not thin, turned or other ones",
		"elige solo las figuras que se ven como siempre, no las delgadas, giradas o distintas",
		"count sides and corners, turn the paper, and ask again",
		"contar lados y esquinas, girar la hoja y volver a preguntar", shapeSource)
	likeTaken = newMisstep("close look taken for the shape",
		"takes a shape that looks close but has a gap, a bent side or other sides",
		"elige una figura parecida que tiene un hueco, un lado curvo u otros lados",
		"say what the shape must have, and check each part of it",
		"decir qué debe tener la figura y revisar cada parte", shapeSource)
	squareLeft = newMisstep("square not taken for a rectangle",
		"leaves out squares, which have all that makes a rectangle",
		"deja fuera los cuadrados, que tienen todo lo de un rectángulo",
		"a rectangle has four square corners; a square has them too",
		"un rectángulo tiene cuatro esquinas rectas; un cuadrado también", shapeSource)
	othersFound = newMisstep("others marked",
		"marks the shapes that are not asked for",
		"marca las figuras que no se piden",
		"read the question again, and check the first shape together",
		"leer otra vez la pregunta y revisar juntos la primera figura", "common practice")
)

// Missteps of finding shapes.
func (t FindShapes) Missteps() []Misstep {
	row := sorts[t.Sort]
	slips := []slip{
		{usualOnly, lettersOf(t.N, func(i int) bool { return t.Right(i) && t.Figures[i].plainly() })},
		{othersFound, lettersOf(t.N, func(i int) bool { return !t.Right(i) })},
	}
	if row.like != nil {
		slips = append(slips, slip{likeTaken, lettersOf(t.N, func(i int) bool { return t.Right(i) || row.like(t.Figures[i]) })})
	}
	if t.Sort == "rectangle" {
		slips = append(slips, slip{squareLeft, lettersOf(t.N, func(i int) bool { return t.Right(i) && !t.Figures[i].Is(Square) })})
	}
	return gather(t, slips)
}

// Clashes of finding shapes: the sort.
func (t FindShapes) Clashes() []string { return []string{"find:" + t.Sort} }

// Fingerprint of finding shapes is its text.
func (t FindShapes) Fingerprint() string { return t.String() }

// Looks of finding shapes.
func (t FindShapes) Looks() []Look { return []Look{LookFindShapes} }

// Accepted are usual ways to write the letters.
func (t FindShapes) Accepted(string) []string { return letterTexts(t.Key()) }
