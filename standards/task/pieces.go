package task

import (
	"math"
	"strings"
)

// Pieces is a shape made of pieces of one form that lie side by side.
type Pieces struct {
	Whole, Piece string
	Outline      []Place   // of the whole; the piece has the same unit
	Parts        [][]Place // the outline of each piece
}

// triangleHeight is the height of a triangle with sides of 1.
var triangleHeight = math.Sqrt(3) / 2

// slant is a place on a grid of triangles with sides of 1.
func slant(a, b float64) Place { return Place{a + b/2, -b * triangleHeight} }

// pieceForms are the pieces by name: one of them, as it is shown alone.
var pieceForms = map[string][]Place{
	"triangle":       {slant(0, 0), slant(0, 1), slant(1, 0)},
	"rhombus":        {slant(0, 0), slant(0, 1), slant(1, 1), slant(1, 0)},
	"trapezoid":      {slant(0, 0), slant(0, 1), slant(1, 1), slant(2, 0)},
	"square":         {{0, 0}, {1, 0}, {1, 1}, {0, 1}},
	"half square":    {{0, 0}, {1, 1}, {0, 1}},
	"right triangle": {{0, 0}, {1.6, 1}, {0, 1}},
	"half circle":    arc(Place{}, 1, 1, 180, 360),
	"quarter circle": append(arc(Place{}, 1, 1, 180, 270), Place{}),
}

// pieceNames are the pieces in Spanish.
var pieceNames = map[string]string{
	"triangle": "triángulo", "rhombus": "rombo", "trapezoid": "trapecio", "square": "cuadrado", "half square": "medio cuadrado",
	"right triangle": "triángulo rectángulo", "half circle": "medio círculo", "quarter circle": "cuarto de círculo",
	"hexagon": "hexágono", "large triangle": "triángulo grande", "rectangle": "rectángulo",
	"long rectangle": "rectángulo largo", "large square": "cuadrado grande",
	"wide triangle": "triángulo ancho", "parallelogram": "paralelogramo", "circle": "círculo", "long parallelogram": "paralelogramo largo",
}

