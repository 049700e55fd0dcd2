package sheet

import (
	"bytes"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// printDate is the date in every PDF: the same sheet has the same bytes on any day.
var printDate = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// pdfCanvas draws on the pages of a PDF file.
type pdfCanvas struct {
	pdf   *fpdf.Fpdf
	face  *face
	scale float64 // all lengths are drawn so many times as long
	tags  *structure
}

// newPDF starts a file of pages of the given size in millimetres.
func newPDF(f *face, w, h float64, lang, title string) *pdfCanvas {
	pdf := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: w, Ht: h}})
	pdf.SetCreationDate(printDate)
	pdf.SetModificationDate(printDate)
	pdf.SetCatalogSort(true)
	pdf.SetProducer("evenhand", true)
	pdf.SetLang(lang)
	pdf.SetTitle(title, true)
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetLineCapStyle("round")
	pdf.SetLineJoinStyle("round")
	pdf.AddUTF8FontFromBytes(f.name, "", f.files[0])
	pdf.AddUTF8FontFromBytes(f.name, "B", f.files[1])
	pdf.SetFont(f.name, "", 12)
	return &pdfCanvas{pdf, f, 1, newStructure()}
}

// page starts a new page.
func (c *pdfCanvas) page() {
	c.pdf.AddPage()
	c.tags.nextPage()
}

func (c *pdfCanvas) begin(t tag, alt, lang string) {
	c.operator(c.tags.begin(t, c.face.printable(alt), lang))
}

func (c *pdfCanvas) end() { c.operator(c.tags.end()) }

func (c *pdfCanvas) operator(s string) {
	if s != "" {
		c.pdf.RawWriteStr(s)
	}
}

// decorating draws what stands outside all tags as decoration, which a screen reader passes over.
func (c *pdfCanvas) decorating(draw func()) {
	if c.tags.marked {
		draw()
		return
	}
	c.pdf.RawWriteStr("/Artifact BMC")
	draw()
	c.pdf.RawWriteStr("EMC")
}

// bookmark puts a line into the file's outline, at this height of the page.
func (c *pdfCanvas) bookmark(s string, level int, y float64) {
	c.pdf.Bookmark(c.face.printable(s), level, c.scale*y)
}

// write ends the file.
func (c *pdfCanvas) write(w io.Writer) error {
	var file bytes.Buffer
	if err := c.pdf.Output(&file); err != nil {
		return err
	}
	whole, err := c.tags.addTo(file.Bytes())
	if err != nil {
		return err
	}
	_, err = w.Write(whole)
	return err
}

func (c *pdfCanvas) line(from, to point, s style) {
	c.styled(s, func(string) { k := c.scale; c.pdf.Line(k*from.x, k*from.y, k*to.x, k*to.y) })
}

func (c *pdfCanvas) rect(at point, w, h float64, s style) {
	c.styled(s, func(mode string) { k := c.scale; c.pdf.Rect(k*at.x, k*at.y, k*w, k*h, mode) })
}

func (c *pdfCanvas) circle(at point, radius float64, s style) {
	c.styled(s, func(mode string) { k := c.scale; c.pdf.Circle(k*at.x, k*at.y, k*radius, mode) })
}

func (c *pdfCanvas) polygon(corners []point, s style) {
	points := make([]fpdf.PointType, len(corners))
	for i, p := range corners {
		points[i] = fpdf.PointType{X: c.scale * p.x, Y: c.scale * p.y}
	}
	c.styled(s, func(mode string) { c.pdf.Polygon(points, mode) })
}

// styled sets the pens, draws, and takes the dashes back.
func (c *pdfCanvas) styled(s style, draw func(mode string)) {
	mode := ""
	if s.fill != hollow {
		c.pdf.SetFillColor(grey[s.fill], grey[s.fill], grey[s.fill])
		mode = "F"
	}
	if s.line > 0 {
		c.pdf.SetLineWidth(c.scale * s.line)
		mode += "D"
	}
	if s.dashed {
		c.pdf.SetDashPattern([]float64{c.scale * dash, c.scale * dash}, c.scale*dash/2)
		defer c.pdf.SetDashPattern(nil, 0)
	}
	c.decorating(func() { draw(mode) })
}

// dash is the length of a dash and of the gap after it. The side of a small box has six, and
// every outline begins with half a dash, so that its corners are closed.
const dash = noteSize / 6

func (c *pdfCanvas) text(at point, s string, l lettering) {
	weight := ""
	if l.bold {
		weight = "B"
	}
	c.pdf.SetFont(c.face.name, weight, c.scale*l.size/pointSize)
	c.decorating(func() {
		c.pdf.Text(c.scale*(at.x-c.face.width(s, l)*share[l.align]), c.scale*at.y, c.face.printable(s))
	})
}

// pointSize is a typographic point in millimetres.
const pointSize = 25.4 / 72

// share is how much of a line of text stands left of its point.
var share = map[align]float64{left: 0, centre: .5, right: 1}
