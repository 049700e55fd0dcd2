package sheet

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"evenhand/standards/task"
)

var (
	scriptTitle = phrase{"To read aloud", "Para leer en voz alta"}
	scriptNote  = phrase{
		"Read only what your team reads to all children, or what a child's own plan says. " +
			"The answers are not here. A line in parentheses is for you.",
		"Lea solo lo que su equipo lee a todos los niños o lo que dice el plan de cada niño. " +
			"Aquí no están las respuestas. Lo que está entre paréntesis es para usted."}
	dontSay   = phrase{"(Point to it. The child reads it.)", "(Señale. El niño lee solo.)"}
	pointOnly = phrase{"(Point to the answers. Don't read them.)", "(Señale las respuestas. No las lea.)"}
)

// WriteScript prints what a teacher reads aloud of a paper: each direction, and each item as it is said. What an item
// asks the child to read is not said for it.
func WriteScript(w io.Writer, p Paper, o Options) error {
	o.Layout, o.Key = Pages, false
	s, err := o.settle()
	if err != nil {
		return err
	}
	if len(p.Questions) == 0 {
		return errors.New("a paper without items can't be read aloud; choose at least one")
	}
	s = s.forTeacher()
	s.headline = s.documentTitle(p) + " - " + s.say(scriptTitle)
	leaves, err := s.pages(p, s.script(p))
	if err != nil {
		return err
	}
	leaves[0].newPart = s.headline
	return s.write(w, s.headline, leaves)
}

// scriptSize is the type of a script, 13 points, to be read standing up.
const scriptSize = 13 * pointSize

func (s settings) script(p Paper) []block {
	k := s.kit
	k.size = scriptSize
	note := tagged(tagText, "", k.paragraph(s.say(scriptNote), lettering{size: teacherSizes[0]}))
	list := []block{{drawing: note, what: "the note", close: true}}
	for _, group := range groups(p.Questions) {
		said := s.word(directionOf(group[0]))
		heading := tagged(tagDirection, "", k.paragraph(said, lettering{size: k.size, bold: true}))
		list = append(list, block{drawing: heading, gap: 6, keep: true, mark: s.outline(group)})
		for _, q := range group {
			number := k.bold(fmt.Sprint(q.Number))
			number.w = 2.2 * k.size
			inner := k
			inner.width -= number.w
			words := inner.paragraph(k.readAloud(q), lettering{size: k.size})
			if other := inner.inSpanish().readAloud(spanish(q)); s.Both && other != k.readAloud(q) {
				words = stack(1, words, inner.paragraph(other, lettering{size: k.size}))
			}
			list = append(list, block{drawing: tagged(tagText, "", row(0, number, words)), gap: 2.5, what: "item " + fmt.Sprint(q.Number)})
		}
	}
	return list
}

// readAloud is what the teacher says of an item whose sheet lies before the child.
func (k kit) readAloud(q Question) string {
	if q.Task == nil || q.Text != "" {
		return q.Text
	}
	var said string
	switch t := q.Task.(type) {
	case task.WriteNumber:
		if t.InWords {
			return k.say(dontSay)
		}
		_, name, _ := strings.Cut(t.Prompt(k.lang), ": ")
		said = name + "."
	case task.Clock:
		switch {
		case q.Look == task.LookSaidTime || q.Look == task.LookSaidFace:
			return k.say(dontSay)
		case t.Verb == task.Draw:
			said = strings.TrimSuffix(t.Time.Printed(), ".") + "."
		default:
			said = t.Prompt(k.lang)
		}
	default:
		said = k.questionAloud(q.Task)
	}
	if q.Look != task.LookChoice {
		return said
	}
	if _, reading := q.Task.(task.WriteNumber); reading {
		return said + " " + k.say(pointOnly)
	}
	return said + " " + k.optionsAloud(q)
}
