package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// made makes items of a skill.
func made(t testing.TB, skill standards.SkillID, count int) []task.Task {
	t.Helper()
	r, err := generate.Make(generate.Request{Skill: skill, Count: count, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	return r.Tasks
}

// corners counts where the outline turns by more than a curve does from piece to piece.
func corners(outline []point) int {
	n := 0
	for i, p := range outline {
		before, after := outline[(i+len(outline)-1)%len(outline)], outline[(i+1)%len(outline)]
		turn := math.Atan2(after.y-p.y, after.x-p.x) - math.Atan2(p.y-before.y, p.x-before.x)
		if turn = math.Mod(math.Abs(turn), 2*math.Pi); math.Min(turn, 2*math.Pi-turn) > .2 {
			n++
		}
	}
	return n
}

func sides(outline []point) (lengths []float64) {
	for i, p := range outline {
		lengths = append(lengths, distance(p, outline[(i+1)%len(outline)]))
	}
	return lengths
}

func square(outline []point) bool { // every corner
	for i, p := range outline {
		a, b := outline[(i+len(outline)-1)%len(outline)], outline[(i+1)%len(outline)]
		if math.Abs((a.x-p.x)*(b.x-p.x)+(a.y-p.y)*(b.y-p.y)) > 1e-6 {
			return false
		}
	}
	return true
}

// The drawings themselves are what they are called, by the definitions of Euclid's Elements, book I: a triangle has
// three straight sides, a square four that are equal and square corners, a circle is everywhere as far from its middle.
func TestShapesAreWhatTheyAreCalled(t *testing.T) {
	seen := map[string]bool{}
	for _, asked := range made(t, "name-shapes", 1000) {
		r := record(t, testKit(t, false), asked, task.LookShape)
		outline := r.polygons[0]
		n, lengths := corners(outline), sides(outline)
		even := true
		for _, length := range lengths {
			even = even && math.Abs(length-lengths[0]) < 1e-6
		}
		name := ""
		switch {
		case n == 3:
			name = "triangle"
		case n == 6:
			name = "hexagon"
		case n == 4 && square(outline) && even:
			name = "square"
		case n == 4 && square(outline):
			name = "rectangle"
		case n == 0 && even:
			name = "circle"
		}
		if name != asked.Key() {
			t.Errorf("%s: drawn is a %q", asked, name)
		}
		seen[name] = true
	}
	if len(seen) != 5 {
		t.Errorf("drawn were %v", seen)
	}
}

func TestSidesAndCornersAreDrawn(t *testing.T) {
	for _, asked := range made(t, "sides-and-corners", 1000) {
		if part := asked.(task.ShapeParts); part.Part != "faces" {
			r := record(t, testKit(t, false), asked, task.LookShapeParts)
			if got := fmt.Sprint(corners(r.polygons[0])); len(r.polygons) != 1 || got != asked.Key() {
				t.Errorf("%s: %s corners are drawn, the key is %s", asked, got, asked.Key())
			}
		}
	}
	for sort, dots := range drawnCorners {
		var outline []point
		for _, p := range dots {
			outline = append(outline, point{p[0], p[1]})
		}
		asked := task.MustParse("draw shape: " + sort)
		if got := corners(outline); got != asked.(task.DrawShape).Corners() || strings.HasSuffix("square rectangle", sort) && !square(outline) {
			t.Errorf("%s: the key draws %d corners", asked, got)
		}
	}
}

// Read anew from the strokes: what is marked on the key is of the sort, what isn't, isn't.
func TestShapesToFindAreFound(t *testing.T) {
	for _, sort := range []string{"triangle", "quadrilateral", "pentagon", "hexagon", "3 corners", "4 corners", "5 corners", "6 corners"} {
		want := map[byte]int{'t': 3, 'q': 4, 'p': 5, 'h': 6, '3': 3, '4': 4, '5': 5, '6': 6}[sort[0]]
		tried := 0
		for _, skill := range []standards.SkillID{"find-shapes", "find-by-corners"} {
			for _, asked := range made(t, skill, 600) {
				f := asked.(task.FindShapes)
				if f.Sort != sort {
					continue
				}
				tried++
				for i, figure := range f.List() {
					strokes := figure.Strokes()
					outline := placed(strokes[0].Points, point{}, 1)
					is := len(strokes) == 1 && strokes[0].Closed && len(outline) == want && corners(outline) == want
					if is != strings.Contains(asked.Key(), letter(i)) {
						t.Errorf("%s: %s is drawn as one of the sort: %v, the key says %s", asked, figure, is, asked.Key())
					}
				}
			}
		}
		if tried < 10 {
			t.Errorf("%d rows for %s", tried, sort)
		}
	}
}

// The pieces fill the shape: together they have its area (Gauss's formula), each that of the piece alone, and
// none lies over another or outside.
func TestPiecesFillTheShape(t *testing.T) {
	for _, asked := range task.Making() {
		p := asked.Pieces()
		area := 0.0
		for _, part := range p.Parts {
			area += task.Area(part)
			if math.Abs(task.Area(part)-task.Area(asked.PieceOutline())) > .02 {
				t.Errorf("%s: a piece of %.3f, alone %.3f", asked, task.Area(part), task.Area(asked.PieceOutline()))
			}
		}
		if math.Abs(area-task.Area(p.Outline)) > .02 {
			t.Errorf("%s: pieces of %.3f in a shape of %.3f", asked, area, task.Area(p.Outline))
		}
		for i, part := range p.Parts {
			middle := middleOf(part)
			inside := 0
			for j, other := range p.Parts {
				if within := holds(other, middle); within && i != j {
					t.Errorf("%s: piece %d lies over piece %d", asked, i, j)
				} else if within {
					inside++
				}
			}
			if inside != 1 || !holds(p.Outline, middle) {
				t.Errorf("%s: piece %d does not lie in the shape", asked, i)
			}
		}
	}
}

func middleOf(outline []task.Place) task.Place {
	var m task.Place
	for _, p := range outline {
		m.X += p.X / float64(len(outline))
		m.Y += p.Y / float64(len(outline))
	}
	return m
}

// holds says that a point lies in an outline, by how often a ray from it crosses.
func holds(outline []task.Place, p task.Place) bool {
	inside := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if a.Y > p.Y != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
	}
	return inside
}

// Only one of the three shapes has the area of the pieces.
func TestJoinedPiecesHaveOneAnswer(t *testing.T) {
	for _, asked := range made(t, "join-shapes", 500) {
		j := asked.(task.JoinShapes)
		var fitting []string
		for i := range j.Options {
			if math.Abs(task.Area(j.Outline(i))-float64(j.N)*task.Area(j.PieceOutline())) < .02 {
				fitting = append(fitting, letter(i))
			}
		}
		if len(fitting) != 1 || fitting[0] != asked.Key() {
			t.Errorf("%s: of the area are %v, the key is %s", asked, fitting, asked.Key())
		}
	}
}

// A solid shows dashed edges behind, a flat shape none.
func TestSolidsShowTheirBack(t *testing.T) {
	for _, asked := range made(t, "flat-or-solid", 1000) {
		hidden := false
		for _, s := range asked.(task.FlatSolid).Figure.Strokes() {
			hidden = hidden || s.Hidden
		}
		if hidden != (asked.Key() == "solid") {
			t.Errorf("%s: edges behind %v", asked, hidden)
		}
	}
}
