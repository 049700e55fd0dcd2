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

// Cut is a shape cut into shares: "rectangle down 4", "circle pie 3", "square uneven across 2".
type Cut struct {
	Shape string // circle, square, rectangle
	Way   string
	N     int // shares, 2 to 4
}

// longSide is the long side of a rectangle, its short one is 1, as are a square's sides and a circle's width.
const longSide = 1.6

// ways are the ways to cut, and for how many shares. "mixed" shares are as large as each other but of two forms;
// "strips" of a circle are of the same width, and so not of the same size.
var ways = []struct {
	way   string
	round bool
	n     []int
}{
	{"down", false, []int{2, 3, 4}}, {"across", false, []int{2, 3, 4}}, {"crossed", false, []int{4}},
	{"corners", false, []int{2, 4}}, {"mixed", false, []int{3, 4}},
	{"uneven down", false, []int{2, 3, 4}}, {"uneven across", false, []int{2, 3, 4}}, {"uneven crossed", false, []int{4}},
	{"pie", true, []int{2, 3, 4}}, {"uneven pie", true, []int{2, 3, 4}}, {"strips", true, []int{3, 4}},
}

// Cuts are all cuts.
func Cuts() (list []Cut) {
	for _, shape := range []string{"circle", "square", "rectangle"} {
		for _, row := range ways {
			for _, n := range row.n {
				if row.round == (shape == "circle") {
					list = append(list, Cut{shape, row.way, n})
				}
			}
		}
	}
	return list
}

var cutPattern = regexp.MustCompile(`^(circle|square|rectangle) ([a-z ]+?) ([0-9]{1,2})$`)

// readCut reads a cut as String writes it.
func readCut(text string) (Cut, error) {
	m := cutPattern.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return Cut{}, errOther
	}
	c := Cut{Shape: m[1], Way: m[2]}
	c.N, _ = strconv.Atoi(m[3])
	if !slices.Contains(Cuts(), c) {
		var known []string
		for _, other := range Cuts() {
			if other.Shape == c.Shape {
				known = append(known, other.String())
			}
		}
		return Cut{}, words.Errorf("%q is no way to cut a %s here; choose one of %s", text, c.Shape, strings.Join(known, ", "))
	}
	return c, nil
}

func (c Cut) String() string { return fmt.Sprintf("%s %s %d", c.Shape, c.Way, c.N) }

// Equal says that all shares are as large as each other.
func (c Cut) Equal() bool { return !strings.HasPrefix(c.Way, "uneven") && c.Way != "strips" }

// size is the width and height.
func (c Cut) size() (w, h float64) {
	if c.Shape == "rectangle" {
		return longSide, 1
	}
	return 1, 1
}

// Outline is the shape before it is cut.
func (c Cut) Outline() []Place {
	if c.Shape == "circle" {
		return arc(Place{.5, .5}, .5, .5, 0, 360)
	}
	w, h := c.size()
	return rectangle(0, 0, w, h)
}

func rectangle(left, top, right, bottom float64) []Place {
	return []Place{{left, top}, {right, top}, {right, bottom}, {left, bottom}}
}

// unevenShares are how large uneven shares are, of the whole.
var unevenShares = map[int][]float64{2: {.3, .7}, 3: {.5, .25, .25}, 4: {.4, .2, .2, .2}}

// marks are where the shares begin and end, from 0 to 1.
func (c Cut) marks() []float64 {
	marks := []float64{0}
	for i := range c.N {
		share := 1 / float64(c.N)
		if strings.HasPrefix(c.Way, "uneven") {
			share = unevenShares[c.N][i]
		}
		marks = append(marks, marks[i]+share)
	}
	return marks
}

