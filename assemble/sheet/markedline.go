package sheet

import (
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// Sizes of a marked line in millimetres.
const (
	markRoom  = 12.0 // above the line, for the arrow
	arrowHead = 3.0
)

// What is said of a marked line.
var (
	fromZeroSaid = phrase{"A number line. Its ticks: %s.", "Una recta numérica. Sus rayas: %s."}
	tickSaid     = phrase{"tick", "raya"}
	markSaid     = phrase{"the mark", "la marca"}
)

// markedLine is a number line with an arrow at the mark, and a box for its number.
func markedLine(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.MarkedLine)
	if !ok {
		return drawing{}, false
	}
	box := k.answerBox(3, t.Key())
	beside := k.width - box.w - 4*k.gap()
	if pitch, _ := k.pitch(t, beside); pitch < k.face.width(strconv.Itoa(t.Step)+"00", k.ofLine()) { // 0 and the next would touch
		return stack(3, k.lineFromZero(t, k.width, true), box), true
	}
	return row(4*k.gap(), k.lineFromZero(t, beside, true), box), true
}

// ofLine is the print of the numbers below a line.
func (k kit) ofLine() lettering {
	return lettering{size: max(leastPrint, .6*k.size), align: centre}
}

// pitch is how far the ticks of a line of a width are apart, and how far the line begins from its edge.
func (k kit) pitch(t task.MarkedLine, width float64) (pitch, edge float64) {
	edge = k.face.width("100", k.ofLine()) / 2
	return (width - 2*edge) / float64(t.To/t.Step), edge
}

// lineFromZero is the line, and an arrow at the number where it is to be seen.
func (k kit) lineFromZero(t task.MarkedLine, width float64, arrow bool) drawing {
	l := k.ofLine()
	pitch, edge := k.pitch(t, width)
	line := drawing{w: width, h: markRoom + lineBelow + 1.1*l.size, axis: markRoom}
	line.paint = func(c canvas, at point) {
		place := func(n int) point { return point{at.x + edge + pitch*float64(n/t.Step), at.y + markRoom} }
		c.line(place(0), place(t.To), style{line: plain})
		for n := 0; n <= t.To; n += t.Step {
			k.mark(c, place(n), 0)
			if n <= t.Step || n == t.To {
				c.text(point{place(n).x, place(n).y + lineBelow + k.face.digit*l.size}, strconv.Itoa(n), l)
			}
		}
		if !arrow {
			return
		}
		tip := point{place(t.Number).x, at.y + markRoom - 1.8*tickUnit - .5}
		c.line(point{tip.x, at.y}, tip, style{line: thick})
		c.line(point{tip.x - arrowHead/2, tip.y - arrowHead}, tip, style{line: thick})
		c.line(point{tip.x + arrowHead/2, tip.y - arrowHead}, tip, style{line: thick})
	}
	return line
}

// markedLineAloud names the ticks one by one, to be counted by ear.
func markedLineAloud(k kit, asked task.Task) []string {
	t := asked.(task.MarkedLine)
	var ticks []string
	for n := 0; n <= t.To; n += t.Step {
		switch {
		case n <= t.Step || n == t.To:
			ticks = append(ticks, strconv.Itoa(n))
		case n == t.Number:
			ticks = append(ticks, k.say(markSaid))
		default:
			ticks = append(ticks, k.say(tickSaid))
		}
	}
	return []string{strings.Replace(k.say(fromZeroSaid), "%s", strings.Join(ticks, ", "), 1), t.Prompt(k.lang)}
}
