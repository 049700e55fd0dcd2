package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// pictureSum is two groups of dots, or dots of which some are crossed out, and boxes for the number sentence with a
// ring for its sign.
func pictureSum(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.PictureSum)
	if !ok || t.Draw {
		return drawing{}, false
	}
	var below []drawing
	for _, part := range strings.Fields(t.Key()) {
		switch part {
		case "+", "-":
			below = append(below, k.ring(signRadius, printed(part)))
		case "=":
			below = append(below, k.text(part))
		default:
			below = append(below, k.answerBox(2, part))
		}
	}
	return stack(4, sumOfDots(t), row(k.gap(), below...)), true
}

// sumOfDots shows adding as two groups, and taking away as crosses.
func sumOfDots(t task.PictureSum) drawing {
	if t.Minus {
		return crossedRings(t.First, t.Second)
	}
	return row(2*ringPitch, rings(t.First, 5), rings(t.Second, 5))
}

// crossedRings are dots in rows of five, the last ones crossed out.
func crossedRings(n, crossed int) drawing {
	d := rings(n, 5)
	dots := d.paint
	d.paint = func(c canvas, at point) {
		dots(c, at)
		for i := n - crossed; i < n; i++ {
			m := point{at.x + ringPitch*(float64(i%5)+.5), at.y + ringPitch*(float64(i/5)+.5)}
			for _, side := range []float64{-ringRadius, ringRadius} {
				c.line(point{m.x - ringRadius, m.y - side}, point{m.x + ringRadius, m.y + side}, style{line: plain})
			}
		}
	}
	return d
}

// drawSum is room to draw above the sum or difference.
func drawSum(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.PictureSum)
	if !ok || !t.Draw {
		return drawing{}, false
	}
	_, sum, _ := strings.Cut(t.Prompt(k.lang), ": ")
	return stack(4, k.drawHere(k.width), k.sentenceOf(sum, []string{t.Key()}, 2)), true
}

func pictureSumAloud(k kit, asked task.Task) []string {
	t := asked.(task.PictureSum)
	if t.Minus {
		return []string{t.Prompt(k.lang), k.things(dotSaid, t.First, 5), k.say(crossedSaid), k.things(dotSaid, t.Second, 5)}
	}
	return []string{t.Prompt(k.lang), k.say(leftSaid), k.things(dotSaid, t.First, 5), k.say(rightSaid), k.things(dotSaid, t.Second, 5)}
}

var crossedSaid = phrase{"Of these are crossed out:", "De estos se tachan:"}
