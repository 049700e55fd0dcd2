package sheet

import (
	"fmt"
	"math"
	"strings"

	"evenhand/standards/task"
)

// The side of a piece in millimetres, and the least where there is little room.
const (
	pieceUnit  = 15.0
	leastPiece = 9.0
)

// outline is a closed shape, with the seams of its parts where those are to be seen.
func outline(corners []task.Place, seams [][]task.Place, unit float64) drawing {
	low, high := corners[0], corners[0]
	for _, p := range corners {
		low, high = task.Place{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, task.Place{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	w, h := unit*(high.X-low.X)+2*figureEdge, unit*(high.Y-low.Y)+2*figureEdge
	return drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		from := point{at.x + figureEdge - unit*low.X, at.y + figureEdge - unit*low.Y}
		for _, part := range seams {
			c.polygon(placed(part, from, unit), style{line: thin, dashed: true})
		}
		c.polygon(placed(corners, from, unit), style{line: plain})
	}}
}

// makeShape is a piece, the shape to make, and a box for how many; the key shows the pieces in the shape.
func makeShape(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.MakeShape)
	if !ok {
		return drawing{}, false
	}
	p := t.Pieces()
	whole := outline(p.Outline, nil, pieceUnit)
	if k.key {
		whole = outline(p.Outline, p.Parts, pieceUnit)
	}
	return row(5*k.gap(), outline(t.PieceOutline(), t.Seams(), pieceUnit), whole, k.answerBox(2, t.Key())), true
}

var makeSaid = phrase{"The small shape: %s. The large shape: %s.", "La figura pequeña: %s. La figura grande: %s."}

func makeShapeAloud(k kit, asked task.Task) []string {
	t := asked.(task.MakeShape)
	return []string{t.Prompt(k.lang), fmt.Sprintf(k.say(makeSaid), t.PieceSaid(k.lang), t.WholeSaid(k.lang))}
}

// joinShapes is pieces, and three shapes with a letter and a box to mark under each.
func joinShapes(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.JoinShapes)
	if !ok {
		return drawing{}, false
	}
	unit := pieceUnit
	for unit > leastPiece && k.shapesToJoin(t, unit).w > k.width {
		unit--
	}
	var pieces []drawing
	for range t.N {
		pieces = append(pieces, outline(t.PieceOutline(), nil, unit))
	}
	return stack(5, flow(k.width, 3, 3, pieces...), k.shapesToJoin(t, unit)), true
}

// shapesToJoin are the three shapes to choose from, in one row.
func (k kit) shapesToJoin(t task.JoinShapes, unit float64) drawing {
	var options []drawing
	for i := range t.Options {
		options = append(options, outline(t.Outline(i), nil, unit))
	}
	k.width = math.Inf(1)
	return k.lettered(options, t.Right)
}

var joinSaid = phrase{"The pieces: %s.", "Las piezas: %s."}

func joinShapesAloud(k kit, asked task.Task) []string {
	t := asked.(task.JoinShapes)
	piece := task.MakeShape{Piece: t.Piece}.PieceSaid(k.lang)
	var options []string
	for _, option := range t.Options {
		options = append(options, task.MakeShape{Whole: option}.WholeSaid(k.lang))
	}
	pieces := strings.TrimSuffix(strings.Repeat(piece+", ", t.N), ", ")
	return []string{t.Prompt(k.lang), fmt.Sprintf(k.say(joinSaid), pieces), k.lettersAloud(options)}
}
