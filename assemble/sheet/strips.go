package sheet

import "fmt"

// stripEdge is the space between a strip's content and the cuts, in millimetres.
const stripEdge = 9.0

// strips repeats a short quiz down one page, to be cut apart: one strip a pupil.
func (s settings) strips(p Paper, blocks []block) ([]leaf, error) {
	nameLine := s.nameLine(p)
	content := nameLine.h + 6
	for i, b := range blocks {
		content += b.gap + b.h
		blocks[i].mark = "" // one page needs no outline below its title
	}
	count := int(s.pageHeight / (content + 2*stripEdge))
	if count < 2 {
		return nil, fmt.Errorf("%d items are too tall for two strips on a page; choose fewer items, or whole pages", len(p.Questions))
	}
	height := s.pageHeight / float64(count)
	return []leaf{{newPart: s.documentTitle(p), paint: func(c *pdfCanvas, _, _ int) {
		for i := range count {
			y := height * float64(i)
			if i > 0 {
				c.line(point{0, y}, point{s.pageWidth, y}, style{line: thin, dashed: true})
			}
			nameLine.paint(c, point{margin, y + stripEdge})
			s.down(c, blocks, y+stripEdge+nameLine.h+6, 0)
			c.text(point{margin + s.width, y + height - 5}, s.formMark(p), lettering{size: smallPrint, align: right})
		}
	}}}, nil
}
