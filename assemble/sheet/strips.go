package sheet

import "fmt"

// Space on a strip in millimetres.
const (
	stripEdge = 6.5  // between its content and the cuts
	stripGap  = 5.0  // between rows of items
	cellGap   = 8.0  // between items side by side
	cellWords = 58.0 // least width of a direction

	stripRadius = 19.0 // of a clock face
)

// strips repeats short quizzes down a page, to be cut apart: one strip a pupil. Several forms take
// turns, so that neighbours get different ones, on as many pages as it takes for each page's
// cuts to be the same again.
func (s settings) strips(papers []Paper) ([]leaf, error) {
	s.radius = stripRadius
	contents := make([]drawing, len(papers))
	tallest := 0.0
	for i, p := range papers {
		content, err := s.stripOf(p)
		if err != nil {
			return nil, err
		}
		contents[i], tallest = content, max(tallest, content.h)
	}
	count := int(s.pageHeight / (tallest + 2*stripEdge))
	if count < 2 {
		return nil, fmt.Errorf("%d items are too tall for two strips on a page; choose fewer items, or whole pages", len(papers[0].Questions))
	}
	height := s.pageHeight / float64(count)
	var list []leaf
	for first := 0; first == 0 || first%len(papers) != 0; first += count {
		list = append(list, leaf{scale: s.scale, paint: func(c pageCanvas, _, _ int) {
			for i := range count {
				y, form := height*float64(i), (first+i)%len(papers)
				if i > 0 {
					c.line(point{0, y}, point{s.pageWidth, y}, style{line: thin, dashed: true})
				}
				tagged(tagPart, "", contents[form]).paint(c, point{s.margin, y + stripEdge})
				c.text(point{s.margin + s.width, y + height - 4}, s.formMark(papers[form]), lettering{size: smallPrint, align: right})
			}
		}})
	}
	list[0].newPart = s.documentTitle(papers[0])
	return list, nil
}

// stripOf is the content of a strip: the name line and the items, those of one direction together
// below it, as many groups side by side as there is room for.
func (s settings) stripOf(p Paper) (drawing, error) {
	var cells []drawing
	for _, group := range groups(p.Questions) {
		items, err := s.items(group)
		if err != nil {
			return drawing{}, err
		}
		for i := range items {
			items[i].axis = 0
		}
		body := flow(s.width, cellGap, stripGap, items...)
		k := s.kit
		k.width = min(s.width, max(body.w, cellWords))
		cell := stack(2, s.inBoth(k, tagDirection, directionOf(group[0]), lettering{size: leastPrint}), body)
		cell.axis = 0
		cells = append(cells, cell)
	}
	return stack(4, tagged(tagText, "", s.nameLine(p)), flow(s.width, cellGap, stripGap, cells...)), nil
}
