package sheet

import (
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Space on a strip in millimetres.
const (
	stripEdge = 6.5  // between its content and the cuts
	stripGap  = 5.0  // between rows of items
	cellGap   = 8.0  // between items side by side
	cellWords = 58.0 // least width of a direction

	stripRadius = 19.0 // of a clock face
	stripRoom   = 18.0 // height of the room to draw in
)

// strips repeats short quizzes down a page, to be cut apart: one strip a pupil. Several forms take
// turns, so that neighbours get different ones, on as many pages as it takes for each page's
// cuts to be the same again.
func (s settings) strips(papers []Paper) ([]leaf, error) {
	s.radius, s.toDraw = stripRadius, stripRoom
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
		return nil, words.Errorf("%d items are too tall for two strips on a page; choose fewer items, or whole pages", len(papers[0].Questions))
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

// stripOf is the content of a strip: the name line and the items, those of one direction together below it. Several
// groups stand side by side where they are narrow enough; stories are made so where that is lower.
func (s settings) stripOf(p Paper) (drawing, error) {
	lowest, err := s.stripWith(p, s.width)
	if err != nil {
		return drawing{}, err
	}
	if beside, err := s.stripWith(p, (s.width-cellGap)/2); err == nil && beside.h < lowest.h {
		lowest = beside
	}
	return lowest, nil
}

// stripWith is the content of a strip with stories as wide as that.
func (s settings) stripWith(p Paper, stories float64) (drawing, error) {
	var cells []drawing
	for _, group := range groups(p.Questions) {
		width := s.width
		if group[0].Look == task.LookStory {
			width = stories
		}
		cell, err := s.stripCell(group, width)
		if err != nil {
			return drawing{}, err
		}
		cells = append(cells, cell)
	}
	return stack(4, tagged(tagText, "", s.nameLine(p)), flow(s.width, cellGap, stripGap, cells...)), nil
}

// stripCell is a group of items below their direction.
func (s settings) stripCell(group []Question, width float64) (drawing, error) {
	s.width = width
	items, err := s.items(group)
	if err != nil {
		return drawing{}, err
	}
	for i := range items {
		items[i].axis = 0
	}
	body := flow(width, cellGap, stripGap, items...)
	k := s.kit
	k.width = min(width, max(body.w, cellWords))
	cell := stack(2, s.inBoth(k, tagDirection, directionOf(group[0]), lettering{size: leastPrint}), body)
	cell.axis = 0
	return cell, nil
}
