package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// Sizes of a bar graph in millimetres.
const (
	barUnit    = 5.0 // height of one
	leastBar   = 13.0
	barShare   = .62 // of the room for a sort
	topOfScale = 10
)

// barGraph draws a bar for each sort over a scale of ones. A graph to be drawn stands beside its
// table, its bars left to the pupil.
func barGraph(k kit, t task.Data) drawing {
	graph := k.bars(t)
	if t.Ask != task.DrawIt {
		return graph
	}
	return k.besideSource(k.countsTable(t), graph)
}

// bars is the graph.
func (k kit) bars(t task.Data) drawing {
	l := k.inGraph()
	l.align = right
	scale := k.face.width("10", l) + 2
	above := l.size / 2
	pitch := min(max(leastBar, k.namesWidth(t)+namesGap), (k.width-scale)/float64(t.N))
	d := drawing{w: scale + pitch*float64(t.N), h: above + barUnit*topOfScale + 1.4*l.size}
	d.axis = d.h / 2
	d.paint = func(c canvas, at point) {
		foot := point{at.x + scale, at.y + above + barUnit*topOfScale}
		for n := range topOfScale + 1 {
			y := foot.y - barUnit*float64(n)
			c.line(point{foot.x, y}, point{at.x + d.w, y}, style{line: thin})
			c.text(point{foot.x - 1.5, y + k.face.digit*l.size/2}, strconv.Itoa(n), l)
		}
		c.line(foot, point{foot.x, foot.y - barUnit*topOfScale}, style{line: plain})
		for i := range t.N {
			left := foot.x + pitch*(float64(i)+(1-barShare)/2)
			if k.made(t) {
				k.bar(c, point{left, foot.y}, pitch*barShare, barUnit*float64(t.Counts[i]))
			}
			name := k.sortName(t, i)
			name.paint(c, point{foot.x + pitch*(float64(i)+.5) - name.w/2, foot.y + .1*l.size})
		}
		c.line(foot, point{at.x + d.w, foot.y}, style{line: plain})
	}
	return d
}

// bar is a bar of a graph, its foot's left end at the point.
func (k kit) bar(c canvas, foot point, w, h float64) {
	c.polygon([]point{foot, {foot.x, foot.y - h}, {foot.x + w, foot.y - h}, {foot.x + w, foot.y}}, style{line: plain, fill: pale})
}

func squaresHeard(k kit, n int) string { return k.things(squareUnit, n, 5) }

var drawBars = phrase{"Draw the bars of the graph. Take the numbers from the table.", "Dibuja las barras de la gráfica. Toma los números de la tabla."}
