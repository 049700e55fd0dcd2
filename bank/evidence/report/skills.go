package report

import (
	"cmp"
	"slices"

	"evenhand/standards"
)

// Skill is how a class did on a skill, over all quizzes of the report.
type Skill struct {
	Class string
	ID    standards.SkillID
	Part
	Pupils int // who answered
}

// Means is the skill in a few words.
func (s Skill) Means() string { return skillInWords(s.ID) }

func skillInWords(id standards.SkillID) string { return skillIn("en", id) }

// skillIn is a skill in words of a language; in Spanish as colleagues call it.
func skillIn(lang string, id standards.SkillID) string {
	skill, ok := standards.Catalogue().Skill(id)
	switch spanish := lang == "es"; {
	case ok && spanish:
		return skill.Words(lang)[0]
	case ok:
		return skill.Description
	case spanish:
		return "ninguna habilidad del catálogo"
	}
	return "no skill of the catalogue"
}

func (b *book) skills() (list []Skill) {
	type place struct {
		class string
		id    standards.SkillID
	}
	rows, pupils := map[place]*Skill{}, map[place]map[Who]bool{}
	for _, p := range b.papers {
		for i, a := range p.Answers {
			if !a.Counts() {
				continue
			}
			at := place{p.Class, p.form.Items[i].Skill}
			if rows[at] == nil {
				rows[at], pupils[at] = &Skill{Class: at.class, ID: at.id}, map[Who]bool{}
			}
			rows[at].add(a.State == right)
			pupils[at][p.who] = true
		}
	}
	for at, row := range rows {
		row.Pupils = len(pupils[at])
		list = append(list, *row)
	}
	order := standards.Catalogue().IDs()
	slices.SortFunc(list, func(a, b Skill) int {
		return cmp.Or(cmp.Compare(slices.Index(order, string(a.ID)), slices.Index(order, string(b.ID))), cmp.Compare(a.ID, b.ID), cmp.Compare(a.Class, b.Class))
	})
	return list
}
