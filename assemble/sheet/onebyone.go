package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// oneByOne is dots to write numbers into, dots before and after they are moved, or dots and one more.
func oneByOne(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.OneByOne)
	if !ok {
		return drawing{}, false
	}
	box := k.answerBox(2, t.Key())
	switch t.Asks {
	case task.NumberDots:
		return flow(k.width, 4*k.gap(), 3, k.numbered(t.Dots), box), true
	case task.DotsMoved:
		before := framed(within(fieldWidth, fieldHeight, rings(t.Dots, 5)))
		return k.toldAbove(asked, before, arrowRight(), framed(field(scattered(t.Dots, t.String()))), box), true
	}
	return k.toldAbove(asked, rings(t.Dots, 5), rings(1, 1), box), true
}

// toldAbove is the question, and its picture and box below.
func (k kit) toldAbove(asked task.Task, parts ...drawing) drawing {
	told := tagged(tagText, "", k.paragraph(k.prompt(asked), lettering{size: k.size}))
	return stack(4, told, flow(k.width, 2*k.gap(), 3, parts...))
}

// numbered are dots in rows of five, large enough to write numbers into.
func (k kit) numbered(n int) drawing {
	var rows []drawing
	for from := 1; from <= n; from += 5 {
		var dots []drawing
		for i := from; i < from+5 && i <= n; i++ {
			dots = append(dots, k.ring(numberedRadius*k.size, strconv.Itoa(i)))
		}
		rows = append(rows, row(numberedGap, dots...))
	}
	d := stack(numberedGap, rows...)
	d.axis = d.h / 2
	return d
}

// numberedRadius is half a dot to write into, as a share of the type; numberedGap is in millimetres.
const (
	numberedRadius = 1.12
	numberedGap    = 2.0
)

// Sizes of an arrow in millimetres.
const (
	arrowLength = 9.0
	arrowTip    = 2.5
)

// arrowRight is an arrow to what comes next.
func arrowRight() drawing {
	return drawing{w: arrowLength, h: 2 * arrowTip, axis: arrowTip, paint: func(c canvas, at point) {
		tip := point{at.x + arrowLength, at.y + arrowTip}
		c.line(point{at.x, tip.y}, tip, style{line: plain})
		for _, side := range []float64{-arrowTip, arrowTip} {
			c.line(point{tip.x - arrowTip, tip.y + side}, tip, style{line: plain})
		}
	}}
}

func oneByOneDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.OneByOne)
	return phrase{"Look at the dots. Write how many there are now.", "Mira los puntos. Escribe cuántos hay ahora."}, ok && t.Asks != task.NumberDots
}

func oneByOneAloud(k kit, asked task.Task) []string {
	t := asked.(task.OneByOne)
	if t.Asks == task.OneMoreDot {
		return []string{t.Prompt(k.lang)}
	}
	return []string{t.Prompt(k.lang), k.things(dotSaid, t.Dots, 5)}
}
