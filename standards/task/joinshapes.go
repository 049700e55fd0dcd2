package task

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// JoinShapes asks which shape some pieces make when they are joined along full sides:
// "join 2 half squares: hexagon, square, circle".
type JoinShapes struct {
	N       int
	Piece   string
	Options [3]string
}

// LookJoinShapes is pieces, and three shapes with a box to mark under each.
const LookJoinShapes Look = "join-shapes"

var _ = ownLook(LookJoinShapes, "pieces, and three shapes with a box to mark", 0)

var joinShapesPattern = regexp.MustCompile(`^join ([2-6]) ([a-z ]+): ?([a-z ]+), ?([a-z ]+), ?([a-z ]+)$`)

func readJoinShapes(text string) (Task, error) {
	m := joinShapesPattern.FindStringSubmatch(text)
	if m == nil || pieceForms[pieceNamed(m[2])] == nil {
		return nil, errOther
	}
	t := JoinShapes{Piece: pieceNamed(m[2]), Options: [3]string(m[3:6])}
	t.N, _ = strconv.Atoi(m[1])
	right := 0
	for i, option := range t.Options {
		outline := t.Outline(i)
		switch p, ok := piecesOf(option, t.Piece); {
		case outline == nil:
			return nil, words.Errorf("%q: no shape %q is known; %s are known", text, option, waysToMake())
		case ok && len(p.Parts) == t.N:
			right++
		case math.Abs(Area(outline)-float64(t.N)*Area(pieceForms[t.Piece])) < .01:
			return nil, words.Errorf("%q: the %s is as large as the pieces together, so that nobody can say it can't be made; choose another", text, option)
		}
	}
	if right != 1 {
		return nil, words.Errorf("%q: %d of the three shapes can be made of the pieces; one has to be", text, right)
	}
	return t, nil
}

func (t JoinShapes) String() string {
	return fmt.Sprintf("join %d %s: %s", t.N, pieceMany(t.Piece), strings.Join(t.Options[:], ", "))
}

// Outline is a shape to choose, in the unit of the pieces; nil where none is known by the name.
func (t JoinShapes) Outline(i int) []Place {
	if p, ok := piecesOf(t.Options[i], t.Piece); ok {
		return p.Outline
	}
	for _, p := range made {
		if p.Whole == t.Options[i] {
			return p.Outline
		}
	}
	return nil
}

// PieceOutline is the piece alone.
func (t JoinShapes) PieceOutline() []Place { return pieceForms[t.Piece] }

// Right says that the shape at a place can be made.
func (t JoinShapes) Right(i int) bool {
	p, ok := piecesOf(t.Options[i], t.Piece)
	return ok && len(p.Parts) == t.N
}

// Key is the letter of the shape that can be made.
func (t JoinShapes) Key() string { return lettersOf(3, t.Right) }

// Judge accepts the letter.
func (t JoinShapes) Judge(answer string) bool {
	said, ok := readLetters(answer, 3)
	return ok && said == t.Key()
}

// Possible takes one of the letters.
func (t JoinShapes) Possible(answer string) bool {
	said, ok := readLetters(answer, 3)
	return ok && len(said) == 1
}

// Prompt asks which shape.
func (t JoinShapes) Prompt(lang string) string {
	if lang == "es" {
		return "Se juntan las piezas por lados enteros. ¿Qué figura se puede formar?"
	}
	return "The pieces are joined along full sides. Which shape can they make?"
}

// Short tells the pieces and the shapes.
func (t JoinShapes) Short(lang string) string {
	var list []string
	for _, option := range t.Options {
		list = append(list, inSpanish(option, lang, pieceNames))
	}
	return shown(t, lang, fmt.Sprintf("%d %s: %s", t.N, inSpanish(t.Piece, lang, pieceNames), strings.Join(list, ", ")))
}

// Traits of joining shapes.
func (t JoinShapes) Traits() Traits {
	var ts Traits
	ts.setNumber(Largest, t.N)
	ts[Asks] = "joined"
	return ts
}

// Codes of joining shapes: kindergarten; halves and quarters of a circle, grade 1.
func (t JoinShapes) Codes() []Code {
	if strings.HasSuffix(t.Piece, "circle") {
		return []Code{"1.G.A.2"}
	}
	return []Code{"K.G.B.6", "1.G.A.2"}
}

var sizeUnseen = newMisstep("pieces not fitted in",
	"goes by the look of the shape and not by how many pieces fill it",
	"se guía por el aspecto de la figura y no por cuántas piezas la llenan",
	"cut the pieces out and turn them until full sides meet",
	"recortar las piezas y girarlas hasta que se junten lados enteros", "common practice")

// Missteps of joining shapes.
func (t JoinShapes) Missteps() []Misstep {
	var slips []slip
	for _, letter := range t.Offers() {
		slips = append(slips, slip{sizeUnseen, letter})
	}
	return gather(t, slips)
}

// Clashes of joining shapes: the pieces.
func (t JoinShapes) Clashes() []string { return []string{fmt.Sprintf("join:%d %s", t.N, t.Piece)} }

// Fingerprint of joining shapes is its text.
func (t JoinShapes) Fingerprint() string { return t.String() }

// Looks of joining shapes.
func (t JoinShapes) Looks() []Look { return []Look{LookJoinShapes} }

// Offers are the letters.
func (t JoinShapes) Offers() []string { return []string{"A", "B", "C"} }
