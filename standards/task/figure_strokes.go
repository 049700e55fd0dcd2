package task

import "math"

// How curves and gaps are drawn: in so many pieces the full circle, a gap of so much of a side,
// and a bent side bowed by so much of its length.
const (
	curvePieces = 72
	gapShare    = .3
	bowShare    = .22
)

// strokes are the lines of the form, in the middle and not turned.
func (row formRow) strokes() []Stroke {
	switch {
	case row.solid != nil:
		return row.solid()
	case row.fold == 0:
		return []Stroke{{Points: arc(Place{}, 1, 1, 0, 360), Closed: true}}
	case row.corners == nil:
		return []Stroke{{Points: arc(Place{}, 1, .55, 0, 360), Closed: true}}
	case row.flaw == "":
		return []Stroke{{Points: row.corners, Closed: true}}
	}
	first, last := row.corners[0], row.corners[len(row.corners)-1]
	if row.flaw == "open" {
		end := between(last, first, (1-gapShare)/2)
		begin := between(last, first, (1+gapShare)/2)
		points := append([]Place{begin}, row.corners...)
		return []Stroke{{Points: append(points, end)}}
	}
	points := append([]Place(nil), row.corners...)
	across := Place{last.Y - first.Y, first.X - last.X}
	for i := 1; i < 12; i++ {
		t := float64(i) / 12
		p, bow := between(last, first, t), 4*t*(1-t)*bowShare
		points = append(points, Place{p.X + bow*across.X, p.Y + bow*across.Y})
	}
	return []Stroke{{Points: points, Closed: true}}
}

// between is the point a share of the way from one to the other.
func between(a, b Place, share float64) Place {
	return Place{a.X + share*(b.X-a.X), a.Y + share*(b.Y-a.Y)}
}

// arc is a piece of an ellipse from one angle to another, in degrees from the right, clockwise.
// A full one does not come back to its first point.
func arc(middle Place, rx, ry, from, to float64) []Place {
	n := int(math.Ceil(math.Abs(to-from) / 360 * curvePieces))
	var list []Place
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos((from + (to-from)*float64(i)/float64(n)) * math.Pi / 180)
		list = append(list, Place{middle.X + rx*cos, middle.Y + ry*sin})
	}
	if math.Abs(to-from) == 360 {
		list = list[:n]
	}
	return list
}

// block is a cube or a box, its front face so wide and so high, seen from above and the right.
func block(w, h float64) []Stroke {
	depth := .42
	share := 1 / math.Hypot((w+depth)/2, (h+depth)/2)
	corner := func(x, y float64) Place { return Place{share * (x - (w+depth)/2), share * (y - (h+depth)/2)} }
	front := []Place{corner(0, depth), corner(w, depth), corner(w, h+depth), corner(0, h+depth)}
	back := []Place{corner(depth, 0), corner(w+depth, 0), corner(w+depth, h), corner(depth, h)}
	return []Stroke{
		{Points: front, Closed: true},
		{Points: []Place{front[0], back[0], back[1], back[2], front[2]}},
		{Points: []Place{front[1], back[1]}},
		{Points: []Place{back[0], back[3], back[2]}, Hidden: true},
		{Points: []Place{back[3], front[3]}, Hidden: true},
	}
}

// Widths of round solids seen a little from above.
const (
	roundWide = .62
	roundDeep = .2
)

func cone() []Stroke {
	foot := Place{0, .7}
	return []Stroke{
		{Points: append(arc(foot, roundWide, roundDeep, 0, 180), Place{0, -.95}), Closed: true},
		{Points: arc(foot, roundWide, roundDeep, 180, 360), Hidden: true},
	}
}

func cylinder() []Stroke {
	top, foot := Place{0, -.6}, Place{0, .6}
	return []Stroke{
		{Points: arc(top, roundWide, roundDeep, 0, 360), Closed: true},
		{Points: append(append([]Place{{roundWide, top.Y}}, arc(foot, roundWide, roundDeep, 0, 180)...), Place{-roundWide, top.Y})},
		{Points: arc(foot, roundWide, roundDeep, 180, 360), Hidden: true},
	}
}

func sphere() []Stroke {
	return []Stroke{
		{Points: arc(Place{}, .9, .9, 0, 360), Closed: true},
		{Points: arc(Place{}, .9, .3, 0, 180)},
		{Points: arc(Place{}, .9, .3, 180, 360), Hidden: true},
	}
}
