package sheet

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"evenhand/standards/task"
)

// Paper is one form of a quiz, ready to be printed.
type Paper struct {
	Title     string // "Friday check, week 48"
	Form      string // "A"; printed small, so that neighbours don't notice
	Week      string // "2026-W48"; may be empty
	Questions []Question
}

// Question is one item on the sheet.
type Question struct {
	Number   int            // as printed, from 1
	Task     task.Task      // nil for an item whose mathematics is not understood
	Look     task.Look      // one of the task's looks; of no account without a task
	Text     string         // the question in words of its own; may be empty where there is a task
	Key      string         // the right answer, used without a task
	Missteps []task.Misstep // likely wrong answers, for the key
}

// Options are how a paper is printed. The zero value is a Letter sheet for pupils in
// English, in 18-point type, in the best font of this machine.
type Options struct {
	PaperSize string // "letter" (the usual, also when empty) or "a4"
	Large     bool   // 24-point type instead of 18
	Columns   int    // at most so many: 1, or 2 (also when 0) where the items are narrow enough
	Lang      string // "en" (also when empty) or "es"
	Key       bool   // the same pages filled in, then what wrong answers suggest
	Layout    string // "pages" (the usual, also when empty) or "strips" to cut apart
	Font      string // InstalledFont or BuiltInFont
}

// Layouts of a paper.
const (
	Pages  = "pages"
	Strips = "strips"
)

// The sizes of paper in millimetres: ANSI letter, ISO 216 A4.
var paperSizes = map[string][2]float64{"letter": {215.9, 279.4}, "a4": {210, 297}}

// settings are options made definite.
type settings struct {
	Options
	kit
	pageWidth, pageHeight float64
}

func (o Options) settle() (settings, error) {
	size, ok := paperSizes[strings.ToLower(or(o.PaperSize, "letter"))]
	if !ok {
		return settings{}, fmt.Errorf("no paper size %q; the sizes are letter and a4", o.PaperSize)
	}
	if o.Lang = or(o.Lang, "en"); o.Lang != "en" && o.Lang != "es" {
		return settings{}, fmt.Errorf("no language %q for sheets; the languages are en and es", o.Lang)
	}
	if o.Layout = or(o.Layout, Pages); o.Layout != Pages && o.Layout != Strips {
		return settings{}, fmt.Errorf("no layout %q; the layouts are %s and %s", o.Layout, Pages, Strips)
	}
	if o.Columns < 0 || o.Columns > 2 {
		return settings{}, fmt.Errorf("%d columns don't fit on a sheet; write 1 or 2", o.Columns)
	}
	f, err := faceNamed(o.Font)
	if err != nil {
		return settings{}, err
	}
	points := 18.0
	if o.Large {
		points = 24
	}
	k := kit{face: f, size: points * pointSize, lang: o.Lang, key: o.Key}
	k.width = size[0] - 2*margin
	return settings{o, k, size[0], size[1]}, nil
}

func or(s, usual string) string {
	if s == "" {
		return usual
	}
	return s
}

// WritePDF prints a paper. The same paper and options give the same bytes on a
// machine with the same fonts. Nothing is written when an item can't be drawn.
func WritePDF(w io.Writer, p Paper, o Options) error {
	s, err := o.settle()
	if err != nil {
		return err
	}
	if len(p.Questions) == 0 {
		return errors.New("a paper without items can't be printed; choose at least one")
	}
	leaves, err := s.leaves(p)
	if err != nil {
		return err
	}
	c := newPDF(s.face, s.pageWidth, s.pageHeight, s.Lang, s.documentTitle(p))
	for i, leaf := range leaves {
		c.page()
		if leaf.newPart != "" {
			c.bookmark(leaf.newPart, 0, 0)
		}
		leaf.paint(c, i+1, len(leaves))
	}
	return c.write(w)
}

// Unprintable are the characters in the paper's own texts that its font lacks and
// that are printed as question marks, so that a teacher can be told.
func Unprintable(p Paper, o Options) ([]rune, error) {
	s, err := o.settle()
	if err != nil {
		return nil, err
	}
	texts := []string{p.Title, p.Form}
	for _, q := range p.Questions {
		texts = append(texts, q.Text, q.Key)
	}
	return s.face.unprintable(strings.Join(texts, " ")), nil
}

// SVG draws one question as a picture for the screen, filled in with Options.Key. Its
// title and description never tell the answer.
func SVG(q Question, o Options) ([]byte, error) {
	s, err := o.settle()
	if err != nil {
		return nil, err
	}
	d, err := s.kit.draw(q)
	if err != nil {
		return nil, err
	}
	const edge = 1.5 // room for the outermost lines
	c := &svgCanvas{face: s.face}
	d.paint(c, point{edge, edge})
	return c.picture(d.w+2*edge, d.h+2*edge, s.Lang, s.say(nameOf(q)), s.description(q)), nil
}
