package sheet

import (
	"fmt"
	"io"
	"testing"
	"time"

	"evenhand/standards/task"
)

// tape is a canvas that keeps how to draw the same again.
type tape struct{ calls []func(c *pdfCanvas) }

func (t *tape) add(call func(c *pdfCanvas)) { t.calls = append(t.calls, call) }
func (t *tape) line(from, to point, s style) {
	t.add(func(c *pdfCanvas) { c.line(from, to, s) })
}
func (t *tape) rect(at point, w, h float64, s style) {
	t.add(func(c *pdfCanvas) { c.rect(at, w, h, s) })
}
func (t *tape) circle(at point, radius float64, s style) {
	t.add(func(c *pdfCanvas) { c.circle(at, radius, s) })
}
func (t *tape) polygon(corners []point, s style) { t.add(func(c *pdfCanvas) { c.polygon(corners, s) }) }
func (t *tape) text(at point, s string, l lettering) {
	t.add(func(c *pdfCanvas) { c.text(at, s, l) })
}
func (t *tape) bookmark(string, int, float64) {}

// BenchmarkBesideBareDrawing prints 60 sheets and their keys, and beside it draws the very same lines and letters on as
// many pages with nothing but the PDF library: no items laid out, no tags, no outline. It reports how many
// times as long the sheets take; under 3 was asked for.
func BenchmarkBesideBareDrawing(b *testing.B) {
	var papers []Paper
	for n := range 60 {
		p := Paper{Title: "Friday check", Form: "A", Week: "2026-W48"}
		for i, text := range []string{
			fmt.Sprintf("%d + 36 = ?", 20+n), fmt.Sprintf("47 + ? = %d", 60+n), fmt.Sprintf("%d - 15 = ?", 30+n), fmt.Sprintf("%d = ? tens ? ones", 20+n),
			fmt.Sprintf("%d ? 74", 40+n), fmt.Sprintf("%d, %d, ?, %d", n, n+1, n+3), fmt.Sprintf("read %d:30", 1+n%12), fmt.Sprintf("draw %d:00", 1+n%12),
		} {
			asked := task.MustParse(text)
			p.Questions = append(p.Questions, Question{Number: i + 1, Task: asked, Look: asked.Looks()[0], Missteps: asked.Missteps()})
		}
		papers = append(papers, p)
	}
	var ours, bare time.Duration
	for b.Loop() {
		for _, p := range papers {
			for _, key := range []bool{false, true} {
				began := time.Now()
				if err := WritePDF(io.Discard, p, Options{Key: key}); err != nil {
					b.Fatal(err)
				}
				ours += time.Since(began)
				s, pages := taped(b, p, Options{Key: key})
				began = time.Now()
				drawBare(b, s, pages)
				bare += time.Since(began)
			}
		}
	}
	b.ReportMetric(float64(ours)/float64(bare), "times-bare")
}

// taped are the pages of a paper, ready to be drawn again.
func taped(b *testing.B, p Paper, o Options) (settings, []*tape) {
	s, err := o.settle()
	if err != nil {
		b.Fatal(err)
	}
	leaves, err := s.leaves(p)
	if err != nil {
		b.Fatal(err)
	}
	var pages []*tape
	for i, leaf := range leaves {
		page := &tape{}
		leaf.paint(page, i+1, len(leaves))
		pages = append(pages, page)
	}
	return s, pages
}

func drawBare(b *testing.B, s settings, pages []*tape) {
	c := newPDF(s.face, s.pageWidth, s.pageHeight, s.Lang, "bare")
	c.tags.marked = true // nothing is tagged
	for _, page := range pages {
		c.pdf.AddPage()
		for _, call := range page.calls {
			call(c)
		}
	}
	if err := c.pdf.Output(io.Discard); err != nil {
		b.Fatal(err)
	}
}
