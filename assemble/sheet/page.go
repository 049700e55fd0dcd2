package sheet

import "fmt"

// leaf is one page: what stands on it, and its header and footer.
type leaf struct {
	settings
	paper   Paper
	blocks  []block
	number  int
	of      int
	forKey  bool   // the page is only for the teacher: no name line
	newPart string // line in the outline that begins a part of the file
}

// Words around the items.
var (
	nameWord  = phrase{"Name", "Nombre"}
	dateWord  = phrase{"Date", "Fecha"}
	keyWord   = phrase{"Answer key", "Respuestas"}
	formWord  = phrase{"form", "forma"}
	pageWords = phrase{"page %d of %d", "página %d de %d"}
)

// room is the height for blocks on a page.
func (s settings) room() float64 { return s.pageHeight - topSpace - bottomSpace }

// leaves are the pages of a paper; on a key those about wrong answers follow.
func (s settings) leaves(p Paper) ([]leaf, error) {
	list, err := s.part(p, s.blocks)
	if err != nil {
		return nil, err
	}
	list[0].newPart = s.documentTitle(p)
	if s.Key {
		more, err := s.part(p, s.wrongAnswers)
		if err != nil {
			return nil, err
		}
		more[0].newPart = s.say(suggestTitle)
		for i := range more {
			more[i].forKey = true
		}
		list = append(list, more...)
	}
	for i := range list {
		list[i].number, list[i].of = i+1, len(list)
	}
	return list, nil
}

// part is some pages with the blocks that make gives.
func (s settings) part(p Paper, make func(Paper) ([]block, error)) ([]leaf, error) {
	blocks, err := make(p)
	if err != nil {
		return nil, err
	}
	pages, err := paginate(blocks, s.room())
	if err != nil {
		return nil, err
	}
	var list []leaf
	for _, page := range pages {
		list = append(list, leaf{settings: s, paper: p, blocks: page})
	}
	return list, nil
}

// documentTitle names the file: the quiz, the form, and whether it is the key.
func (s settings) documentTitle(p Paper) string {
	title := p.Title
	if p.Form != "" {
		title += ", " + s.say(formWord) + " " + p.Form
	}
	if s.Key {
		title += " - " + s.say(keyWord)
	}
	return title
}

// heading is the title over the first items.
func (s settings) heading(p Paper) drawing {
	return s.paragraph(p.Title, lettering{size: 1.05 * s.size, bold: true})
}

// paint puts the page on paper, from top to bottom, as it is read.
func (l leaf) paint(c *pdfCanvas) {
	if l.newPart != "" {
		c.bookmark(l.newPart, 0, 0)
	}
	l.header(c)
	wider, y := stretch(l.blocks, l.room()), topSpace
	if l.forKey {
		wider = 0
	}
	for i, b := range l.blocks {
		if i > 0 {
			y += b.gap + wider
		}
		if b.mark != "" {
			c.bookmark(b.mark, 1, y)
		}
		b.paint(c, point{margin, y})
		y += b.h
	}
	l.footer(c)
}

// header is the name and date line; on the key it names the form instead.
func (l leaf) header(c canvas) {
	k, at := l.kit, lettering{size: 12 * pointSize}
	y := 22.0
	if l.Key {
		at.bold = true
		c.text(point{margin, y}, l.documentTitle(l.paper), at)
		return
	}
	dateAt := margin + k.width*.66
	l.field(c, point{margin, y}, dateAt-6, l.say(nameWord), at)
	l.field(c, point{dateAt, y}, margin+k.width, l.say(dateWord), at)
}

// field is a word and a line to write on after it.
func (l leaf) field(c canvas, from point, to float64, word string, at lettering) {
	c.text(from, word, at)
	c.line(point{from.x + l.face.width(word, at) + 2, from.y + .5}, point{to, from.y + .5}, plain)
}

// footer is the form and the page, small.
func (l leaf) footer(c canvas) {
	y := l.pageHeight - 11
	small := lettering{size: 9 * pointSize}
	form := l.paper.Form
	if l.paper.Week != "" {
		form += "  " + l.paper.Week
	}
	c.text(point{margin, y}, form, small)
	small.align = right
	c.text(point{margin + l.width, y}, fmt.Sprintf(l.say(pageWords), l.number, l.of), small)
}
