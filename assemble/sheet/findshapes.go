package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// findShapes is a row of shapes, a letter and a box to mark under each.
func findShapes(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.FindShapes)
	if !ok {
		return drawing{}, false
	}
	var pictures []drawing
	for _, f := range t.List() {
		pictures = append(pictures, k.figure(f, rowRadius))
	}
	return k.lettered(pictures, t.Right), true
}

// lettered sets pictures beside each other, in one row if they fit, with a letter and a box to mark under each.
func (k kit) lettered(pictures []drawing, right func(i int) bool) drawing {
	var all []drawing
	height := 0.0
	for _, picture := range pictures {
		height = max(height, picture.h)
	}
	for i, picture := range pictures {
		picture = within(picture.w, height, picture) // the boxes stand level
		below := row(k.gap()/2, k.bold(letter(i)), k.markBox(right(i)))
		one := centred(2, picture, below)
		one.axis = 0
		all = append(all, one)
	}
	gap := 2 * k.gap()
	if n := float64(len(all) - 1); n > 0 { // closer, if that saves a row
		if closest := (k.width - widths(all)) / n; closest >= leastLetteredGap {
			gap = min(gap, closest)
		}
	}
	return flow(k.width, gap, 4, all...)
}

// leastLetteredGap is how close pictures with letters may stand, in millimetres.
const leastLetteredGap = 1.0

// widths is how wide drawings are together.
func widths(all []drawing) (w float64) {
	for _, d := range all {
		w += d.w
	}
	return w
}

func letter(i int) string { return string(rune('A' + i)) }

func findShapesAloud(k kit, asked task.Task) []string {
	t := asked.(task.FindShapes)
	var list []string
	for _, f := range t.List() {
		list = append(list, f.Told(k.lang))
	}
	return []string{t.Prompt(k.lang), k.lettersAloud(list)}
}

// lettersAloud names pictures by their letters.
func (k kit) lettersAloud(told []string) string {
	for i := range told {
		told[i] = letter(i) + ": " + told[i]
	}
	return strings.Join(told, "; ") + "."
}
