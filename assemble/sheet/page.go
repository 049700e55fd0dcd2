package sheet

import (
	"fmt"
	"strings"
)

// leaf is one page of the file.
type leaf struct {
	newPart string  // line in the outline that begins a part of the file, empty for none
	scale   float64 // how much larger than usual it is printed
	paint   func(c pageCanvas, number, of int)
}

// pageCanvas is a canvas of whole pages, whose file has an outline.
type pageCanvas interface {
	canvas
	bookmark(s string, level int, y float64)
}

// Words around the items.
var (
	nameWord  = phrase{"Name", "Nombre"}
	dateWord  = phrase{"Date", "Fecha"}
	keyWord   = phrase{"Answer key", "Respuestas"}
	formWord  = phrase{"form", "forma"}
	pageWords = phrase{"page %d of %d", "página %d de %d"}
)

// leaves are the pages of a paper; a key begins with the answers on one page.
func (s settings) leaves(p Paper) ([]leaf, error) {
	if s.Layout == Strips && !s.Key {
		return s.strips([]Paper{p})
	}
	list, err := s.itemPages(p)
	if err != nil || !s.Key {
		return list, err
	}
	answers, err := s.answerPages(p)
	if err != nil {
		return nil, err
	}
	list[0].newPart = s.say(workedTitle)
	return append(answers, list...), nil
}

// itemPages are the pages of the items, set closer where that saves a page.
func (s settings) itemPages(p Paper) ([]leaf, error) {
	list, err := s.spreadOut(p)
	if err != nil || len(list) == 1 || s.Spaced {
		return list, err
	}
	if fewer, err := s.closer().spreadOut(p); err == nil && len(fewer) < len(list) {
		return fewer, nil
	}
	return list, nil
}

// spreadOut are the pages of the items with so much room.
func (s settings) spreadOut(p Paper) ([]leaf, error) {
	blocks, err := s.blocks(p)
	if err != nil {
		return nil, err
	}
	return s.pages(p, blocks)
}

// answerPages are the answers of a form and what wrong ones suggest.
func (s settings) answerPages(p Paper) ([]leaf, error) {
	teacher := s.forTeacher()
	return teacher.pages(p, teacher.answers(p))
}

// pages spreads the blocks over whole pages.
func (s settings) pages(p Paper, blocks []block) ([]leaf, error) {
	room := s.pageHeight - s.topSpace - s.bottomSpace
	full, err := spread(blocks, room, !s.Spaced)
	if err != nil {
		return nil, err
	}
	var list []leaf
	for i, page := range full {
		list = append(list, leaf{scale: s.scale, paint: func(c pageCanvas, number, of int) {
			head := tagText
			if i == 0 && s.headlineOf(p) != "" {
				head = tagTitle
			}
			tagged(head, "", s.nameLine(p)).paint(c, point{s.margin, s.nameSpace})
			s.down(c, page, s.topSpace, stretch(page, room))
			s.footer(c, p, number, of)
		}})
	}
	list[0].newPart = s.documentTitle(p)
	return list, nil
}

// down paints blocks one below the other, in the order they are read.
func (s settings) down(c pageCanvas, blocks []block, y, wider float64) {
	for i, b := range blocks {
		if i > 0 {
			y += b.gap + wider
		}
		if b.mark != "" {
			c.bookmark(b.mark, 1, y)
		}
		b.paint(c, point{s.margin, y})
		y += b.h
	}
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

// headlineOf stands on top of a teacher's pages.
func (s settings) headlineOf(p Paper) string {
	if s.Key {
		return s.documentTitle(p)
	}
	return s.headline
}

// nameLine is where the name and the date go; the key has its own name there.
func (s settings) nameLine(p Paper) drawing {
	l := lettering{size: 12 * pointSize}
	if headline := s.headlineOf(p); headline != "" {
		l.bold = true
		return s.fitting(headline, l, s.width)
	}
	date := .33 * s.width
	name := s.field(s.word(nameWord), s.width-date-6, l)
	if p.Pupil != "" {
		name = s.fitting(s.word(nameWord)+"  "+p.Pupil, l, s.width-date-6)
		name.w = s.width - date - 6
	}
	return row(6, name, s.field(s.word(dateWord), date, l))
}

// field is a word and, after it, a line to write on.
func (s settings) field(word string, w float64, l lettering) drawing {
	d := s.print(word, l)
	writeWord, start, y := d.paint, d.w+2, d.h
	d.w = w
	d.paint = func(c canvas, at point) {
		writeWord(c, at)
		c.line(point{at.x + start, at.y + y}, point{at.x + w, at.y + y}, style{line: thin})
	}
	return d
}

// footer is the form and the page, small.
func (s settings) footer(c canvas, p Paper, number, of int) {
	y := s.pageHeight - .58*s.bottomSpace
	small := lettering{size: smallPrint}
	c.text(point{s.margin, y}, s.formMark(p), small)
	small.align = right
	c.text(point{s.margin + s.width, y}, fmt.Sprintf(s.say(pageWords), number, of), small)
}

// smallPrint is the type of the form's letter: 9 points.
const smallPrint = 9 * pointSize

// formMark tells the teacher which form and week a sheet belongs to.
func (s settings) formMark(p Paper) string { return strings.TrimSpace(p.Form + "  " + p.Week) }
