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

// Only one of the three shapes has the area of the pieces; the others are clearly larger or smaller.
func TestJoinedPiecesHaveOneAnswer(t *testing.T) {
	for _, asked := range made(t, "join-shapes", 500) {
		j := asked.(task.JoinShapes)
		var fitting []string
		for i := range j.Options {
			if pieces := float64(j.N) * task.Area(j.PieceOutline()); math.Abs(task.Area(j.Outline(i))-pieces) < .24*pieces {
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

// polygonArea is by Gauss's formula, from what is drawn.
func polygonArea(outline []point) float64 {
	sum := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		sum += p.x*q.y - q.x*p.y
	}
	return math.Abs(sum) / 2
}

// drawnEqual says that all outlines have one area, and how many there are.
func drawnEqual(outlines [][]point) (equal bool, n int) {
	equal = true
	for _, outline := range outlines {
		equal = equal && math.Abs(polygonArea(outline)/polygonArea(outlines[0])-1) < .005
	}
	return equal, len(outlines)
}

// Shares fill their shape, and are equal in area exactly where they are said to be: read from the drawing.
func TestSharesAreEqualInArea(t *testing.T) {
	for _, c := range task.Cuts() {
		asked := task.Shares{Cut: c, Asks: "equal shares"}
		r := record(t, testKit(t, false), asked, task.LookShares)
		equal, n := drawnEqual(r.polygons)
		sum := 0.0
		for _, share := range r.polygons {
			sum += polygonArea(share)
		}
		whole := task.Area(c.Outline()) * cutUnit * cutUnit
		if n != c.N || (asked.Key() == "yes") != equal || math.Abs(sum/whole-1) > .005 {
			t.Errorf("%s: %d shares, equal %v (the key says %s), of %.1f in %.1f mm²", c, n, equal, asked.Key(), sum, whole)
		}
		for i, share := range c.Shares() {
			for j, other := range c.Shares() {
				if i != j && holds(other, middleOf(share)) {
					t.Errorf("%s: share %d lies over share %d", c, i, j)
				}
			}
		}
	}
}

// The keys read anew from areas and numbers of shares alone.
func TestKeysOfSharesAreTrue(t *testing.T) {
	drawn := func(c task.Cut) [][]point {
		var list [][]point
		for _, share := range c.Shares() {
			list = append(list, placed(share, point{}, 1))
		}
		return list
	}
	for _, asked := range made(t, "find-shares", 300) {
		f, key := asked.(task.FindCuts), ""
		for i, c := range f.List() {
			if equal, n := drawnEqual(drawn(c)); equal && n == f.Shares {
				key += ", " + letter(i)
			}
		}
		if strings.TrimPrefix(key, ", ") != asked.Key() {
			t.Errorf("%s: %s are right, the key says %s", asked, key, asked.Key())
		}
	}
	for _, asked := range made(t, "compare-shares", 300) {
		s := asked.(task.LargerShare)
		left, right := polygonArea(drawn(s.Left)[0]), polygonArea(drawn(s.Right)[0])
		key := "same"
		if left > 1.01*right {
			key = "left"
		} else if right > 1.01*left {
			key = "right"
		}
		if key != asked.Key() {
			t.Errorf("%s: the shares are %.3f and %.3f, the key says %s", asked, left, right, asked.Key())
		}
	}
}

// The rectangle is as many squares wide and high as the key says, with a line or two marks for each edge within.
func TestSquaresAreSquare(t *testing.T) {
	for _, asked := range made(t, "rows-of-squares", 100) {
		s := asked.(task.Squares)
		r := record(t, testKit(t, false), asked, task.LookSquares)
		box := r.rects[0]
		across, down := int(math.Round(box.w/squareSide)), int(math.Round(box.h/squareSide))
		lines := across - 1 + down - 1
		if s.ToDraw {
			lines *= 2
		}
		if fmt.Sprint(across*down) != asked.Key() || len(r.lines) != lines || math.Abs(box.w/float64(s.Columns)-box.h/float64(s.Rows)) > 1e-9 {
			t.Errorf("%s: %d by %d squares, %d lines, the key says %s", asked, across, down, len(r.lines), asked.Key())
		}
	}
}
