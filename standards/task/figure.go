package task

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Figure is a shape as it lies on paper. How far it is turned and how large it is don't matter for
// what it is.
type Figure struct {
	Form Form
	Turn int  // clockwise, in degrees: 0 to 345 in steps of 15
	Size Size // Usual in most
}

// Size is how large a figure is beside others.
type Size string

// The sizes, and what share of the largest they have.
const (
	Usual Size = ""
	Small Size = "small"
	Large Size = "large"
)

var sizeShares = map[Size]float64{Small: .5, Usual: .75, Large: 1}

// turnStep is how far figures are turned at least, in degrees.
const turnStep = 15

func (f Figure) String() string {
	text := string(f.Form)
	if f.Size != Usual {
		text = string(f.Size) + " " + text
	}
	if f.Turn != 0 {
		text += fmt.Sprintf(" at %d", f.Turn)
	}
	return text
}

var figurePattern = regexp.MustCompile(`^(?:(small|large) )?([a-z][a-z ]*?)(?: (?:at|turned) ([0-9]{1,3}))?$`)

// readFigure reads a figure as String writes it; errOther where no known form stands there.
func readFigure(text string) (Figure, error) {
	m := figurePattern.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil || forms[Form(m[2])].name == nil {
		return Figure{}, errOther
	}
	f := Figure{Form: Form(m[2]), Size: Size(m[1])}
	f.Turn, _ = strconv.Atoi(m[3])
	if f.Turn%turnStep != 0 || f.Turn >= 360 {
		return Figure{}, words.Errorf("%q is turned by %d degrees; shapes are turned by 0 to 345 in steps of %d, as in triangle at 45", text, f.Turn, turnStep)
	}
	if f.Turn != 0 && forms[f.Form].fold == 0 {
		return Figure{}, words.Errorf("%q looks the same however it is turned; write %s", text, f.Form)
	}
	return f, nil
}

// readFigures reads a list of figures.
func readFigures(text string) (list []Figure, err error) {
	for _, part := range strings.Split(text, ",") {
		f, err := readFigure(part)
		if err != nil {
			return nil, err
		}
		list = append(list, f)
	}
	return list, nil
}

// Is says that the figure is a shape of the name: a square is a rectangle too.
func (f Figure) Is(name ShapeName) bool { return slices.Contains(forms[f.Form].is, name) }

// Sides is the number of straight sides, as many as corners; 0 where lines are bent or don't close.
func (f Figure) Sides() int {
	if row := forms[f.Form]; row.flaw == "" {
		return len(row.corners)
	}
	return 0
}

// Solid says that the figure is a picture of a solid.
func (f Figure) Solid() bool { return forms[f.Form].faces > 0 }

// Faces is the number of faces of a solid, curved ones included; 0 for a flat shape.
func (f Figure) Faces() int { return forms[f.Form].faces }

// plainly says that the figure looks as most pictures of its shape do.
func (f Figure) plainly() bool { return forms[f.Form].plain && f.turned() == 0 }

// turned is the smallest turn that looks the same.
func (f Figure) turned() int {
	fold := forms[f.Form].fold
	if fold == 0 {
		return 0
	}
	return f.Turn % (360 / fold)
}

// Distinct says that no smaller turn looks the same.
func (f Figure) Distinct() bool { return f.turned() == f.Turn }

// Told is the figure in words that don't name it, for who can't see it.
func (f Figure) Told(lang string) string { return in(lang, forms[f.Form].told) }

// Place is a point: 1 is the radius of the circle that the largest figures fill, y grows downward.
type Place struct{ X, Y float64 }

// Stroke is a line of a drawing, through all its points.
type Stroke struct {
	Points []Place
	Closed bool // the last point joins the first
	Hidden bool // an edge behind a face
}

// Strokes are the lines of the figure, turned and in its size.
func (f Figure) Strokes() []Stroke {
	sin, cos := math.Sincos(float64(f.Turn) * math.Pi / 180)
	share := sizeShares[f.Size]
	var list []Stroke
	for _, s := range forms[f.Form].strokes() {
		turned := Stroke{Closed: s.Closed, Hidden: s.Hidden}
		for _, p := range s.Points {
			turned.Points = append(turned.Points, Place{share * (p.X*cos - p.Y*sin), share * (p.X*sin + p.Y*cos)})
		}
		list = append(list, turned)
	}
	return list
}
