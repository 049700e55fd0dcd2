package sheet

import "evenhand/standards/task"

// A field of dots to draw on: so many across and down, so far apart in millimetres.
const (
	fieldAcross = 9
	fieldDown   = 6
	fieldPitch  = 10.0
	fieldDot    = .7
)

// drawnCorners are one right drawing for each sort, by the dots that it joins.
var drawnCorners = map[string][][2]float64{
	"triangle": {{2, 4}, {6, 4}, {4, 1}}, "3 corners": {{1, 4}, {6, 3}, {3, 1}},
	"square": {{2, 1}, {5, 1}, {5, 4}, {2, 4}}, "rectangle": {{1, 1}, {6, 1}, {6, 4}, {1, 4}},
	"quadrilateral": {{2, 1}, {5, 1}, {7, 4}, {1, 4}}, "4 corners": {{3, 1}, {6, 2}, {5, 4}, {1, 4}},
	"pentagon": {{4, 0}, {6, 2}, {6, 5}, {2, 5}, {2, 2}}, "5 corners": {{4, 0}, {6, 2}, {5, 5}, {3, 5}, {2, 2}},
	"hexagon": {{3, 1}, {5, 1}, {6, 3}, {5, 5}, {3, 5}, {2, 3}}, "6 corners": {{2, 1}, {6, 1}, {7, 3}, {6, 5}, {2, 5}, {1, 3}},
}

// drawShape is a field of dots; on the key one right drawing.
func drawShape(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.DrawShape)
	if !ok {
		return drawing{}, false
	}
	w, h := fieldPitch*(fieldAcross-1)+2*fieldEdge, fieldPitch*(fieldDown-1)+2*fieldEdge
	return drawing{w: w, h: h, axis: k.size / 2, paint: func(c canvas, at point) {
		place := func(x, y float64) point {
			return point{at.x + fieldEdge + fieldPitch*x, at.y + fieldEdge + fieldPitch*y}
		}
		for y := range fieldDown {
			for x := range fieldAcross {
				c.circle(place(float64(x), float64(y)), fieldDot, style{fill: black})
			}
		}
		if k.key {
			var corners []point
			for _, p := range drawnCorners[t.Sort] {
				corners = append(corners, place(p[0], p[1]))
			}
			c.polygon(corners, style{line: thick})
		}
	}}, true
}

// fieldSaid is the field for who can't see it.
var fieldSaid = phrase{"Below is a field of dots to draw on.", "Abajo hay un campo de puntos para dibujar."}

func drawShapeAloud(k kit, asked task.Task) []string {
	return []string{asked.Prompt(k.lang), k.say(fieldSaid)}
}
