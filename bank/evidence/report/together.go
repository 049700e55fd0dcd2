package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Group is pupils of one class who could work on the same thing this week.
type Group struct {
	Class   string
	Work    string // what on: a misstep or a skill
	Told           // in English; In has it in other languages
	Members []Member

	Kinds []*task.MisstepKind // the missteps, where it is about one
	Skill standards.SkillID   // the skill, where it is about that
}

// Told is what is said of a group.
type Told struct {
	Title string // what on, in words
	Why   string // what their answers suggest
	Next  string // how to begin, where a misstep suggests it
}

// Member is a pupil of a group with what was counted.
type Member struct {
	Who
	Count     string // "in 3 of the 4 items where it could show"
	Shown, Of int    // of how many chances the misstep showed; of a skill: right, of how many answers
}

// together puts each pupil in at most one group: of the likeliest misstep that stands
// out, else of the skill in which the answers are hardest to lay to luck (weakest). The
// larger groups come first.
func (b *book) together(pupils []Pupil) (groups []Group, none []Who) {
	at := map[string]int{}
	for _, p := range pupils {
		group, member, ok := groupOf(p)
		if !ok {
			none = append(none, p.Who)
			continue
		}
		key := group.Class + "\x00" + group.Work
		i, known := at[key]
		if !known {
			i = len(groups)
			at[key] = i
			groups = append(groups, group)
		}
		groups[i].Members = append(groups[i].Members, member)
	}
	slices.SortStableFunc(groups, func(a, b Group) int {
		return cmp.Or(cmp.Compare(a.Class, b.Class), cmp.Compare(len(b.Members), len(a.Members)), cmp.Compare(a.Work, b.Work))
	})
	return groups, none
}

func groupOf(p Pupil) (g Group, m Member, ok bool) {
	if len(p.Standouts) > 0 {
		s := p.Standouts[0]
		g = Group{Class: p.Class, Work: s.Name(), Kinds: s.Kinds}
		m = Member{p.Who, s.Count(), s.Shown, s.Chances}
	} else {
		skill, part, ok := weakest(p.recent)
		if !ok {
			return g, m, false
		}
		g = Group{Class: p.Class, Work: string(skill), Skill: skill}
		m = Member{p.Who, RightIn("en", part), part.Right, part.Of}
	}
	g.Told = g.In("en")
	return g, m, true
}

// In is what is said of the group in a language ("en" or "es"; any other reads as "en").
func (g Group) In(lang string) Told {
	s := Standout{Kinds: g.Kinds}
	switch spanish := lang == "es"; {
	case len(g.Kinds) > 0 && spanish:
		return Told{s.TellsIn(lang), "es lo que sugieren sus respuestas", nextSteps(g.Kinds, lang)}
	case len(g.Kinds) > 0:
		return Told{s.Name(), "likely " + s.Tells(), nextSteps(g.Kinds, lang)}
	case spanish:
		return Told{Title: skillIn(lang, g.Skill), Why: "fallaron la mitad de estos ejercicios o más, y más que en los demás"}
	}
	return Told{Title: skillIn(lang, g.Skill), Why: "missed half of these items or more, and more than these pupils miss elsewhere"}
}

// CountIn is what was counted of a member of the group in a language.
func (g Group) CountIn(lang string, m Member) string {
	switch {
	case len(g.Kinds) == 0:
		return RightIn(lang, Part{m.Shown, m.Of})
	case lang == "es":
		return fmt.Sprintf("se vio en %d de los %d ejercicios donde podía verse", m.Shown, m.Of)
	}
	return Standout{Shown: m.Shown, Chances: m.Of}.Count()
}

// nextSteps are the ways to begin, each once.
func nextSteps(kinds []*task.MisstepKind, lang string) string {
	var steps []string
	for _, kind := range kinds {
		if step := kind.ReteachIn(lang); !slices.Contains(steps, step) {
			steps = append(steps, step)
		}
	}
	return strings.Join(steps, "; ")
}