// Shares are the outlines of the shares.
func (c Cut) Shares() (list [][]Place) {
	w, h := c.size()
	switch c.Way {
	case "crossed", "uneven crossed":
		x, y := w/2, h/2
		if c.Way != "crossed" {
			x, y = .3*w, .35*h
		}
		return [][]Place{rectangle(0, 0, x, y), rectangle(x, 0, w, y), rectangle(0, y, x, h), rectangle(x, y, w, h)}
	case "corners":
		middle, corners := Place{w / 2, h / 2}, c.Outline()
		if c.N == 2 {
			return [][]Place{{corners[0], corners[1], corners[2]}, {corners[0], corners[2], corners[3]}}
		}
		for i, p := range corners {
			list = append(list, []Place{p, corners[(i+1)%4], middle})
		}
		return list
	case "mixed":
		if c.N == 3 {
			return [][]Place{rectangle(0, 0, w/3, h), rectangle(w/3, 0, w, h/2), rectangle(w/3, h/2, w, h)}
		}
		return [][]Place{rectangle(0, 0, w/2, h/2), rectangle(0, h/2, w/2, h), rectangle(w/2, 0, 3*w/4, h), rectangle(3*w/4, 0, w, h)}
	}
	marks := c.marks()
	for i := range c.N {
		from, to := marks[i], marks[i+1]
		switch c.Way {
		case "down", "uneven down":
			list = append(list, rectangle(from*w, 0, to*w, h))
		case "across", "uneven across":
			list = append(list, rectangle(0, from*h, w, to*h))
		case "strips":
			a, b := math.Acos(1-2*from)*180/math.Pi, math.Acos(1-2*to)*180/math.Pi
			middle := Place{.5, .5}
			list = append(list, append(arc(middle, .5, .5, 180+a, 180+b), arc(middle, .5, .5, 180-b, 180-a)...))
		default:
			list = append(list, append(arc(Place{.5, .5}, .5, .5, 360*from-90, 360*to-90), Place{.5, .5}))
		}
	}
	return list
}

var cutShapes = map[string][2]string{
	"circle": {"circle", "círculo"}, "square": {"square", "cuadrado"}, "rectangle": {"rectangle", "rectángulo"},
}

var cutWays = map[string][2]string{
	"down":   {"strips side by side, all as wide", "franjas verticales, todas igual de anchas"},
	"across": {"strips one below the other, all as high", "franjas horizontales, todas igual de altas"},
	"crossed": {"shares in two rows, all as wide and as high",
		"partes en dos filas, todas igual de anchas y altas"},
	"corners": {"triangles, cut from corner to corner", "triángulos, con cortes de esquina a esquina"},
	"mixed":   {"shares of two forms", "partes de dos formas"},
	"uneven down": {"strips side by side, some wider than others",
		"franjas verticales, unas más anchas que otras"},
	"uneven across": {"strips one below the other, some higher than others",
		"franjas horizontales, unas más altas que otras"},
	"uneven crossed": {"shares in two rows, some wider and higher than others",
		"partes en dos filas, unas más anchas y altas que otras"},
	"pie": {"pieces from the middle, all as wide at the edge",
		"pedazos desde el centro, todos igual de anchos en el borde"},
	"uneven pie": {"pieces from the middle, some wider than others",
		"pedazos desde el centro, unos más anchos que otros"},
	"strips": {"strips side by side, all as wide, so that those at the edge of the circle are shorter",
		"franjas verticales, todas igual de anchas, así que las del borde del círculo son más cortas"},
}

// mixedShares tell how large the shares of two forms are, by their number.
var mixedShares = map[int][2]string{
	3: {", one a third as wide as the whole, two twice as wide and half as high",
		", una de un tercio del ancho, dos del doble de ancho y la mitad de alto"},
	4: {", two half as wide and half as high as the whole, two a quarter as wide and as high as the whole",
		", dos de la mitad del ancho y la mitad del alto, dos de un cuarto del ancho y todo el alto"},
}

// Told is the cut in words, without a word about equal shares.
func (c Cut) Told(lang string) string {
	way := in(lang, cutWays[c.Way])
	if c.Way == "mixed" { // the lengths say it all
		way += in(lang, mixedShares[c.N])
	}
	if lang == "es" {
		return fmt.Sprintf("un %s cortado en %d %s", in(lang, cutShapes[c.Shape]), c.N, way)
	}
	return fmt.Sprintf("a %s cut into %d %s", in(lang, cutShapes[c.Shape]), c.N, way)
}
