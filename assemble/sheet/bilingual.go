package sheet

import (
	"slices"
	"strings"
)

// secondLanguage is how much smaller the Spanish of a paper in both languages is than the English above it.
const secondLanguage = .85

// word is a phrase in the language of the paper, or in both with a stroke between.
func (s settings) word(p phrase) string {
	if s.Both {
		return p.en + " / " + p.es
	}
	return s.say(p)
}

// inBoth is a phrase as a paragraph in the language of the paper; in both, Spanish below English.
func (s settings) inBoth(k kit, t tag, p phrase, l lettering) drawing {
	first := tagged(t, "", k.paragraph(s.say(p), l))
	if !s.Both {
		return first
	}
	return stack(.1*l.size, first, taggedIn("es", tagText, "", k.paragraph(p.es, second(l))))
}

func second(l lettering) lettering {
	l.size, l.bold = max(leastPrint, secondLanguage*l.size), false
	return l
}

// withSpanish is an item with its tags, and for a paper in both languages the Spanish for what the drawing says in
// words below it; a picture or a sum without words stands once.
func (s settings) withSpanish(k kit, q Question, d drawing) (drawing, error) {
	if !d.speaks {
		d = tagged(tagFigure, s.aloud(q), d)
	}
	if !s.Both {
		return d, nil
	}
	other, err := k.inSpanish().draw(spanish(q))
	if err != nil {
		return drawing{}, err
	}
	words := newWords(textsOf(d), textsOf(other))
	if words == "" {
		return d, nil
	}
	below := stack(2, d, taggedIn("es", tagText, "", k.paragraph(words, second(lettering{size: k.size}))))
	below.speaks = true
	return below, nil
}

// inSpanish is the kit for the Spanish of an item.
func (k kit) inSpanish() kit {
	k.lang = "es"
	return k
}

// spanish is an item with its own words in Spanish, if it has any.
func spanish(q Question) Question {
	if q.Text != "" && q.Spanish != "" {
		q.Text = q.Spanish
	}
	return q
}

// newWords are the texts of the second list that are not in the first, each once, in their order: lines of a paragraph
// together, others with a dot between.
func newWords(first, second []heard) string {
	var words strings.Builder
	var before heard
	for i, text := range second {
		same := func(other heard) bool { return other.text == text.text }
		if slices.ContainsFunc(first, same) || slices.ContainsFunc(second[:i], same) {
			continue // it stands there already
		}
		switch {
		case words.Len() == 0:
		case before.above(text):
			words.WriteString(" ")
		default:
			words.WriteString(" · ")
		}
		words.WriteString(text.text)
		before = text
	}
	return words.String()
}

// textsOf are the texts of a drawing, as they are painted.
func textsOf(d drawing) []heard {
	c := &listener{}
	d.paint(c, point{})
	return c.texts
}

// heard is a text with the place of its left edge and its size.
type heard struct {
	text string
	at   point
	size float64
}

// above says that the text is the line before another of one paragraph: names in the rows of a table stand further apart.
func (h heard) above(next heard) bool {
	const lineStep = 1.5 // of the size
	return h.at.x == next.at.x && next.at.y > h.at.y && next.at.y-h.at.y < lineStep*h.size
}

// listener is a canvas that keeps only the texts that a child reads.
type listener struct{ texts []heard }

func (c *listener) line(_, _ point, _ style)            {}
func (c *listener) rect(_ point, _, _ float64, _ style) {}
func (c *listener) circle(_ point, _ float64, _ style)  {}
func (c *listener) polygon(_ []point, _ style)          {}
func (c *listener) text(at point, text string, l lettering) {
	if l.size > smallPrint { // smaller print is the teacher's, and stands once
		c.texts = append(c.texts, heard{text, at, l.size})
	}
}
