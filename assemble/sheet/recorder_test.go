package sheet

import (
	"math"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

// recorder is a canvas that keeps what is drawn on it.
type recorder struct {
	lines    []drawnLine
	rects    []drawnRect
	circles  []drawnCircle
	polygons [][]point
	texts    []drawnText
	low      point // smallest and
	high     point // largest place that ink touches; text counts by its ends and digits
	face     *face
}

type drawnLine struct{ from, to point }
type drawnRect struct {
	at   point
	w, h float64
	style
}
type drawnCircle struct {
	middle point
	radius float64
	style
}
type drawnText struct {
	at point // the middle of the line of text, at its baseline
	s  string
	w  float64
	lettering
}

func (r *recorder) touch(points ...point) {
	for _, p := range points {
		r.low = point{min(r.low.x, p.x), min(r.low.y, p.y)}
		r.high = point{max(r.high.x, p.x), max(r.high.y, p.y)}
	}
}

func (r *recorder) line(from, to point, s style) {
	r.lines = append(r.lines, drawnLine{from, to})
	r.touch(from, to)
}

func (r *recorder) rect(at point, w, h float64, s style) {
	r.rects = append(r.rects, drawnRect{at, w, h, s})
	r.touch(at, point{at.x + w, at.y + h})
}

func (r *recorder) circle(middle point, radius float64, s style) {
	r.circles = append(r.circles, drawnCircle{middle, radius, s})
	r.touch(point{middle.x - radius, middle.y - radius}, point{middle.x + radius, middle.y + radius})
}

func (r *recorder) polygon(corners []point, s style) {
	r.polygons = append(r.polygons, corners)
	r.touch(corners...)
}

func (r *recorder) text(at point, s string, l lettering) {
	if s == "" {
		return
	}
	w := r.face.width(s, l)
	from := at.x - w*share[l.align]
	r.texts = append(r.texts, drawnText{point{from + w/2, at.y}, s, w, l})
	r.touch(point{from, at.y - r.face.digit*l.size}, point{from + w, at.y})
}

// words are the texts in the order they are drawn.
func (r *recorder) words() []string {
	var list []string
	for _, t := range r.texts {
		list = append(list, t.s)
	}
	return list
}

// fatal is the part of testing.TB that rapid's own T has too.
type fatal interface{ Fatal(args ...any) }

// testKit is a kit in the built-in font, on Letter paper.
func testKit(t fatal, key bool) kit {
	s, err := Options{Font: BuiltInFont, Key: key}.settle()
	if err != nil {
		t.Fatal(err)
	}
	return s.kit
}

// record draws a task in a look.
func record(t testing.TB, k kit, asked task.Task, l task.Look) *recorder {
	t.Helper()
	d, err := k.draw(Question{Number: 1, Task: asked, Look: l})
	if err != nil {
		t.Fatal(err)
	}
	r := &recorder{face: k.face, low: point{math.Inf(1), math.Inf(1)}, high: point{math.Inf(-1), math.Inf(-1)}}
	d.paint(r, point{})
	return r
}

// recordText is record for a task as it is typed.
func recordText(t testing.TB, key bool, asked string, l task.Look) *recorder {
	t.Helper()
	return record(t, testKit(t, key), task.MustParse(asked), l)
}

// eachExample calls f for the example of every skill, in every look it can take.
func eachExample(t *testing.T, f func(asked task.Task, l task.Look)) {
	t.Helper()
	for _, skill := range standards.Catalogue() {
		asked, err := task.Parse(skill.Example)
		if err != nil {
			t.Fatalf("%s: %v", skill.ID, err)
		}
		for _, l := range asked.Looks() {
			f(asked, l)
		}
	}
}
