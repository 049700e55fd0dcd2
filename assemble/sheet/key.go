package sheet

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

var (
	suggestTitle = phrase{"What wrong answers suggest", "Qué sugieren las respuestas equivocadas"}
	caution      = phrase{
		"A short quiz is a hint for teaching, not a diagnosis or a placement: " +
			"follow your school's policy, local law and the licensed staff, and each child's own plan.",
		"Una prueba corta es una pista para enseñar, no un diagnóstico ni una ubicación: " +
			"siga las normas de su escuela, la ley local, al personal autorizado y el plan de cada niño."}
	orWord = phrase{"; or ", "; o "}
)

// teacherSizes are the types of what only teachers read, 10 points or so much smaller that a key fits
// on one page.
var teacherSizes = []float64{10 * pointSize, 9 * pointSize, 8 * pointSize}

var workedTitle = phrase{"The sheet filled in", "La hoja resuelta"}

// answers are the first page of a key: the answers in a strip to mark by, and for each item its
// likely wrong answers and what each suggests, in two columns. They take more pages only where
// the smallest type doesn't fit on one.
func (s settings) answers(p Paper) []block {
	room := s.pageHeight - s.topSpace - s.bottomSpace
	var list []block
	for _, size := range teacherSizes {
		k := s.kit
		k.size = size
		list = []block{
			{drawing: k.markingStrip(p.Questions), what: words.Term("the marking strip"), close: true},
		}
		if expected := k.expected(p.Questions); len(expected) > 0 {
			d := tagged(tagText, "", k.broken(expected, lettering{size: size}))
			list = append(list, block{drawing: d, gap: 1.5, what: words.Term("what is expected"), close: true})
		}
		strip := len(list)
		list = append(list, []block{
			{drawing: tagged(tagDirection, "", k.print(s.say(suggestTitle), lettering{size: 1.2 * size, bold: true})), gap: 5, keep: true},
			{drawing: tagged(tagText, "", k.paragraph(s.say(caution), lettering{size: size})), gap: 1.5, what: words.Term("the caution")},
		}...)
		k.width = (s.width - columnGap) / 2
		var items []drawing
		for _, q := range p.Questions {
			if len(shown(q)) > 0 {
				items = append(items, k.wrongAnswersOf(q))
			}
		}
		if len(items) == 0 {
			return list[:strip]
		}
		columns := block{drawing: inTwo(k.width+columnGap, items), gap: 4, what: words.Term("the wrong answers"), close: true}
		if pages, err := paginate(append(list, columns), room); err == nil && len(pages) == 1 {
			return append(list, columns)
		}
		for start := 0; start < len(items); start += 2 {
			end := min(start+2, len(items))
			list = append(list, block{drawing: grid(k.width+columnGap, items[start:end]), gap: itemGap, what: words.Term("a list of wrong answers"), close: true})
		}
	}
	return list
}

// itemGap is the space between the wrong answers of two items, in millimetres.
const itemGap = 2.5

// inTwo sets drawings in two columns, read down the left and then the right one, so that the
// longer column is as short as can be.
func inTwo(step float64, items []drawing) drawing {
	best := drawing{}
	for cut := 1; cut <= len(items); cut++ {
		first := stack(itemGap, items[:cut]...)
		first.w, first.axis = step, 0
		both := first
		if cut < len(items) {
			second := stack(itemGap, items[cut:]...)
			second.axis = 0
			both = row(0, first, second)
		}
		if best.paint == nil || both.h < best.h {
			best = both
		}
	}
	return best
}

// markingStrip is every number with its right answer, to lay beside a paper.
func (k kit) markingStrip(questions []Question) drawing {
	var cells []drawing
	for _, q := range questions {
		cells = append(cells, tagged(tagText, "", k.strip(fmt.Sprint(q.Number), k.answerText(q))))
	}
	return flow(k.width, 0, 0, cells...)
}

// strip is one cell of the marking strip.
func (k kit) strip(number, answer string) drawing {
	top := k.print(number, lettering{size: .8 * k.size})
	below := k.fitting(answer, lettering{size: k.size, bold: true}, k.width-4)
	w, h := max(14, below.w+4), 11.0
	return drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		c.rect(at, w, h, style{line: thin})
		top.paint(c, point{at.x + (w-top.w)/2, at.y + .6})
		below.paint(c, point{at.x + (w-below.w)/2, at.y + h - below.h - .8})
	}}
}

// answerText is the right answer in one line, in the kit's language.
func (k kit) answerText(q Question) string {
	if q.Task == nil {
		return q.Key
	}
	return answerIn(q.Task, k.lang)
}

// wrongAnswersOf is one item: what it asks, and a line or more for each misstep.
func (k kit) wrongAnswersOf(q Question) drawing {
	const label = 8.0
	inner := k
	inner.width = k.width - label
	parts := []drawing{tagged(tagText, "", inner.paragraph(inner.inShort(q), lettering{size: k.size, bold: true}))}
	for _, m := range shown(q) {
		parts = append(parts, tagged(tagText, "", inner.misstep(q, m)))
	}
	number := k.bold(fmt.Sprint(q.Number))
	number.w = label
	d := row(0, tagged(tagText, "", number), stack(1, parts...))
	d.axis = 0 // items side by side begin at one height
	return tagged(tagItem, "", d)
}

// misstep is a wrong answer to an item and what it suggests.
func (k kit) misstep(q Question, m task.Misstep) drawing {
	tells := make([]string, len(m.Kinds))
	for i, kind := range m.Kinds {
		tells[i] = kind.TellsIn(k.lang)
	}
	tell := strings.Join(tells, k.say(orWord))
	answer := k.fitting(task.AnswerIn(q.Task, m.Answer, k.lang), lettering{size: k.size, bold: true}, k.width)
	if answer.w > k.width/2 {
		return stack(.5, answer, k.paragraph(tell, lettering{size: k.size}))
	}
	answer.w = max(12, answer.w+3)
	k.width -= answer.w
	return row(0, answer, k.paragraph(tell, lettering{size: k.size}))
}

// shown are the missteps that can show on the sheet: where there are answers to choose from,
// those that stand there.
func shown(q Question) []task.Misstep {
	choices := Choices(q)
	if len(choices) == 0 {
		return q.Missteps
	}
	return slices.DeleteFunc(slices.Clone(q.Missteps), func(m task.Misstep) bool {
		return !slices.Contains(choices, m.Answer)
	})
}
