package sheet

import "fmt"

// stripEdge is the space between a strip's content and the cuts, in millimetres.
const stripEdge = 9.0

// stripTight makes the gaps smaller where else only one strip would fit on a page.
const stripTight = .35

// strips repeats a short quiz down one page, to be cut apart: one strip a pupil.
func (s settings) strips(p Paper, blocks []block) ([]leaf, error) {
	nameLine := s.nameLine(p)
	for i := range blocks {
		blocks[i].mark = "" // one page needs no outline below its title
	}
	count := s.stripsOf(nameLine.h+6, blocks)
	if count < 2 {
		for i := range blocks {
			blocks[i].gap *= stripTight
		}
		count = s.stripsOf(nameLine.h+6, blocks)
	}
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

// stripsOf is how many strips with these blocks below a heading fit on a page.
func (s settings) stripsOf(heading float64, blocks []block) int {
	content := heading + 2*stripEdge
	for _, b := range blocks {
		content += b.gap + b.h
	}
	return int(s.pageHeight / content)
}
