package sheet

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"evenhand/standards/task"
)

// Sizes of things to sort in millimetres.
const (
	thingColumns = 6
	thingRows    = 4
	thingCell    = 11.5
	thingRadius  = 4.0
)

// thing is one thing that lies in the picture.
type thing struct {
	sort   string
	middle point
}

// lying are the things of the data at places here and there, the same for the same data, as they are read:
// row by row.
func lying(t task.Data) []thing {
	var list []thing
	for i := range t.N {
		list = append(list, slices.Repeat([]thing{{sort: t.Sorts[i]}}, t.Counts[i])...)
	}
	field := lattice{across: thingColumns, down: thingRows, side: thingCell, radius: thingRadius}
	for i, middle := range strewn(len(list), field, randomBy(t.Clashes()[0], 2)) {
		list[i].middle = middle
	}
	slices.SortFunc(list, func(a, b thing) int {
		if rows := cmp.Compare(int(a.middle.y/thingCell), int(b.middle.y/thingCell)); rows != 0 {
			return rows
		}
		return cmp.Compare(a.middle.x, b.middle.x)
	})
	return list
}

// thingsToSort draws the things in a frame.
func thingsToSort(_ kit, t task.Data) drawing {
	w, h := thingColumns*thingCell, thingRows*thingCell
	return framed(drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		for _, thing := range lying(t) {
			shapeOf(thing.sort)(c, point{at.x + thing.middle.x, at.y + thing.middle.y}, thingRadius)
		}
	}})
}

// shapeOf draws one of the shapes that are sorted.
func shapeOf(sort string) func(c canvas, middle point, radius float64) {
	switch sort {
	case "squares":
		return func(c canvas, m point, r float64) { regular(c, m, r, 4, 1) }
	case "triangles":
		return func(c canvas, m point, r float64) { regular(c, m, r, 3, 1) }
	case "stars":
		return func(c canvas, m point, r float64) { regular(c, m, r, 10, .42) }
	}
	return func(c canvas, m point, r float64) { c.circle(m, .85*r, style{line: plain}) }
}

// regular draws a shape of corners around a middle, every second of them at a share of the radius.
func regular(c canvas, middle point, radius float64, corners int, second float64) {
	list := make([]point, corners)
	turn := -math.Pi / 2
	if corners == 4 {
		turn -= math.Pi / 4
	}
	for i := range list {
		r := radius
		if i%2 == 1 {
			r *= second
		}
		sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/float64(corners))
		list[i] = point{middle.x + r*cos, middle.y + r*sin}
	}
	c.polygon(list, style{line: plain})
}

// thingsAloud names the things as they lie.
func thingsAloud(k kit, asked task.Task) []string {
	t := asked.(task.Data)
	var list []string
	for _, thing := range lying(t) {
		for i := range t.N {
			if t.Sorts[i] == thing.sort {
				list = append(list, t.OneIn(i, k.lang))
			}
		}
	}
	return []string{strings.Join(list, ", ") + ".", t.Said(k.lang)}
}