// made are the shapes that are made of pieces.
var made = []Pieces{
	{"rhombus", "triangle", pieceForms["rhombus"], [][]Place{pieceForms["triangle"], {slant(0, 1), slant(1, 1), slant(1, 0)}}},
	{"trapezoid", "triangle", pieceForms["trapezoid"],
		[][]Place{pieceForms["triangle"], {slant(0, 1), slant(1, 1), slant(1, 0)}, {slant(1, 0), slant(1, 1), slant(2, 0)}}},
	{"large triangle", "triangle", []Place{slant(0, 0), slant(0, 2), slant(2, 0)},
		[][]Place{pieceForms["triangle"], {slant(0, 1), slant(1, 1), slant(1, 0)}, {slant(1, 0), slant(1, 1), slant(2, 0)}, {slant(0, 1), slant(0, 2), slant(1, 1)}}},
	{"long parallelogram", "triangle", []Place{slant(0, 0), slant(0, 1), slant(2, 1), slant(2, 0)},
		[][]Place{pieceForms["triangle"], {slant(0, 1), slant(1, 1), slant(1, 0)}, {slant(1, 0), slant(1, 1), slant(2, 0)}, {slant(1, 1), slant(2, 1), slant(2, 0)}}},
	{"long parallelogram", "rhombus", []Place{slant(0, 0), slant(0, 1), slant(2, 1), slant(2, 0)},
		[][]Place{pieceForms["rhombus"], {slant(1, 0), slant(1, 1), slant(2, 1), slant(2, 0)}}},
	{"hexagon", "triangle", sixth(0), [][]Place{wedge(0), wedge(1), wedge(2), wedge(3), wedge(4), wedge(5)}},
	{"hexagon", "rhombus", sixth(0), [][]Place{double(0), double(2), double(4)}},
	{"hexagon", "trapezoid", sixth(0), [][]Place{{around(0), around(1), around(2), around(3)}, {around(3), around(4), around(5), around(0)}}},
	{"square", "half square", pieceForms["square"], [][]Place{pieceForms["half square"], {{0, 0}, {1, 0}, {1, 1}}}},
	{"wide triangle", "half square", []Place{{0, 0}, {1, 1}, {-1, 1}}, [][]Place{pieceForms["half square"], {{0, 0}, {0, 1}, {-1, 1}}}},
	{"parallelogram", "half square", []Place{{0, 0}, {1, 0}, {2, 1}, {1, 1}}, [][]Place{{{0, 0}, {1, 0}, {1, 1}}, {{1, 0}, {2, 1}, {1, 1}}}},
	{"rectangle", "half square", []Place{{0, 0}, {2, 0}, {2, 1}, {0, 1}}, [][]Place{
		pieceForms["half square"], {{0, 0}, {1, 0}, {1, 1}}, {{1, 0}, {2, 1}, {1, 1}}, {{1, 0}, {2, 0}, {2, 1}}}},
	{"rectangle", "square", []Place{{0, 0}, {2, 0}, {2, 1}, {0, 1}}, squares(2, 1)},
	{"long rectangle", "square", []Place{{0, 0}, {3, 0}, {3, 1}, {0, 1}}, squares(3, 1)},
	{"large square", "square", []Place{{0, 0}, {2, 0}, {2, 2}, {0, 2}}, squares(2, 2)},
	{"rectangle", "right triangle", []Place{{0, 0}, {1.6, 0}, {1.6, 1}, {0, 1}}, [][]Place{pieceForms["right triangle"], {{0, 0}, {1.6, 0}, {1.6, 1}}}},
	{"circle", "half circle", arc(Place{}, 1, 1, 0, 360), [][]Place{pieceForms["half circle"], arc(Place{}, 1, 1, 0, 180)}},
	{"circle", "quarter circle", arc(Place{}, 1, 1, 0, 360), quarters(0, 90, 180, 270)},
	{"half circle", "quarter circle", pieceForms["half circle"], quarters(180, 270)},
}

// pieceNamed is a piece by its name, also as more than one are called.
func pieceNamed(text string) string {
	for _, ending := range []string{"", "s", "es"} {
		if name := strings.TrimSuffix(text, ending); pieceForms[name] != nil {
			return name
		}
	}
	return text
}

// pieceMany is what more than one of a piece are called.
func pieceMany(piece string) string {
	if strings.HasSuffix(piece, "s") {
		return piece + "es"
	}
	return piece + "s"
}

// around is a corner of a hexagon with sides of 1, counted clockwise from the left.
func around(i int) Place {
	sin, cos := math.Sincos(math.Pi * float64(i-3) / 3)
	return Place{cos, sin}
}

func sixth(from int) (list []Place) {
	for i := range 6 {
		list = append(list, around(from+i))
	}
	return list
}

func wedge(i int) []Place  { return []Place{{}, around(i), around(i + 1)} }
func double(i int) []Place { return []Place{{}, around(i), around(i + 1), around(i + 2)} }

// squares are unit squares in a rectangle so many wide and high.
func squares(w, h int) (list [][]Place) {
	for y := range h {
		for x := range w {
			a, b := float64(x), float64(y)
			list = append(list, []Place{{a, b}, {a + 1, b}, {a + 1, b + 1}, {a, b + 1}})
		}
	}
	return list
}

// quarters are quarters of a circle that begin at the angles.
func quarters(from ...float64) (list [][]Place) {
	for _, angle := range from {
		list = append(list, append(arc(Place{}, 1, 1, angle, angle+90), Place{}))
	}
	return list
}

// piecesOf is how the whole is made of the piece.
func piecesOf(whole, piece string) (Pieces, bool) {
	for _, p := range made {
		if p.Whole == whole && p.Piece == piece {
			return p, true
		}
	}
	return Pieces{}, false
}

// Area of a shape by the corners of its outline (the surveyor's formula of Gauss).
func Area(outline []Place) float64 {
	sum := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}
