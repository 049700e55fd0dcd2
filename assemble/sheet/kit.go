package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// kit is what looks are drawn with: the type, its size, the language, whether the
// answers are filled in, and the width there is.
type kit struct {
	face    *face
	size    float64 // of the type, in millimetres
	lang    string
	key     bool
	width   float64
	height  float64  // of the tallest item that a page holds
	scale   float64  // how much larger all is printed: 1, or more for large print
	choices []string // the answers to choose from, where there are such
	radius  float64  // of a clock face
	toDraw  float64  // height of the room to draw in
	words   *ownWords
}

// ownWords is a question as a colleague worded it, in place of the task's own words.
type ownWords struct {
	text    string
	printed bool // the drawing has them already
}

// prompt is what is asked, in the words of the item's own where it has any.
func (k kit) prompt(asked task.Task) string {
	if k.words == nil || k.words.text == "" {
		return asked.Prompt(k.lang)
	}
	k.words.printed = true
	return k.words.text
}

// Room for the hand of a six-year-old, in millimetres (common practice, no source).
const (
	boxHeight  = 14.0
	digitRoom  = 6.0  // each further digit in a box
	placeWidth = 12.0 // a box for one digit
	lineHeight = 13.0 // above a line to write on
)

// gap is the space between the parts of a sentence.
func (k kit) gap() float64 { return .35 * k.size }

// text is one line of print.
func (k kit) text(s string) drawing { return k.print(s, lettering{size: k.size}) }

// small is one line of smaller print, for headings in a frame.
func (k kit) small(s string) drawing { return k.print(s, lettering{size: .62 * k.size}) }

// bold is one line of heavy print.
func (k kit) bold(s string) drawing { return k.print(s, lettering{size: k.size, bold: true}) }

// print is one line; its middle line runs through the middle of its digits.
func (k kit) print(s string, l lettering) drawing {
	h := 1.25 * l.size
	return drawing{w: k.face.width(s, l), h: h, axis: h / 2, paint: func(c canvas, at point) {
		c.text(point{at.x, at.y + h/2 + k.face.digit*l.size/2}, s, l)
	}}
}

// fitting is one line of print, smaller where it would be wider than the room.
func (k kit) fitting(s string, l lettering, room float64) drawing {
	if w := k.face.width(s, l); w > room {
		l.size *= room / w
	}
	return k.print(s, l)
}

// fittingSize is the size of type, at most the one given, at which the text fits the room.
func (k kit) fittingSize(s string, size, room float64) float64 {
	return min(size, size*room/k.face.width(s, lettering{size: size}))
}

// paragraph is print in as many lines as the width asks for.
func (k kit) paragraph(s string, l lettering) drawing { return k.broken(strings.Fields(s), l) }

// broken is a paragraph that is broken only between the words, which may have spaces.
func (k kit) broken(words []string, l lettering) drawing {
	var lines []drawing
	line := ""
	for _, word := range words {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && k.face.width(longer, l) > k.width {
			lines = append(lines, k.fitting(line, l, k.width))
			longer = word
		}
		line = longer
	}
	return stack(.1*l.size, append(lines, k.fitting(line, l, k.width))...)
}

// box is a box to write in, with the answer on the key.
func (k kit) box(w, h float64, answer string) drawing {
	return drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		c.rect(at, w, h, k.answerStyle())
		k.fillIn(c, point{at.x + w/2, at.y + h/2}, answer)
	}}
}

// answerBox is a box with room for a number of so many digits.
func (k kit) answerBox(digits int, answer string) drawing {
	return k.box(6+digitRoom*float64(max(digits, 2)), boxHeight, answer)
}

// ring is a round box.
func (k kit) ring(radius float64, answer string) drawing {
	return drawing{w: 2 * radius, h: 2 * radius, axis: radius, paint: func(c canvas, at point) {
		middle := point{at.x + radius, at.y + radius}
		c.circle(middle, radius, k.answerStyle())
		k.fillIn(c, middle, answer)
	}}
}

// answerLine is a line to write on.
func (k kit) answerLine(w float64, answer string) drawing {
	print := k.fitting(answer, lettering{size: k.size}, w-k.gap())
	return drawing{w: w, h: lineHeight, axis: lineHeight - k.size/2, paint: func(c canvas, at point) {
		c.line(point{at.x, at.y + lineHeight}, point{at.x + w, at.y + lineHeight}, style{line: plain})
		if k.key {
			print.paint(c, point{at.x + k.gap(), at.y + lineHeight - print.h})
		}
	}}
}

// answerStyle is white on the sheet, so that pencil shows, and pale on the key.
func (k kit) answerStyle() style {
	if k.key {
		return style{line: plain, fill: pale}
	}
	return style{line: plain, fill: white}
}

// fillIn writes an answer around a middle point, on the key only.
func (k kit) fillIn(c canvas, middle point, answer string) {
	if k.key {
		c.text(point{middle.x, middle.y + k.face.digit*k.size/2}, answer, lettering{size: k.size, align: centre})
	}
}

// say chooses the phrase in the kit's language.
func (k kit) say(p phrase) string { return p.in(k.lang) }

// phrase is a text in the languages that sheets are printed in.
type phrase struct{ en, es string }

// in is the phrase in the language; any other than "es" reads English.
func (p phrase) in(lang string) string {
	if lang == "es" {
		return p.es
	}
	return p.en
}
