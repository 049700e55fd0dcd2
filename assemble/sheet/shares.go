package sheet

import (
	"math"
	"strings"

	"evenhand/standards/task"
)

// cutUnit is the height of a shape that is cut, in millimetres.
const (
	cutUnit   = 26.0
	leastUnit = 16.0
	drawUnit  = 42.0 // of one that a child cuts
)

// cut is a shape in its shares, the given one gray; −1 for none.
func cut(c task.Cut, unit float64, gray int) drawing {
	d := room(c, unit)
	d.paint = func(on canvas, at point) {
		from := point{at.x + figureEdge, at.y + figureEdge}
		for i, share := range c.Shares() {
			look := style{line: plain}
			if i == gray {
				look.fill = shaded
			}
			on.polygon(placed(share, from, unit), look)
		}
	}
	return d
}

// room is as much as a shape needs.
func room(c task.Cut, unit float64) drawing {
	high := 0.0
	for _, p := range c.Outline() {
		high = max(high, p.X)
	}
	w, h := unit*high+2*figureEdge, unit+2*figureEdge
	return drawing{w: w, h: h, axis: h / 2}
}

// shares is a shape in its shares, and boxes to mark or one for a number.
func shares(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Shares)
	if !ok {
		return drawing{}, false
	}
	if task.FixedAnswers(asked) == nil {
		return row(4*k.gap(), cut(t.Cut, cutUnit, -1), k.answerBox(2, t.Key())), true
	}
	return k.choosing(cut(t.Cut, cutUnit, -1), asked), true
}

func sharesAloud(k kit, asked task.Task) []string {
	t := asked.(task.Shares)
	return []string{upper(t.Cut.Told(k.lang)) + ".", t.Prompt(k.lang)}
}

var (
	markShares = phrase{"Are all the shares the same size? Mark yes or no.", "¿Son todas las partes del mismo tamaño? Marca sí o no."}
	markName   = phrase{"The shares are equal. Mark what one share of the whole is called.", "Las partes son iguales. Marca cómo se llama una parte del entero."}
)

func sharesDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.Shares)
	switch {
	case ok && t.Asks == "equal shares":
		return markShares, true
	case ok && t.Asks == "name share":
		return markName, true
	}
	return promptOf[task.Shares](asked)
}

// findCuts is a row of shapes in their shares, with a letter and a box to mark under each.
func findCuts(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.FindCuts)
	if !ok {
		return drawing{}, false
	}
	widest := 0.0 // for a height of 1
	for _, c := range t.List() {
		widest = max(widest, room(c, 1).w-2*figureEdge)
	}
	unit := max(leastUnit, min(cutUnit, (k.width/float64(t.N)-2*k.gap()-2*figureEdge)/widest))
	var pictures []drawing
	for _, c := range t.List() {
		pictures = append(pictures, cut(c, unit, -1))
	}
	return k.lettered(pictures, t.Right), true
}

func findCutsAloud(k kit, asked task.Task) []string {
	t := asked.(task.FindCuts)
	var list []string
	for _, c := range t.List() {
		list = append(list, c.Told(k.lang))
	}
	return []string{t.Prompt(k.lang), k.lettersAloud(list)}
}

// largerShare is two shapes, the first share of each gray, with a box to mark under each and one between.
func largerShare(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.LargerShare)
	if !ok {
		return drawing{}, false
	}
	box := func(name string) drawing { return k.markBox(t.Key() == name) }
	same := k.text(task.AnswerIn(asked, "same", k.lang))
	// In large print the three stand closer, and the shapes are smaller if need be.
	perUnit := room(t.Left, 1).w + room(t.Right, 1).w - 4*figureEdge
	free := k.width - 4*figureEdge - max(same.w, placeWidth)
	unit := min(cutUnit, (free-4*k.gap())/perUnit)
	left, right := cut(t.Left, unit, 0), cut(t.Right, unit, 0)
	apart := min(6*k.gap(), (free-unit*perUnit)/2)
	middle := centred(3, within(same.w, left.h, same), box("same"))
	return row(apart, centred(3, left, box("left")), middle, centred(3, right, box("right"))), true
}

func largerShareAloud(k kit, asked task.Task) []string {
	t := asked.(task.LargerShare)
	return []string{t.Prompt(k.lang), k.say(leftSaid), t.Left.Told(k.lang) + ".", k.say(rightSaid), t.Right.Told(k.lang) + "."}
}

// cutShape is a shape to cut; the key has one right way.
func cutShape(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.CutShape)
	if !ok {
		return drawing{}, false
	}
	c := t.Solution()
	d := room(c, drawUnit)
	d.paint = func(on canvas, at point) {
		from := point{at.x + figureEdge, at.y + figureEdge}
		on.polygon(placed(c.Outline(), from, drawUnit), style{line: plain})
		if k.key {
			cut(c, drawUnit, -1).paint(on, at)
		}
	}
	return d, true
}

// squares is a rectangle of squares, or with marks at its edges, and a box for how many.
func squares(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Squares)
	if !ok {
		return drawing{}, false
	}
	w, h := squareSide*float64(t.Columns), squareSide*float64(t.Rows)
	d := drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		c.rect(at, w, h, style{line: plain})
		for i := 1; i < t.Columns; i++ {
			x := at.x + squareSide*float64(i)
			inner(c, point{x, at.y}, point{x, at.y + h}, t.ToDraw, k.key)
		}
		for i := 1; i < t.Rows; i++ {
			y := at.y + squareSide*float64(i)
			inner(c, point{at.x, y}, point{at.x + w, y}, t.ToDraw, k.key)
		}
	}}
	return row(4*k.gap(), d, k.answerBox(2, t.Key())), true
}

// Sizes of squares in rows in millimetres, and of the marks where lines begin.
const (
	squareSide = 11.0
	edgeMark   = 2.5
)

// inner is a line across a rectangle, or marks at both its ends, and on the key the line between.
func inner(c canvas, from, to point, marks, whole bool) {
	if !marks {
		c.line(from, to, style{line: plain})
		return
	}
	length := math.Hypot(to.x-from.x, to.y-from.y)
	at := func(d float64) point {
		return point{from.x + (to.x-from.x)*d/length, from.y + (to.y-from.y)*d/length}
	}
	c.line(from, at(edgeMark), style{line: plain})
	c.line(at(length-edgeMark), to, style{line: plain})
	if whole {
		c.line(from, to, style{line: plain})
	}
}

var (
	squareSaid = phrase{"square", "cuadrado"}
	rowsSaid   = phrase{"A rectangle. Its rows, from the top: ", "Un rectángulo. Sus filas, desde arriba: "}
	edgesSaid  = phrase{
		"A rectangle with marks for its rows and columns. Its rows, from the top: ",
		"Un rectángulo con marcas para sus filas y columnas. Sus filas, desde arriba: "}
)

func squaresAloud(k kit, asked task.Task) []string {
	t := asked.(task.Squares)
	opening := rowsSaid
	if t.ToDraw {
		opening = edgesSaid
	}
	return []string{k.say(opening) + strings.TrimSpace(k.things(squareSaid, t.Rows*t.Columns, t.Columns)), t.Prompt(k.lang)}
}
