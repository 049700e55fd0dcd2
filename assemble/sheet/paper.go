package sheet

import (
	"io"
	"strings"

	"evenhand/bank"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Paper is one form of a quiz, ready to be printed.
type Paper struct {
	Title     string // "Friday check, week 48"
	Form      string // "A"; printed small, so that neighbours don't notice
	Week      string // "2026-W48"; may be empty
	Pupil     string // whose sheet it is, written on the name line; empty for a line to write on
	Questions []Question

	Example *Example // an item done already, on top of a practice sheet; nil for none
	Closing string   // what to do after the last item, with room to do it in; empty for nothing
}

// Question is one item on the sheet.
type Question struct {
	Number   int            // as printed, from 1
	Task     task.Task      // nil for an item whose mathematics is not understood
	Look     task.Look      // one of the task's looks; of no account without a task
	Text     string         // the question in words of its own; may be empty where there is a task
	Spanish  string         // the same in Spanish, for a paper in both languages
	Key      string         // the right answer, used without a task
	Missteps []task.Misstep // likely wrong answers, for the key
	Choices  []string       // three answers to choose from, in order, one of them right; empty for those that Choices gives
	Tenths   int            // how many in 10 of whom the quiz is for are expected to get it right, for the key; of no account without a basis
	Basis    bank.Basis     // what that rests on; empty where nobody knows
}

// Options are how a paper is printed. The zero value is a Letter sheet for pupils in
// English, in 18-point type, in the best font of this machine.
type Options struct {
	PaperSize string // "letter" (the usual, also when empty) or "a4"
	Large     bool   // everything that a child reads 1.5 times as large: 27-point type instead of 18
	Spaced    bool   // one item below the other, with more room between
	Columns   int    // at most so many: 1, or 2 (also when 0) where the items are narrow enough
	Lang      string // "en" (also when empty) or "es"
	Both      bool   // English, and below it Spanish, on what pupils read
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

// settings are options made definite. Lengths are those of usual print: in large print all of them,
// the page's too, are largeScale times as long on paper.
type settings struct {
	Options
	kit
	pageWidth, pageHeight float64
	margin                float64 // at the left and at the right
	nameSpace             float64 // down to the name line
	topSpace              float64 // down to the first block
	bottomSpace           float64 // below the last block: the footer stands there
	columnGap             float64 // between items side by side
	sparing               bool    // closer than usual, to spare a page
	headline              string  // on a teacher's pages, in place of the line for name and date
}

// largeScale is how much larger large print is: type of 27 points where the usual has 18, and of 18
// where it has the least, 12 (American Printing House for the Blind: large print begins at 18
// points, from memory).
const largeScale = 1.5

// aboveItem is the room that a title and a direction of two lines take with the gaps below them, in millimetres.
const aboveItem = 41.0

func (o Options) settle() (settings, error) {
	size, ok := paperSizes[strings.ToLower(or(o.PaperSize, "letter"))]
	if !ok {
		return settings{}, words.Errorf("no paper size %q; the sizes are letter and a4", o.PaperSize)
	}
	if o.Lang = or(o.Lang, "en"); o.Both && o.Lang != "en" {
		return settings{}, words.Errorf("a paper in both languages is in English with Spanish below; leave the language open")
	}
	if o.Lang != "en" && o.Lang != "es" {
		return settings{}, words.Errorf("no language %q for sheets; the languages are en and es", o.Lang)
	}
	if o.Layout = or(o.Layout, Pages); o.Layout != Pages && o.Layout != Strips {
		return settings{}, words.Errorf("no layout %q; the layouts are %s and %s", o.Layout, Pages, Strips)
	}
	if o.Columns < 0 || o.Columns > 2 {
		return settings{}, words.Errorf("%d columns don't fit on a sheet; write 1 or 2", o.Columns)
	}
	f, err := faceNamed(o.Font)
	if err != nil {
		return settings{}, err
	}
	k := kit{face: f, size: 18 * pointSize, lang: o.Lang, key: o.Key, scale: 1, radius: dialRadius, toDraw: drawingRoom}
	s := settings{Options: o, kit: k, margin: 16, nameSpace: 14, topSpace: 29, bottomSpace: 19, columnGap: columnGap}
	if o.Large { // wide margins would cost words
		s.scale, s.margin, s.nameSpace, s.topSpace, s.bottomSpace = largeScale, 16/largeScale, 9, 21, 13
	}
	s.pageWidth, s.pageHeight = size[0]/s.scale, size[1]/s.scale
	s.width = s.pageWidth - 2*s.margin
	s.height = s.pageHeight - s.topSpace - s.bottomSpace - aboveItem
	return s, nil
}

// closer are the same settings with less room around and between the items, to spare a page.
func (s settings) closer() settings {
	s.sparing, s.columnGap, s.toDraw = true, closeColumns, leastRoom
	s.topSpace -= closeEdge / s.scale
	s.bottomSpace -= closeEdge / s.scale
	return s
}

// forTeacher are the same settings in usual print, for pages that only teachers read.
func (s settings) forTeacher() settings {
	o := s.Options
	o.Large = false
	usual, err := o.settle()
	if err != nil {
		return s // these options were settled before
	}
	return usual
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
	s, leaves, err := o.pagesOf(p)
	if err != nil {
		return err
	}
	return s.write(w, s.documentTitle(p), leaves)
}

// PageCount is how many pages a paper takes.
func PageCount(p Paper, o Options) (int, error) {
	_, leaves, err := o.pagesOf(p)
	return len(leaves), err
}

// pagesOf are the pages of a paper, and the options made definite.
func (o Options) pagesOf(p Paper) (settings, []leaf, error) {
	s, err := o.settle()
	if err != nil {
		return settings{}, nil, err
	}
	if len(p.Questions) == 0 {
		return settings{}, nil, words.Errorf("a paper without items can't be printed; choose at least one")
	}
	leaves, err := s.leaves(p)
	return s, leaves, err
}

// WriteKeys prints the answers of several forms into one file, a page a form: to mark by, without the
// filled-in sheets that each form's own key has.
func WriteKeys(w io.Writer, papers []Paper, o Options) error {
	o.Key = true
	s, err := o.settle()
	if err != nil {
		return err
	}
	var all []leaf
	for _, p := range papers {
		leaves, err := s.answerPages(p)
		if err != nil {
			return err
		}
		all = append(all, leaves...)
	}
	return s.write(w, s.documentTitle(withoutForm(papers)), all)
}

// WriteStrips prints several forms by turns on strips to cut apart.
func WriteStrips(w io.Writer, papers []Paper, o Options) error {
	s, err := o.settle()
	if err != nil {
		return err
	}
	leaves, err := s.strips(papers)
	if err != nil {
		return err
	}
	return s.write(w, s.documentTitle(withoutForm(papers)), leaves)
}

// withoutForm is the paper that names a file of all forms.
func withoutForm(papers []Paper) Paper {
	p := papers[0]
	p.Form = ""
	return p
}

// write ends a file of pages.
func (s settings) write(w io.Writer, title string, leaves []leaf) error {
	c := newPDF(s.face, s.scale*s.pageWidth, s.scale*s.pageHeight, s.Lang, title)
	for i, leaf := range leaves {
		c.page()
		c.scale = leaf.scale
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
	texts := []string{p.Title, p.Form, p.Pupil}
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
	c.beginPicture(d.w+2*edge, d.h+2*edge, s.scale, s.Lang, s.say(nameOf(q)), s.description(q))
	d.paint(c, point{edge, edge})
	return c.endPicture(), nil
}
