package generate

import (
	"math"
	"math/rand/v2"

	"evenhand/standards/task"
)

// turns are how far shapes are turned, in degrees: often not at all.
var turns = []int{0, 15, 45, 75, 105, 150, 180, 210, 285, 330}

var sizes = []task.Size{task.Usual, task.Small, task.Large}

// figures are forms in every turn and size in which they look different.
func figures(forms ...task.Form) (list []task.Figure) {
	for _, form := range forms {
		for _, turn := range turns {
			for _, size := range sizes {
				f := task.Figure{Form: form, Turn: turn, Size: size}
				if f.Distinct() && (!f.Solid() || turn < 30 || turn == 180) { // a solid still stands or hangs
					list = append(list, f)
				}
			}
		}
	}
	return list
}

// ofFigures are tasks about one figure each.
func ofFigures(asked func(task.Figure) task.Task, forms ...task.Form) space {
	var tasks []task.Task
	for _, f := range figures(forms...) {
		tasks = append(tasks, asked(f))
	}
	return listed(tasks)
}

// Forms of kindergarten, further ones, and solids.
var (
	kindergartenForms = []task.Form{
		"circle", "triangle", "right triangle", "thin triangle", "slanted triangle", "square", "rectangle",
		"thin rectangle", "hexagon", "uneven hexagon",
	}
	furtherForms = []task.Form{"rhombus", "trapezoid", "parallelogram", "uneven quadrilateral", "pentagon", "uneven pentagon"}
	solidForms   = []task.Form{"cube", "cone", "cylinder", "sphere"}
)

func flatNames() space {
	return ofFigures(func(f task.Figure) task.Task { return task.NameShape{Figure: f} }, kindergartenForms...)
}

func solidNames() space {
	return ofFigures(func(f task.Figure) task.Task { return task.NameShape{Figure: f} }, solidForms...)
}

func flatOrSolid() space {
	return ofFigures(func(f task.Figure) task.Task { return task.FlatSolid{Figure: f} }, append(solidForms, kindergartenForms...)...)
}

// shapeParts are sides and corners of flat shapes, and faces of solids.
func shapeParts() space {
	flat := append(furtherForms, kindergartenForms[1:]...)
	return join(
		ofFigures(func(f task.Figure) task.Task { return task.ShapeParts{Figure: f, Part: "sides"} }, flat...),
		ofFigures(func(f task.Figure) task.Task { return task.ShapeParts{Figure: f, Part: "corners"} }, flat...),
		ofFigures(func(f task.Figure) task.Task { return task.ShapeParts{Figure: f, Part: "faces"} }, "cube", "rectangular prism"),
	)
}

// sortForms are the forms among which a sort of shapes is looked for: it, what looks like it, others.
var sortForms = map[string][]task.Form{
	"circle":        {"circle", "oval", "square", "hexagon", "bent triangle"},
	"triangle":      {"triangle", "right triangle", "thin triangle", "slanted triangle", "open triangle", "bent triangle", "trapezoid", "rhombus"},
	"square":        {"square", "square", "square", "rectangle", "rhombus", "open square", "bent square"},
	"rectangle":     {"rectangle", "thin rectangle", "square", "open rectangle", "parallelogram", "bent square", "trapezoid"},
	"hexagon":       {"hexagon", "uneven hexagon", "pentagon", "uneven pentagon", "circle", "rhombus"},
	"pentagon":      {"pentagon", "uneven pentagon", "hexagon", "uneven hexagon", "square", "trapezoid"},
	"quadrilateral": {"square", "rectangle", "rhombus", "trapezoid", "uneven quadrilateral", "right triangle", "pentagon", "open square"},
	"cube":          {"cube", "cube", "rectangular prism", "square", "cylinder"},
	"3 corners":     {"triangle", "right triangle", "thin triangle", "slanted triangle", "rhombus", "trapezoid"},
	"4 corners":     {"square", "thin rectangle", "trapezoid", "uneven quadrilateral", "triangle", "pentagon"},
	"5 corners":     {"pentagon", "uneven pentagon", "uneven hexagon", "uneven quadrilateral", "hexagon"},
	"6 corners":     {"hexagon", "uneven hexagon", "pentagon", "uneven pentagon", "rhombus"},
	"flat":          {"circle", "square", "thin triangle", "sphere", "cube", "cone", "cylinder"},
	"solid":         {"circle", "square", "thin triangle", "sphere", "cube", "cone", "cylinder"},
}

// perSort is how many rows of shapes there are of each sort.
const perSort = 120

// shapesToFind are rows of five shapes of each of the sorts.
func shapesToFind(sorts ...string) space {
	return product(func(c []int) task.Task {
		sort := sorts[c[0]]
		random := rand.New(rand.NewPCG(uint64(c[1]), uint64(len(sort))))
		t := task.FindShapes{Sort: sort, N: 5}
		forms := sortForms[sort]
		for i, at := range random.Perm(len(forms))[:5] {
			variants := figures(forms[at])
			t.Figures[i] = variants[random.IntN(len(variants))]
		}
		asked, err := task.Parse(t.String())
		if err != nil {
			return nil
		}
		return asked
	}, len(sorts), perSort)
}

// shapesToDraw are all shapes that are asked for on dots.
func shapesToDraw() space {
	var tasks []task.Task
	for _, sort := range []string{"triangle", "square", "rectangle", "quadrilateral", "pentagon", "hexagon", "3 corners", "4 corners", "5 corners", "6 corners"} {
		tasks = append(tasks, task.DrawShape{Sort: sort})
	}
	return listed(tasks)
}

// shapesOfPieces are how many pieces make a shape, and which shape some pieces make.
func shapesOfPieces() space {
	var tasks []task.Task
	seen := map[task.Task]bool{}
	for _, t := range task.Making() {
		tasks = append(tasks, t)
		others := task.Making()
		for i := range others {
			a, b := others[i].Whole, others[(i+5)%len(others)].Whole
			options := [3]string{a, t.Whole, b}
			options[i%3], options[1] = options[1], options[i%3]
			n := len(t.Pieces().Parts)
			asked, err := task.Parse(task.JoinShapes{N: n, Piece: t.Piece, Options: options}.String())
			if err == nil && a != b && !seen[asked] && sizesTell(asked.(task.JoinShapes)) {
				seen[asked] = true
				tasks = append(tasks, asked)
			}
		}
	}
	return listed(tasks)
}

// sizesTell says that the wrong shapes are at least a quarter larger or smaller than the pieces together: four
// half squares make a parallelogram, too, and one that is a little smaller looks the same to a child.
func sizesTell(t task.JoinShapes) bool {
	pieces := float64(t.N) * task.Area(t.PieceOutline())
	for i := range t.Options {
		if apart := math.Abs(task.Area(t.Outline(i)) - pieces); !t.Right(i) && apart < pieces/4 {
			return false
		}
	}
	return true
}
