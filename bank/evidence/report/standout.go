package report

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/bank/evidence"
	"evenhand/standards/task"
)

// Standout is a misstep that stands out on a pupil's recent papers.
type Standout struct {
	Kinds   []*task.MisstepKind // several when these answers can't tell them apart
	Shown   int                 // answers it explains
	Chances int                 // answers where it could have shown
	Where   string              // places of the answers it explains
}

// String is the misstep in a sentence.
func (s Standout) String() string {
	text := fmt.Sprintf("likely %s: %s (%s)", s.Tells(), s.Count(), s.Where)
	if len(s.Kinds) > 1 {
		text += "; these answers can't tell which"
	}
	return text
}

// Count is how often it showed, "in 3 of the 4 items where it could show".
func (s Standout) Count() string {
	return fmt.Sprintf("in %d of the %s where it could show", s.Shown, plural(s.Chances, "item"))
}

// Tells is what the missteps are, joined by "or".
func (s Standout) Tells() string { return s.TellsIn("en") }

// TellsIn is the same in a language ("en" or "es"; any other reads as "en").
func (s Standout) TellsIn(lang string) string {
	parts := make([]string, len(s.Kinds))
	for i, kind := range s.Kinds {
		parts[i] = kind.TellsIn(lang)
	}
	if lang == "es" {
		return strings.Join(parts, "; o ")
	}
	return strings.Join(parts, ", or ")
}

// Name is the missteps' short names.
func (s Standout) Name() string {
	names := make([]string, len(s.Kinds))
	for i, kind := range s.Kinds {
		names[i] = kind.Name
	}
	slices.Sort(names)
	return strings.Join(names, " or ")
}

// standouts weighs all that a pupil answered in the last weeks.
func (b *book) standouts(papers []sat) (list []Standout) {
	kinds := map[string]*task.MisstepKind{}
	var given []evidence.Given
	for _, p := range papers {
		if b.recent(p) {
			given = append(given, b.given(p, kinds)...)
		}
	}
	for _, f := range evidence.Missteps(given) {
		s := Standout{Shown: len(f.Items), Chances: f.Chances, Where: b.where(f.Items)}
		for _, name := range f.Missteps {
			s.Kinds = append(s.Kinds, kinds[name])
		}
		list = append(list, s)
	}
	return list
}

// given is a paper as the evidence for missteps sees it. A wrong answer that nobody
// wrote down says nothing about missteps, for or against.
func (b *book) given(p sat, kinds map[string]*task.MisstepKind) (list []evidence.Given) {
	for i, a := range p.Answers {
		if !a.Counts() {
			continue
		}
		g := evidence.Given{Item: place(p, i), Right: a.State == right}
		q := b.question(p.form.Items[i])
		if g.Right || a.Written != "" {
			g.Chances = q.chances
		}
		if !g.Right && a.Written != "" {
			for _, kind := range q.explain(a.Written) {
				g.Matches = append(g.Matches, kind.Name)
				kinds[kind.Name] = kind
			}
		}
		list = append(list, g)
	}
	return list
}
