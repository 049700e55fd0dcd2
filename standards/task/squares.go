package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// Squares asks how many squares fill a rectangle in rows and columns: "squares 3 by 4"; with "to draw" only marks at
// the edges show where the lines go.
type Squares struct {
	Rows, Columns int // each 1 to 5, 2 squares or more
	ToDraw        bool
}

// LookSquares is a rectangle of squares.
const LookSquares Look = "squares"

var _ = ownLook(LookSquares, "rectangle of squares in rows and columns", 0)

var squaresPattern = regexp.MustCompile(`^(?:squares|rows of squares):? ?([0-9]{1,3}) ?(?:by|x|×) ?([0-9]{1,3})( to draw)?$`)

func readSquares(text string) (Task, error) {
	m := squaresPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := Squares{ToDraw: m[3] != ""}
	t.Rows, _ = strconv.Atoi(m[1])
	t.Columns, _ = strconv.Atoi(m[2])
	if min(t.Rows, t.Columns) < 1 || max(t.Rows, t.Columns) > 5 || t.Rows*t.Columns < 2 {
		return nil, words.Errorf("%q is not 1 to 5 rows and columns with 2 squares or more, as in squares 3 by 4", text)
	}
	return t, nil
}

func (t Squares) String() string {
	text := fmt.Sprintf("squares %d by %d", t.Rows, t.Columns)
	if t.ToDraw {
		text += " to draw"
	}
	return text
}

// Key is how many squares.
func (t Squares) Key() string { return strconv.Itoa(t.Rows * t.Columns) }

// Judge accepts the number, also after the sum or the product of the rows.
func (t Squares) Judge(answer string) bool {
	r, ok := Array{t.Rows, t.Columns}.replyWith(answer, t.known())
	return ok && Array{t.Rows, t.Columns}.says(r)
}

// Possible takes a number of squares and number sentences.
func (t Squares) Possible(answer string) bool {
	_, ok := Array{t.Rows, t.Columns}.replyWith(answer, t.known())
	return ok
}

func (t Squares) known() func(string) bool { return vocabulary(t.Prompt, "squares square") }

// Prompt asks how many.
func (t Squares) Prompt(lang string) string {
	switch {
	case t.ToDraw && lang == "es":
		return "Une las marcas con líneas para formar cuadrados iguales. ¿Cuántos cuadrados hay?"
	case t.ToDraw:
		return "Join the marks with lines to make equal squares. How many squares are there?"
	case lang == "es":
		return "¿Cuántos cuadrados llenan el rectángulo?"
	}
	return "How many squares fill the rectangle?"
}

// Short tells the rows and columns.
func (t Squares) Short(lang string) string {
	return shown(t, lang, fmt.Sprintf("%d × %d", t.Rows, t.Columns))
}

// Traits of squares: one addend a row.
func (t Squares) Traits() Traits {
	var ts Traits
	ts.setNumber(Addends, t.Rows)
	ts.setNumber(Largest, t.Rows*t.Columns)
	ts[Asks] = "squares"
	if t.ToDraw {
		ts[Asks] = "squares to draw"
	}
	return ts
}

// Codes of squares: rows and columns of squares in a rectangle, grade 2.
func (t Squares) Codes() []Code { return []Code{"2.G.A.2"} }

// Missteps of squares are those of rows of things, and the squares at the edge counted alone.
func (t Squares) Missteps() []Misstep {
	edge := ""
	if t.Rows > 2 && t.Columns > 2 {
		edge = strconv.Itoa(2*(t.Rows+t.Columns) - 4)
	}
	return gather(t, []slip{
		{edgesAdded, strconv.Itoa(t.Rows + t.Columns)},
		{rowLeftOut, strconv.Itoa((t.Rows - 1) * t.Columns)},
		{edgeSquares, edge},
	})
}

var edgeSquares = newMisstep("squares at the edge counted",
	"counts only the squares along the edge, not those inside",
	"cuenta solo los cuadrados del borde, no los de adentro",
	"color one row, then the next, until the rectangle is full",
	"pintar una fila, luego la siguiente, hasta llenar el rectángulo",
	"Battista et al. (1998), Journal for Research in Mathematics Education 29, from memory")

// Clashes of squares: the rectangle, also turned.
func (t Squares) Clashes() []string {
	return []string{fmt.Sprintf("squares:%d,%d", min(t.Rows, t.Columns), max(t.Rows, t.Columns))}
}

// Fingerprint of squares is its text.
func (t Squares) Fingerprint() string { return t.String() }

// Looks of squares.
func (t Squares) Looks() []Look { return []Look{LookSquares} }
