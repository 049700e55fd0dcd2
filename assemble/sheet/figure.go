package sheet

import (
	"fmt"
	"strings"

	"evenhand/standards/task"
)

// Sizes of shapes in millimetres.
const (
	figureRadius = 15.0 // of the circle that a large shape alone fills
	rowRadius    = 12.0 // of one of several
	figureEdge   = 1.0
)

// figure is a shape in the middle of a room for the largest of its kind.
func (k kit) figure(f task.Figure, radius float64) drawing {
	side := 2 * (radius + figureEdge)
	return drawing{w: side, h: side, axis: side / 2, paint: func(c canvas, at point) {
		middle := point{at.x + side/2, at.y + side/2}
		for _, s := range f.Strokes() {
			stroke(c, s, middle, radius)
		}
	}}
}

// stroke draws a line round a middle point, 1 as long as the radius.
func stroke(c canvas, s task.Stroke, middle point, radius float64) {
	points := placed(s.Points, middle, radius)
	if s.Closed {
		c.polygon(points, style{line: plain})
		return
	}
	look := style{line: plain}
	if s.Hidden {
		look = style{line: thin, dashed: true}
	}
	for i := 1; i < len(points); i++ {
		c.line(points[i-1], points[i], look)
	}
}

// placed are places in millimetres from a point on the page.
func placed(places []task.Place, from point, unit float64) []point {
	points := make([]point, len(places))
	for i, p := range places {
		points[i] = point{from.x + unit*p.X, from.y + unit*p.Y}
	}
	return points
}

// fixed are the boxes to mark for the few answers that a task offers, with its word behind each.
func (k kit) fixed(asked task.Task) []drawing {
	var boxes []drawing
	for _, word := range task.FixedAnswers(asked) {
		boxes = append(boxes, row(k.gap(), k.markBox(word == asked.Key()), k.text(task.AnswerIn(asked, word, k.lang))))
	}
	return boxes
}

// choosing sets a picture with the boxes of a task behind it, or below it where they need the whole width.
func (k kit) choosing(picture drawing, asked task.Task) drawing {
	boxes := k.fixed(asked)
	room := k.width - picture.w - 3*k.gap()
	if inRow := flow(room, 2*k.gap(), 2, boxes...); inRow.w <= room && inRow.h <= 1.3*picture.h {
		inRow.axis = inRow.h / 2
		return row(3*k.gap(), picture, inRow)
	}
	return stack(2, picture, flow(k.width, 2*k.gap(), 2, boxes...))
}

// offersAloud names the answers that a task offers.
func (k kit) offersAloud(asked task.Task) string {
	var list []string
	for _, word := range task.FixedAnswers(asked) {
		list = append(list, task.AnswerIn(asked, word, k.lang))
	}
	return fmt.Sprintf(k.say(optionsSaid), strings.Join(list, "; "))
}

// upper begins a sentence.
func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// promptOf makes the question itself the direction: such items of one skill can ask for different things.
func promptOf[T task.Task](asked task.Task) (phrase, bool) {
	_, ok := asked.(T)
	return phrase{asked.Prompt("en"), asked.Prompt("es")}, ok
}
