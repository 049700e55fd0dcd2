package sheet

import (
	"bytes"
	"html"
	"strconv"
)

// svgCanvas draws on one SVG picture. It appends, as a page of the desk has many pictures.
type svgCanvas struct {
	face   *face
	body   []byte
	onPage bool // every line of text keeps its length, whatever font the reader's machine has
}

// usualPicture is about as many bytes as a picture has.
const usualPicture = 1600

// beginPicture begins the SVG document of a picture of the given size in millimetres, drawn so many times as
// large. The title and the description are what a screen reader says.
func (c *svgCanvas) beginPicture(w, h, scale float64, lang, title, desc string) {
	c.body = make([]byte, 0, usualPicture)
	c.lengths(length{`<svg xmlns="http://www.w3.org/2000/svg" width="`, scale * w}, length{`mm" height="`, scale * h},
		length{`mm" viewBox="0 0 `, w}, length{" ", h})
	c.add(`" lang="`, lang, `" role="img">
<title>`, html.EscapeString(title), `</title>
<desc>`, html.EscapeString(desc), `</desc>
<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round" font-family="`, c.face.name, `, 'DejaVu Sans', Verdana, sans-serif">
`)
}

// endPicture ends it.
func (c *svgCanvas) endPicture() []byte {
	c.add("</g>\n</svg>\n")
	return c.body
}

// mm writes a length with at most two decimals.
func mm(v float64) string { return string(appendMM(nil, v)) }

func appendMM(to []byte, v float64) []byte {
	to = bytes.TrimRight(strconv.AppendFloat(to, v, 'f', 2, 64), "0")
	return bytes.TrimSuffix(to, []byte("."))
}

func (c *svgCanvas) add(texts ...string) {
	for _, text := range texts {
		c.body = append(c.body, text...)
	}
}

// lengths adds numbers, each with what stands before it.
func (c *svgCanvas) lengths(list ...length) {
	for _, l := range list {
		c.body = appendMM(append(c.body, l.before...), l.mm)
	}
}

type length struct {
	before string
	mm     float64
}

func (c *svgCanvas) line(from, to point, s style) {
	c.lengths(length{`<line x1="`, from.x}, length{`" y1="`, from.y}, length{`" x2="`, to.x}, length{`" y2="`, to.y})
	c.close(s)
}

func (c *svgCanvas) rect(at point, w, h float64, s style) {
	c.lengths(length{`<rect x="`, at.x}, length{`" y="`, at.y}, length{`" width="`, w}, length{`" height="`, h})
	c.close(s)
}

func (c *svgCanvas) circle(at point, radius float64, s style) {
	c.lengths(length{`<circle cx="`, at.x}, length{`" cy="`, at.y}, length{`" r="`, radius})
	c.close(s)
}

func (c *svgCanvas) polygon(corners []point, s style) {
	before := `<polygon points="`
	for _, p := range corners {
		c.lengths(length{before, p.x}, length{",", p.y})
		before = " "
	}
	c.close(s)
}

// close ends the last attribute of a shape and adds those of its style.
func (c *svgCanvas) close(s style) {
	if s.line > 0 {
		c.lengths(length{`" stroke-width="`, s.line})
	} else {
		c.add(`" stroke="none`)
	}
	if s.dashed {
		c.lengths(length{`" stroke-dasharray="`, dash}, length{`" stroke-dashoffset="`, dash / 2})
	}
	if s.fill != hollow {
		shade := strconv.Itoa(grey[s.fill])
		c.add(`" fill="rgb(`, shade, ",", shade, ",", shade, ")")
	}
	c.add("\"/>\n")
}

func (c *svgCanvas) text(at point, s string, l lettering) {
	c.lengths(length{`<text x="`, at.x}, length{`" y="`, at.y}, length{`" font-size="`, l.size})
	c.add(`" text-anchor="`, anchors[l.align])
	if l.bold {
		c.add(`" font-weight="bold`)
	}
	if c.onPage {
		c.lengths(length{`" textLength="`, c.face.width(s, l)})
		c.add(`" lengthAdjust="spacingAndGlyphs`)
	}
	c.add(`" fill="#000" stroke="none">`, html.EscapeString(c.face.printable(s)), "</text>\n")
}

var anchors = map[align]string{left: "start", centre: "middle", right: "end"}
