package sheet

import "evenhand/standards/task"

// Sizes of a picture graph in millimetres.
const (
	pictureRow   = 10.0
	picturePitch = 9.0
)

// pictureGraph draws a row of rings for each sort, one ring for each thing. A graph to be drawn
// stands below its table.
func pictureGraph(k kit, t task.Data) drawing {
	pitch := min(picturePitch, (k.width-k.namesWidth(t)-3*namesGap)/mostPictures)
	graph := k.ruled(t, pictureRow, pitch*mostPictures+namesGap, func(i int) drawing {
		n := t.Counts[i]
		if !k.made(t) {
			n = 0
		}
		return drawing{w: pitch * mostPictures, h: pictureRow, axis: pictureRow / 2, paint: func(c canvas, at point) {
			for j := range n {
				middle := point{at.x + pitch*(float64(j)+.5) - namesGap/2, at.y + pictureRow/2}
				if t.Ask == task.DrawIt {
					k.drawnRing(c, middle, .36*pitch)
				} else {
					c.circle(middle, .36*pitch, style{line: plain})
				}
			}
		}}
	})
	ring := drawing{w: .72 * pitch, h: .72 * pitch, axis: .36 * pitch, paint: func(c canvas, at point) {
		c.circle(point{at.x + .36*pitch, at.y + .36*pitch}, .36*pitch, style{line: plain})
	}}
	legend := row(1.2, ring, k.print("= 1", k.inGraph()))
	whole := level(stack(2, graph, legend))
	if t.Ask == task.DrawIt {
		return stack(4, k.countsTable(t), whole)
	}
	return whole
}

// mostPictures is the longest row.
const mostPictures = 10

// drawnRing is a ring that the pupil draws, on the key.
func (k kit) drawnRing(c canvas, middle point, radius float64) {
	oval(c, point{middle.x - radius, middle.y - radius}, 2*radius, 2*radius, style{line: plain})
}

func circlesHeard(k kit, n int) string { return k.things(circleSaid, n, 5) }

var drawPictures = phrase{
	"Draw the circles of the graph. Take the numbers from the table.",
	"Dibuja los círculos de la gráfica. Toma los números de la tabla."}
