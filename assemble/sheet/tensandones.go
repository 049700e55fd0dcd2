package sheet

import (
	"slices"
	"strings"

	"evenhand/standards/task"
)

// tensAndOnes draws the number as squares of a hundred, sticks of ten and single
// dots, with its sentence below.
func tensAndOnes(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.PlaceValue)
	if !ok {
		return drawing{}, false
	}
	below, ok := sentence(k, asked)
	return stack(4, blocks(k, t.Number), below), ok
}

// Sizes of the blocks in millimetres: ten small squares make a stick, ten sticks a
// big square.
const (
	unit       = 2.2
	stick      = 10 * unit
	dotRadius  = 1.5
	blockSpace = 3.0
)

// blocks are the hundreds, tens and ones of a number in one row, or more if it is wide.
func blocks(k kit, n int) drawing {
	var kinds []drawing
	for _, kind := range []struct{ count, sticks int }{{n / 100, 10}, {n / 10 % 10, 1}} {
		if kind.count > 0 {
			kinds = append(kinds, flow(k.width, blockSpace, blockSpace, slices.Repeat([]drawing{bundle(kind.sticks)}, kind.count)...))
		}
	}
	if n%10 > 0 {
		kinds = append(kinds, singles(n%10))
	}
	d := flow(k.width, 2*blockSpace, blockSpace, kinds...)
	d.axis = k.size / 2 // the item's number stands at the top
	return d
}

// bundle is a number of sticks side by side, each with its ten parts marked.
func bundle(sticks int) drawing {
	w := unit * float64(sticks)
	return drawing{w: w, h: stick, axis: stick / 2, paint: func(c canvas, at point) {
		c.rect(at, w, stick, style{line: plain, fill: pale})
		for i := 1; i < 10; i++ {
			y := at.y + unit*float64(i)
			c.line(point{at.x, y}, point{at.x + w, y}, style{line: hair})
		}
		for i := 1; i < sticks; i++ {
			x := at.x + unit*float64(i)
			c.line(point{x, at.y}, point{x, at.y + stick}, style{line: hair})
		}
	}}
}

// hair marks the parts of a stick. It may fade in a copy: the sticks stay whole.
const hair = 0.25

// singles are up to nine single ones in two columns that fill from the bottom, five high.
func singles(n int) drawing {
	const pitch = 2*dotRadius + 1.4
	w := pitch*float64((n+4)/5) + dotRadius
	return drawing{w: w, h: stick, axis: stick / 2, paint: func(c canvas, at point) {
		for i := range n {
			middle := point{at.x + dotRadius + pitch*float64(i/5), at.y + stick - dotRadius - pitch*float64(i%5)}
			c.circle(middle, dotRadius, style{fill: black})
		}
	}}
}

var hundreds = phrase{
	"Count the hundreds, the tens and the ones. Write the numbers in the boxes.",
	"Cuenta las centenas, las decenas y las unidades. Escribe los números en los cuadros."}

func blocksDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.PlaceValue)
	return hundreds, ok && t.Number >= 100
}

var (
	hundredSaid = phrase{"square of a hundred", "cuadro de cien"}
	tenSaid     = phrase{"stick of ten", "barra de diez"}
)

func blocksAloud(k kit, asked task.Task) []string {
	t, ok := asked.(task.PlaceValue)
	if !ok {
		return []string{k.questionAloud(asked)}
	}
	n := t.Number
	all := slices.Concat(slices.Repeat([]string{k.say(hundredSaid)}, n/100), slices.Repeat([]string{k.say(tenSaid)}, n/10%10),
		slices.Repeat([]string{k.say(dotSaid)}, n%10))
	return []string{strings.Join(all, ", ") + ".", k.sentenceAloud(t.String())}
}
