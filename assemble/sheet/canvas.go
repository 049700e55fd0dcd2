package sheet

// canvas is what a drawing needs from paper or screen. Lengths are millimetres
// from the top left corner. There is no colour: lines and letters are black, so
// that every sheet survives a photocopier.
type canvas interface {
	// line draws a straight line with round ends.
	line(from, to point, s style)
	// rect draws a rectangle, its top left corner at the point.
	rect(at point, w, h float64, s style)
	// circle draws a full circle.
	circle(centre point, radius float64, s style)
	// polygon draws a closed shape.
	polygon(corners []point, s style)
	// text writes one line, its baseline at the point; align says which
	// part of the line stands there.
	text(at point, s string, l lettering)
}

// point is a place on the page.
type point struct{ x, y float64 }

// style is how a shape is drawn.
type style struct {
	line   float64 // width of the outline; 0 for none
	dashed bool
	fill   fill
}

// fill is the inside of a shape.
type fill int

const (
	hollow fill = iota // what lies beneath shows
	white
	pale   // the light grey of answers and headings
	shaded // a part that is meant, darker, so that it stands out on the key too
	black
)

// grey is the brightness of each fill, 0 to 255; pale still tells apart from
// white after copying and never hides black print.
var grey = map[fill]int{white: 255, pale: 228, shaded: 196, black: 0}

// lettering is how a line of text is written.
type lettering struct {
	size  float64 // height of the type in millimetres
	bold  bool
	align align
}

// align says which part of a line of text stands at its point.
type align int

const (
	left align = iota
	centre
	right
)

// Line widths in millimetres. A photocopier loses lines thinner than about 0.3
// (common practice, no source).
const (
	thin  = 0.35 // ticks, guides
	plain = 0.5  // boxes to write in
	thick = 0.9  // sums' rules, a clock's minute hand
)
