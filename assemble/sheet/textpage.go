package sheet

import (
	"io"

	"evenhand/standards/words"
)

// Text is a page of words: a letter, or what a teacher needs beside the sheets.
type Text struct {
	Title string
	Notes []string // below the title, such as a caution
	Parts []TextPart
	Size  float64 // of the type in points; 0 for the 10 points of a teacher's pages
}

// TextPart is what stands under one heading.
type TextPart struct {
	Heading string
	Lang    string   // where it is not that of the page
	Lines   []string // a paragraph each; those that begin with "- " stand in a list
	Answers []Paper  // the right answers of these, in strips to mark by, each under its title
}

// listEdge is how far lists are set in, in millimetres.
const listEdge = 5.0

// WriteText prints a page of words, or several where one doesn't hold them.
func WriteText(w io.Writer, t Text, o Options) error {
	s, leaves, err := o.pagesOfText(t)
	if err != nil {
		return err
	}
	return s.write(w, t.Title, leaves)
}

// WriteTextHTML writes the same as a page for a browser that prints the same.
func WriteTextHTML(w io.Writer, t Text, o Options) error {
	s, leaves, err := o.pagesOfText(t)
	if err != nil {
		return err
	}
	return s.writeHTML(w, t.Title, leaves)
}

// TextPageCount is how many pages WriteText prints.
func TextPageCount(t Text, o Options) (int, error) {
	_, leaves, err := o.pagesOfText(t)
	return len(leaves), err
}

// pagesOfText are the pages of words, and the options made definite.
func (o Options) pagesOfText(t Text) (settings, []leaf, error) {
	o.Layout, o.Key = Pages, false
	s, err := o.settle()
	if err != nil {
		return settings{}, nil, err
	}
	leaves, err := s.textPages(t)
	return s, leaves, err
}

func (s settings) textPages(t Text) ([]leaf, error) {
	if t.Size == 0 {
		s, t.Size = s.forTeacher(), 10
	}
	s.headline = t.Title
	leaves, err := s.pages(Paper{}, s.textBlocks(t))
	if err == nil {
		leaves[0].newPart = t.Title
	}
	return leaves, err
}

func (s settings) textBlocks(t Text) []block {
	k := s.kit
	k.size, k.key = t.Size*pointSize, true
	plainText := lettering{size: k.size}
	var list []block
	lang := ""
	add := func(gap float64, keep bool, t tag, d drawing) {
		list = append(list, block{drawing: taggedIn(lang, t, "", d), gap: gap, keep: keep, close: true, what: words.Term("a paragraph")})
	}
	for _, note := range t.Notes {
		add(.5*k.size, false, tagText, k.paragraph(note, plainText))
	}
	for _, part := range t.Parts {
		lang = part.Lang
		add(1.6*k.size, true, tagDirection, k.paragraph(part.Heading, lettering{size: 1.15 * k.size, bold: true}))
		for _, line := range part.Lines {
			add(.45*k.size, false, tagText, k.line(line, plainText))
		}
		for _, p := range part.Answers {
			add(.8*k.size, true, tagText, k.paragraph(p.Title, lettering{size: k.size, bold: true}))
			list = append(list, block{drawing: k.markingStrip(p.Questions), gap: .4 * k.size, close: true, what: words.Term("the answers")})
		}
	}
	return list
}

// line is a paragraph, or one of a list behind its dash.
func (k kit) line(s string, l lettering) drawing {
	if len(s) < 2 || s[:2] != "- " {
		return k.paragraph(s, l)
	}
	dash := k.print("–", l)
	dash.w = listEdge
	k.width -= listEdge
	return row(0, dash, k.paragraph(s[2:], l))
}
