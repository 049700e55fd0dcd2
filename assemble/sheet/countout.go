package sheet

import "evenhand/standards/task"

// countOut is dots to color; the key has the first of them gray.
func countOut(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.CountOut)
	if !ok {
		return drawing{}, false
	}
	d := rings(t.Of, 10)
	outlines := d.paint
	d.paint = func(c canvas, at point) {
		outlines(c, at)
		for i := range t.Number {
			if k.key {
				middle := point{at.x + ringPitch*(float64(i%10)+.5), at.y + ringPitch*(float64(i/10)+.5)}
				oval(c, point{middle.x - .6*ringRadius, middle.y - .6*ringRadius}, 1.2*ringRadius, 1.2*ringRadius, style{fill: shaded})
			}
		}
	}
	return d, true
}

func countOutAloud(k kit, asked task.Task) []string {
	return []string{asked.Prompt(k.lang), k.things(dotSaid, asked.(task.CountOut).Of, 10)}
}
