package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// whereRadius is the size of each of two shapes beside each other, in millimetres.
const whereRadius = 9.0

// wherePlaced is where the shape lies from the middle of the other, in radii: what stands in front stands a little lower on a
// picture, what stands behind a little higher.
var wherePlaced = map[string]point{"above": {0, -2}, "below": {0, 2}, "beside": {2.2, 0}, "in front of": {.25, .55}, "behind": {.25, -.55}}

// where is two shapes, and the places to choose from.
func where(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Where)
	if !ok {
		return drawing{}, false
	}
	move := wherePlaced[t.Place]
	low, high := point{min(0, move.x), min(0, move.y)}, point{max(0, move.x), max(0, move.y)}
	w, h := whereRadius*(2+high.x-low.x)+2*figureEdge, whereRadius*(2+high.y-low.y)+2*figureEdge
	picture := drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		other := point{at.x + figureEdge + whereRadius*(1-low.x), at.y + figureEdge + whereRadius*(1-low.y)}
		shape := point{other.x + whereRadius*move.x, other.y + whereRadius*move.y}
		lay := func(form task.Form, middle point) { // what is laid last covers what lies below
			outline := task.Figure{Form: form, Size: task.Large}.Strokes()[0].Points
			c.polygon(placed(outline, middle, whereRadius), style{line: plain, fill: white})
		}
		if t.Place == "behind" {
			lay(t.Shape, shape)
			lay(t.Other, other)
			return
		}
		lay(t.Other, other)
		lay(t.Shape, shape)
	}}
	return k.choosing(picture, asked), true
}

// placeSaid is what is seen on the paper, from which a place is to be told.
var placeSaid = map[string]phrase{
	"above":       {"At the top of the picture: %s. At the foot: %o.", "En la parte alta del dibujo: %s. En la parte baja: %o."},
	"below":       {"At the top of the picture: %o. At the foot: %s.", "En la parte alta del dibujo: %o. En la parte baja: %s."},
	"beside":      {"At one height, from left to right: %o, %s.", "A la misma altura, de izquierda a derecha: %o, %s."},
	"in front of": {"All of one shape is seen, %s. It covers a part of the other, %o.", "Una figura se ve entera, %s. Tapa una parte de la otra, %o."},
	"behind":      {"All of one shape is seen, %o. It covers a part of the other, %s.", "Una figura se ve entera, %o. Tapa una parte de la otra, %s."},
}

func whereAloud(k kit, asked task.Task) []string {
	t := asked.(task.Where)
	name := func(form task.Form) string {
		return task.AnswerIn(task.NameShape{Figure: task.Figure{Form: form}}, string(form), k.lang)
	}
	said := strings.NewReplacer("%s", name(t.Shape), "%o", name(t.Other)).Replace(k.say(placeSaid[t.Place]))
	return []string{said, t.Prompt(k.lang), k.offersAloud(asked)}
}

// whereDirection asks for the place of the one shape.
func whereDirection(asked task.Task) (phrase, bool) {
	_, ok := asked.(task.Where)
	return phrase{asked.Prompt("en") + " Mark the place.", asked.Prompt("es") + " Marca el lugar."}, ok
}
