package sheet

import "evenhand/standards/task"

// Sizes of bars to compare in millimetres.
const (
	mostStep   = 9.0 // of length, for one
	longestBar = 10
	tallStep   = 5.0 // of height
	tallWide   = 9.0
)

// step is what one of length is drawn as where so much room stays free beside the longest bar.
func (k kit) step(beside float64) float64 { return min(mostStep, (k.width-beside)/longestBar) }

// lyingBar is a bar that lies, so long.
func lyingBar(w float64) drawing {
	return drawing{w: w, h: barTall, axis: barTall / 2, paint: func(c canvas, at point) { oblong(c, at, w, barTall, pale) }}
}

// twoBars draws two bars from one line, lying or standing, with a box to mark beside each.
func twoBars(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Lengths)
	if !ok || t.N != 2 {
		return drawing{}, false
	}
	if t.Ask == task.WhichTaller {
		a, b := k.standing(t, 0), k.standing(t, 1)
		d := row(6*k.gap(), a, b)
		return d, true
	}
	step := k.step(placeWidth + letterRoom + 2*k.gap())
	return stack(3, k.pictured("A", t.Key(), lyingBar(step*float64(t.Bars[0]))), k.pictured("B", t.Key(), lyingBar(step*float64(t.Bars[1])))), true
}

// standing is a bar that stands, over its letter and a box to mark; all feet of a row are level.
func (k kit) standing(t task.Lengths, i int) drawing {
	tall := tallStep * float64(t.Bars[i])
	bar := drawing{w: tallWide, h: tall, axis: tall, paint: func(c canvas, at point) { oblong(c, at, tallWide, tall, pale) }}
	d := centred(2, bar, k.bold(letter(i)), k.markBox(letter(i) == t.Key()))
	d.axis = tall
	return d
}

// threeBars draws three bars from one line, with a box before each for its place.
func threeBars(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Lengths)
	if !ok || t.Ask != task.LengthOrder {
		return drawing{}, false
	}
	step := k.step(placeWidth + letterRoom + 2*k.gap())
	var rows []drawing
	for i := range t.N {
		place := k.box(placeWidth, boxHeight, t.Fills()[i])
		rows = append(rows, row(k.gap(), place, k.named(letter(i)), lyingBar(step*float64(t.Bars[i]))))
	}
	return stack(3, rows...), true
}

// barPairs draws two pictures: A beside B, and B beside C. The second begins further in, so that A and C
// aren't compared by eye.
func barPairs(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Lengths)
	if !ok || t.N != 3 || t.Ask == task.LengthOrder {
		return drawing{}, false
	}
	const indent = 14.0
	step := k.step(letterRoom + k.gap() + indent + 4)
	pair := func(first, second int) drawing {
		var rows []drawing
		for _, i := range []int{first, second} {
			rows = append(rows, row(k.gap(), k.named(letter(i)), lyingBar(step*float64(t.Bars[i]))))
		}
		return margined(2, stack(1, rows...))
	}
	second := pair(1, 2)
	moved := drawing{w: second.w + indent, h: second.h, axis: second.axis, paint: func(c canvas, at point) { second.paint(c, point{at.x + indent, at.y}) }}
	boxes := row(3*k.gap(), row(k.gap(), k.markBox(t.Key() == "A"), k.bold("A")), row(k.gap(), k.markBox(t.Key() == "C"), k.bold("C")))
	return stack(4, pair(0, 1), moved, boxes), true
}

// margined is a drawing in a thin frame that keeps off it.
func margined(margin float64, d drawing) drawing {
	return framed(within(d.w+2*margin, d.h+2*margin, d))
}

// What is said of bars.
var (
	barsSaid  = phrase{"Bars from one line.", "Barras desde una misma línea."}
	firstPair = phrase{"First picture.", "Primer dibujo."}
	otherPair = phrase{"Second picture.", "Segundo dibujo."}
	stepSaid  = phrase{"step", "paso"}
)

// barsAloud tells how long each bar is in steps, to be counted by ear.
func barsAloud(k kit, asked task.Task) []string {
	t := asked.(task.Lengths)
	return append([]string{k.say(barsSaid)}, append(k.stepsOf(t, 0, t.N), t.Said(k.lang))...)
}

// stepsOf are the bars from one to before another in steps.
func (k kit) stepsOf(t task.Lengths, from, to int) (said []string) {
	for i := from; i < to; i++ {
		said = append(said, letter(i)+": "+k.things(stepSaid, t.Bars[i], 5))
	}
	return said
}

func barPairsAloud(k kit, asked task.Task) []string {
	t := asked.(task.Lengths)
	said := append([]string{k.say(firstPair)}, k.stepsOf(t, 0, 2)...)
	said = append(append(said, k.say(otherPair)), k.stepsOf(t, 1, 3)...)
	return append(said, t.Prompt(k.lang))
}

var (
	longerBar  = phrase{"Look at the bars. Mark the box of the longer bar.", "Mira las barras. Marca el cuadro de la barra más larga."}
	shorterBar = phrase{"Look at the bars. Mark the box of the shorter bar.", "Mira las barras. Marca el cuadro de la barra más corta."}
	tallerBar  = phrase{"Look at the bars. Mark the box of the taller bar.", "Mira las barras. Marca el cuadro de la barra más alta."}
	longerOf2  = phrase{
		"Bar B is the same in both pictures. Which is longer, A or C? Mark its box.",
		"La barra B es la misma en los dos dibujos. ¿Cuál es más larga, A o C? Marca su cuadro."}
	shorterOf2 = phrase{
		"Bar B is the same in both pictures. Which is shorter, A or C? Mark its box.",
		"La barra B es la misma en los dos dibujos. ¿Cuál es más corta, A o C? Marca su cuadro."}
)

func barsDirection(asked task.Task) (said phrase, ok bool) {
	t, ok := asked.(task.Lengths)
	if ok {
		said, ok = map[task.LengthAsk]phrase{task.WhichShorter: shorterBar, task.WhichTaller: tallerBar, task.ShorterByAThird: shorterOf2}[t.Ask]
	}
	return said, ok
}
