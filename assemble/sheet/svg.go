package sheet

import (
	"fmt"
	"html"
	"strconv"
	"strings"
)

// svgCanvas draws on one SVG picture.
type svgCanvas struct {
	face   *face
	body   strings.Builder
	onPage bool // every line of text keeps its length, whatever font the reader's machine has
}

// picture is the whole SVG document of the given size in millimetres, drawn so many times as
// large. The title and the description are what a screen reader says.
func (c *svgCanvas) picture(w, h, scale float64, lang, title, desc string) []byte {
	return fmt.Appendf(nil, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" lang="%s" role="img">
<title>%s</title>
<desc>%s</desc>
<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round" font-family="%s, 'DejaVu Sans', Verdana, sans-serif">
%s</g>
</svg>
`, mm(scale*w), mm(scale*h), mm(w), mm(h), lang, html.EscapeString(title), html.EscapeString(desc), c.face.name, c.body.String())
}

// mm writes a length with at most two decimals.
func mm(v float64) string {
	s := strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0")
	return strings.TrimSuffix(s, ".")
}

func (c *svgCanvas) add(format string, args ...any) { fmt.Fprintf(&c.body, format+"\n", args...) }

func (c *svgCanvas) line(from, to point, s style) {
	c.add(`<line x1="%s" y1="%s" x2="%s" y2="%s"%s/>`, mm(from.x), mm(from.y), mm(to.x), mm(to.y), attributes(s))
}

func (c *svgCanvas) rect(at point, w, h float64, s style) {
	c.add(`<rect x="%s" y="%s" width="%s" height="%s"%s/>`, mm(at.x), mm(at.y), mm(w), mm(h), attributes(s))
}

func (c *svgCanvas) circle(at point, radius float64, s style) {
	c.add(`<circle cx="%s" cy="%s" r="%s"%s/>`, mm(at.x), mm(at.y), mm(radius), attributes(s))
}

func (c *svgCanvas) polygon(corners []point, s style) {
	places := make([]string, len(corners))
	for i, p := range corners {
		places[i] = mm(p.x) + "," + mm(p.y)
	}
	c.add(`<polygon points="%s"%s/>`, strings.Join(places, " "), attributes(s))
}

func attributes(s style) string {
	text := ` stroke="none"`
	if s.line > 0 {
		text = fmt.Sprintf(` stroke-width="%s"`, mm(s.line))
	}
	if s.dashed {
		text += fmt.Sprintf(` stroke-dasharray="%s" stroke-dashoffset="%s"`, mm(dash), mm(dash/2))
	}
	if s.fill != hollow {
		text += fmt.Sprintf(` fill="rgb(%[1]d,%[1]d,%[1]d)"`, grey[s.fill])
	}
	return text
}

func (c *svgCanvas) text(at point, s string, l lettering) {
	weight := ""
	if l.bold {
		weight = ` font-weight="bold"`
	}
	if c.onPage {
		weight += fmt.Sprintf(` textLength="%s" lengthAdjust="spacingAndGlyphs"`, mm(c.face.width(s, l)))
	}
	c.add(`<text x="%s" y="%s" font-size="%s" text-anchor="%s"%s fill="#000" stroke="none">%s</text>`,
		mm(at.x), mm(at.y), mm(l.size), anchors[l.align], weight, html.EscapeString(c.face.printable(s)))
}

var anchors = map[align]string{left: "start", centre: "middle", right: "end"}
