package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// Sizes of a line plot in millimetres.
const (
	plotPitch = 15.0 // from one length to the next
	plotCross = 4.5  // an x
	plotStep  = 6.5  // from one x to the one above
	plotRoom  = 5    // x over each other
)

// linePlot draws an x for each thing over its length, and beside it the question; a plot to be drawn stands
// below the list of lengths.
func linePlot(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.LinePlot)
	if !ok {
		return drawing{}, false
	}
	plot := k.plot(t, t.Ask != task.PlotDraw || k.key)
	if t.Ask != task.PlotDraw {
		return k.beside(plot, func(k kit) drawing {
			return stack(3, k.paragraph(k.prompt(t), lettering{size: k.size}), k.answerBox(2, t.Key()))
		}), true
	}
	return stack(4, k.paragraph(k.lengthList(t), lettering{size: k.size}), plot), true
}

// lengthList is the lengths that were measured: "5 cm, 4 cm, 6 cm".
func (k kit) lengthList(t task.LinePlot) string {
	parts := make([]string, 0, len(t.Lengths()))
	for _, n := range t.Lengths() {
		parts = append(parts, strconv.Itoa(n))
	}
	return fmt.Sprintf("%s %s.", k.say(k.listed(t)), strings.Join(parts, ", "))
}

func (k kit) listed(t task.LinePlot) phrase {
	if t.Inches {
		return phrase{"Lengths in inches:", "Medidas en pulgadas:"}
	}
	return phrase{"Lengths in cm:", "Medidas en cm:"}
}

// scaleTitle stands below the scale, by whether it is in inches.
var scaleTitle = map[bool]phrase{
	false: {"length in centimeters", "medida en centímetros"},
	true:  {"length in inches", "medida en pulgadas"},
}

// plot is the scale and the marks over it; filled says that the marks stand there.
func (k kit) plot(t task.LinePlot, filled bool) drawing {
	l := k.inGraph()
	l.align = centre
	pitch := min(plotPitch, k.width/float64(t.N))
	below := longTick + 1 + l.size
	title := k.print(k.say(scaleTitle[t.Inches]), k.inGraph())
	d := drawing{w: max(pitch*float64(t.N), title.w), h: plotStep*plotRoom + below + title.h}
	d.axis = d.h / 2
	d.paint = func(c canvas, at point) {
		foot := at.y + plotStep*plotRoom
		c.line(point{at.x, foot}, point{at.x + pitch*float64(t.N), foot}, style{line: plain})
		for i := range t.N {
			x := at.x + pitch*(float64(i)+.5)
			c.line(point{x, foot - longTick/2}, point{x, foot + longTick/2}, style{line: thin})
			c.text(point{x, foot + longTick/2 + 1 + k.face.digit*l.size}, strconv.Itoa(t.First+i), l)
			for j := 0; filled && j < t.Counts[i]; j++ {
				cross(c, point{x, foot - plotStep*(float64(j)+.5) - longTick/4}, plotCross)
			}
		}
		title.paint(c, point{at.x, foot + below})
	}
	return d
}

// cross draws an x of a size around a middle.
func cross(c canvas, m point, size float64) {
	r := size / 2
	c.line(point{m.x - r, m.y - r}, point{m.x + r, m.y + r}, style{line: plain})
	c.line(point{m.x - r, m.y + r}, point{m.x + r, m.y - r}, style{line: plain})
}

// What is said of a line plot.
var (
	plotName = phrase{"line plot", "diagrama de puntos"}
	plotMark = phrase{"x", "x"}
	noMark   = phrase{"nothing.", "nada."}
	drawPlot = phrase{"Draw the line plot. Make an x over the line for each length.", "Dibuja el diagrama de puntos. Haz una x sobre la recta por cada medida."}
)

func linePlotDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.LinePlot)
	return drawPlot, ok && t.Ask == task.PlotDraw
}

// linePlotAloud tells the marks over each length, to be counted by ear.
func linePlotAloud(k kit, asked task.Task) []string {
	t := asked.(task.LinePlot)
	if t.Ask == task.PlotDraw {
		return []string{k.lengthList(t), t.Prompt(k.lang)}
	}
	said := []string{k.say(plotName) + "."}
	for i := range t.N {
		marks := k.say(noMark)
		if t.Counts[i] > 0 {
			marks = k.things(plotMark, t.Counts[i], 0)
		}
		said = append(said, fmt.Sprintf("%d: %s", t.First+i, marks))
	}
	return append(said, t.Prompt(k.lang))
}
