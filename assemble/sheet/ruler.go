package sheet

import (
	"fmt"
	"strconv"

	"evenhand/standards/task"
)

// Lengths on paper, in millimetres, whatever the print: 1 inch is 25.4 mm exactly (international yard
// and pound agreement of 1959).
const (
	centimeter = 10.0
	inch       = 25.4
)

// Sizes of a ruler in millimetres.
const (
	barTall   = 7.0
	rulerTall = 11.0
	longTick  = 4.5
	shortTick = 2.2
)

// unitOf is a unit of length as it has to be drawn so that it is printed in true size.
func (k kit) unitOf(inches bool) float64 {
	if inches {
		return inch / k.scale
	}
	return centimeter / k.scale
}

// measure draws one or two bars above a ruler in true size, a box for the answer, and a line by which
// a teacher sees whether the sheet was printed in full size.
func measure(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Ruler)
	if !ok {
		return drawing{}, false
	}
	answer := row(k.gap(), k.answerBox(2, t.Key()), k.print(k.unitShort(t), k.inGraph()))
	return stack(4, k.measured(t), row(4*k.gap(), answer, k.fullSize(t.Inches))), true
}

var (
	centimetersShort = phrase{"cm", "cm"}
	inchesShort      = phrase{"inches", "pulgadas"}
)

func (k kit) unitShort(t task.Ruler) string {
	if t.Inches {
		return k.say(inchesShort)
	}
	return k.say(centimetersShort)
}

// measured is the bars, one above the other, over the ruler.
func (k kit) measured(t task.Ruler) drawing {
	l := k.inGraph()
	l.align = centre
	unit := k.unitOf(t.Inches)
	edge := k.face.width(strconv.Itoa(t.Reach()), l) / 2 // half the last number stands out
	edge = max(edge, min(edge+.3, (k.width-unit*float64(t.Reach()))/2))
	bars := [][2]int{{t.From, t.To}}
	if t.Two() {
		bars = append(bars, [2]int{t.OtherFrom, t.OtherTo})
	}
	top := (barTall + 2) * float64(len(bars)-1)
	d := drawing{w: 2*edge + unit*float64(t.Reach()), h: top + barTall + rulerTall, axis: top + barTall/2}
	d.paint = func(c canvas, at point) {
		foot := at.y + top + barTall // where the ruler begins
		place := func(n float64) float64 { return at.x + edge + unit*n }
		for i, bar := range bars {
			y := foot - float64(i)*(barTall+2)
			from, to := place(float64(bar[0])), place(float64(bar[1]))
			c.polygon([]point{{from, y}, {from, y - barTall}, {to, y - barTall}, {to, y}}, style{line: plain, fill: pale})
			if i > 0 {
				for _, x := range []float64{from, to} {
					c.line(point{x, y}, point{x, foot}, style{line: thin, dashed: true})
				}
			}
		}
		c.polygon([]point{{at.x, foot}, {at.x + d.w, foot}, {at.x + d.w, foot + rulerTall}, {at.x, foot + rulerTall}}, style{line: plain})
		for n := range 2*t.Reach() + 1 {
			x, long := place(float64(n)/2), shortTick
			if n%2 == 0 {
				long = longTick
				c.text(point{x, foot + longTick + 1 + k.face.digit*l.size}, strconv.Itoa(n/2), l)
			}
			c.line(point{x, foot}, point{x, foot + long}, style{line: thin})
		}
	}
	return d
}

var (
	fiveCentimeters = phrase{"Print at full size: this line is 5 cm long.", "Imprima a tamaño real: esta línea mide 5 cm."}
	twoInches       = phrase{"Print at full size: this line is 2 inches long.", "Imprima a tamaño real: esta línea mide 2 pulgadas."}
)

// fullSize is a line of known length for the teacher to check the print by.
func (k kit) fullSize(inches bool) drawing {
	long, said := 5*k.unitOf(false), fiveCentimeters
	if inches {
		long, said = 2*k.unitOf(true), twoInches
	}
	print := k.print(k.say(said), lettering{size: smallPrint / k.scale})
	line := drawing{w: long, h: 4, axis: 2, paint: func(c canvas, at point) {
		c.line(point{at.x, at.y + 2}, point{at.x + long, at.y + 2}, style{line: plain})
		c.line(point{at.x, at.y}, point{at.x, at.y + 4}, style{line: thin})
		c.line(point{at.x + long, at.y}, point{at.x + long, at.y + 4}, style{line: thin})
	}}
	return level(stack(.5, line, print))
}

// What is said of a ruler.
var (
	rulerSaid      = phrase{"A ruler. A bar begins at %d and lies over these spaces:", "Una regla. Una barra empieza en el %d y ocupa estos espacios:"}
	otherBarSaid   = phrase{"Another bar begins at %d and lies over these spaces:", "Otra barra empieza en el %d y ocupa estos espacios:"}
	centimeterSaid = phrase{"centimeter", "centímetro"}
	inchSaid       = phrase{"inch", "pulgada"}
	useRuler       = phrase{"Use the ruler. Write how long the bar is.", "Usa la regla. Escribe cuánto mide la barra."}
	longerByRuler  = phrase{"Use the ruler. Write how much longer the longer bar is.", "Usa la regla. Escribe cuánto más mide la barra más larga."}
)

func measureDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.Ruler)
	return longerByRuler, ok && t.Two()
}

// measureAloud names the spaces that a bar covers, to be counted by ear.
func measureAloud(k kit, asked task.Task) []string {
	t := asked.(task.Ruler)
	unit := centimeterSaid
	if t.Inches {
		unit = inchSaid
	}
	said := []string{fmt.Sprintf(k.say(rulerSaid), t.From), k.things(unit, t.Length(), 5)}
	if t.Two() {
		said = append(said, fmt.Sprintf(k.say(otherBarSaid), t.OtherFrom), k.things(unit, t.OtherLength(), 5))
	}
	return append(said, t.Prompt(k.lang))
}
