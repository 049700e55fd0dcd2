package sheet

import (
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

var (
	scriptTitle = phrase{"To read aloud", "Para leer en voz alta"}
	scriptNote  = phrase{
		"Read only what your team reads to all children, or what a child's own plan says. " +
			"The answers are not here. A line in parentheses is for you.",
		"Lea solo lo que su equipo lee a todos los niños o lo que dice el plan de cada niño. " +
			"Aquí no están las respuestas. Lo que está entre paréntesis es para usted."}
	dontSay   = phrase{"(Point to it. The child reads it.)", "(Señale. El niño lee solo.)"}
	pointOut  = phrase{"(Point to it.)", "(Señale.)"}
	onSheet   = phrase{"On the sheet: %s.", "En la hoja: %s."}
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
	list := []block{{drawing: note, what: words.Term("the note"), close: true}}
	for _, group := range groups(p.Questions) {
		direction := directionOf(group[0])
		heading := s.inBoth(k, tagDirection, direction, lettering{size: k.size, bold: true})
		list = append(list, block{drawing: heading, gap: 6, keep: true, mark: s.outline(group)})
		for _, q := range group {
			number := k.bold(fmt.Sprint(q.Number))
			number.w = 2.2 * k.size
			inner := k
			inner.width -= number.w
			said := phrase{s.scripted(q, direction), s.inSpanish().scripted(spanish(q), direction)}
			text := tagged(tagText, "", inner.paragraph(said.en, lettering{size: k.size}))
			if s.Both && said.es != said.en {
				text = stack(1, text, taggedIn("es", tagText, "", inner.paragraph(said.es, lettering{size: k.size})))
			}
			item := tagged(tagItem, "", row(0, tagged(tagText, "", number), text))
			list = append(list, block{drawing: item, gap: 2.5, what: words.Sayf("item %s", fmt.Sprint(q.Number))})
		}
	}
	return list
}

// scripted is what the teacher says of an item under its direction: the question, unless the direction was it, and the
// words that stand on the sheet and were not said with either.
func (k kit) scripted(q Question, direction phrase) string {
	said := k.readAloud(q)
	if said == k.say(dontSay) {
		return said
	}
	heard := k.say(direction) + " " + said
	if strings.Contains(k.say(direction), said) {
		said = k.say(pointOut)
	}
	k.key = false
	d, err := k.draw(q)
	if err != nil {
		return said // printing it says so
	}
	var words []string
	asked := strings.TrimSuffix(said, ".")
	for _, text := range textsOf(d) {
		word := strings.TrimSuffix(text.text, ".")
		known := slices.Contains(words, word) || strings.Contains(strings.ToLower(heard), strings.ToLower(word))
		if wordToRead.MatchString(word) && !known && !strings.HasSuffix(word, asked) {
			words = append(words, word)
		}
	}
	if len(words) > 0 {
		said += " " + fmt.Sprintf(k.say(onSheet), strings.Join(words, "; "))
	}
	return said
}

// wordToRead is a word of three letters or more: shorter ones name a bar, a unit or half of the day.
var wordToRead = regexp.MustCompile(`\pL{3}`)

// readAloud is what the teacher says of an item whose sheet lies before the child.
func (k kit) readAloud(q Question) string {
	if q.Task == nil || q.Text != "" {
		return q.Text
	}
	var said string
	switch t := q.Task.(type) {
	case task.Sentence, task.Expanded:
		if said = k.questionAloud(t); q.Look == task.LookBond {
			said = strings.Join(bondAloud(k, t), " ")
		}
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
