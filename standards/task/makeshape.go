package task

import (
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// MakeShape asks how many pieces make a shape: "make shape: hexagon from triangle". A piece that is itself
// made of pieces shows them: "make shape: hexagon from trapezoid made of triangle".
type MakeShape struct{ Whole, Piece, MadeOf string }

// LookMakeShape is a piece, the shape to make of such pieces, and a box for how many.
const LookMakeShape Look = "make-shape"

var _ = ownLook(LookMakeShape, "piece and shape to make of such pieces", 0)

var makeShapePattern = regexp.MustCompile(`^make shape:? ?([a-z ]+?) (?:from|of|with) ([a-z ]+?)(?: made of ([a-z ]+))?$`)

func readMakeShape(text string) (Task, error) {
	m := makeShapePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := MakeShape{m[1], pieceNamed(m[2]), pieceNamed(m[3])}
	if _, ok := piecesOf(t.Whole, t.Piece); !ok {
		return nil, words.Errorf("%q: no way is known to make %s from %s; %s are known", text, t.Whole, t.Piece, waysToMake())
	}
	if _, ok := piecesOf(t.Piece, t.MadeOf); !ok && t.MadeOf != "" {
		return nil, words.Errorf("%q: no way is known to make %s from %s; %s are known", text, t.Piece, t.MadeOf, waysToMake())
	}
	return t, nil
}

// waysToMake lists what is known.
func waysToMake() string {
	var list []string
	for _, p := range made {
		list = append(list, p.Whole+" from "+p.Piece)
	}
	return strings.Join(list, ", ")
}

func (t MakeShape) String() string {
	text := "make shape: " + t.Whole + " from " + t.Piece
	if t.MadeOf != "" {
		text += " made of " + t.MadeOf
	}
	return text
}

// Pieces is how the shape is made.
func (t MakeShape) Pieces() Pieces { p, _ := piecesOf(t.Whole, t.Piece); return p }

// Seams are the parts of the piece itself, where it is made of such.
func (t MakeShape) Seams() [][]Place { p, _ := piecesOf(t.Piece, t.MadeOf); return p.Parts }

// PieceOutline is the piece alone.
func (t MakeShape) PieceOutline() []Place { return pieceForms[t.Piece] }

// Key is how many pieces.
func (t MakeShape) Key() string { return strconv.Itoa(len(t.Pieces().Parts)) }

// Judge accepts the number, in digits or in words.
func (t MakeShape) Judge(answer string) bool {
	r, ok := readReply(answer, t.known())
	return ok && r.equation == nil && strconv.Itoa(r.number) == t.Key()
}

// known are the words for pieces.
func (t MakeShape) known() func(string) bool {
	return vocabulary(t.Prompt, "pieces piece pieza piezas shapes", t.Piece, pieceMany(t.Piece), pieceNames[t.Piece], pieceNames[t.Piece]+"s")
}

// Possible takes a number.
func (t MakeShape) Possible(answer string) bool {
	r, ok := readReply(answer, t.known())
	return ok && r.equation == nil
}

// Prompt asks how many of the small shape make the large one.
func (t MakeShape) Prompt(lang string) string {
	switch {
	case t.MadeOf != "" && lang == "es":
		return "La figura pequeña ya está hecha de piezas. ¿Cuántas figuras pequeñas como esa forman la grande?"
	case t.MadeOf != "":
		return "The small shape is made of pieces. How many such small shapes make the large shape?"
	case lang == "es":
		return "¿Cuántas figuras pequeñas forman la figura grande?"
	}
	return "How many of the small shape make the large shape?"
}

// Short tells the shapes.
func (t MakeShape) Short(lang string) string {
	piece := t.PieceSaid(lang)
	if lang == "es" {
		return shown(t, lang, pieceNames[t.Whole]+" de "+piece)
	}
	return shown(t, lang, t.Whole+" from "+piece)
}

// PieceSaid is the piece by name, with what it is made of.
func (t MakeShape) PieceSaid(lang string) string {
	switch {
	case lang == "es" && t.MadeOf != "":
		return pieceNames[t.Piece] + " hecho de " + pieceNames[t.MadeOf]
	case lang == "es":
		return pieceNames[t.Piece]
	case t.MadeOf != "":
		return t.Piece + " made of " + t.MadeOf
	}
	return t.Piece
}

// WholeSaid is the whole by name.
func (t MakeShape) WholeSaid(lang string) string { return inSpanish(t.Whole, lang, pieceNames) }

// Traits of making a shape.
func (t MakeShape) Traits() Traits {
	var ts Traits
	ts.setNumber(Largest, len(t.Pieces().Parts))
	ts[Asks] = "pieces"
	if t.MadeOf != "" {
		ts[Asks] = "made pieces"
	}
	return ts
}

// Codes of making a shape: joining simple shapes, kindergarten; rectangles, squares, trapezoids, triangles, half-
// and quarter-circles, and shapes made of made ones, grade 1.
func (t MakeShape) Codes() []Code {
	if t.MadeOf != "" || strings.HasSuffix(t.Piece, "circle") || t.Piece == "trapezoid" {
		return []Code{"1.G.A.2"}
	}
	return []Code{"K.G.B.6", "1.G.A.2"}
}

// The missteps in making shapes of pieces.
var (
	pieceShort = newMisstep("one piece too few",
		"leaves a place in the large shape empty",
		"deja un lugar vacío en la figura grande",
		"trace the pieces into the large shape, side to side, until it is full",
		"trazar las piezas dentro de la figura grande, lado con lado, hasta llenarla", "common practice")
	pieceOver = newMisstep("one piece too many",
		"lays pieces over each other or past the edge",
		"pone piezas encimadas o fuera del borde",
		"trace the pieces into the large shape, side to side, until it is full",
		"trazar las piezas dentro de la figura grande, lado con lado, hasta llenarla", "common practice")
	innerPieces = newMisstep("pieces of the piece counted",
		"counts the pieces that the small shape is made of",
		"cuenta las piezas de las que está hecha la figura pequeña",
		"cut out the small shape whole, and move it as one",
		"recortar la figura pequeña entera y moverla completa", "common practice")
)

// Missteps of making a shape.
func (t MakeShape) Missteps() []Misstep {
	n := len(t.Pieces().Parts)
	slips := []slip{{pieceShort, strconv.Itoa(n - 1)}, {pieceOver, strconv.Itoa(n + 1)}}
	if inner := len(t.Seams()); inner > 0 {
		slips = append(slips, slip{innerPieces, strconv.Itoa(n * inner)})
	}
	return gather(t, slips)
}

// Clashes of making a shape: the two forms.
func (t MakeShape) Clashes() []string { return []string{"make:" + t.Whole + "," + t.Piece} }

// Fingerprint of making a shape is its text.
func (t MakeShape) Fingerprint() string { return t.String() }

// Looks of making a shape.
func (t MakeShape) Looks() []Look { return []Look{LookMakeShape} }

// Making lists all shapes that are made of pieces, and those whose pieces are made of such.
func Making() []MakeShape {
	var list []MakeShape
	for _, p := range made {
		list = append(list, MakeShape{Whole: p.Whole, Piece: p.Piece})
		for _, q := range made {
			if q.Whole == p.Piece {
				list = append(list, MakeShape{p.Whole, p.Piece, q.Piece})
			}
		}
	}
	return list
}
