package report

import (
	"slices"
)

// Pupil is a pupil's way over the weeks.
type Pupil struct {
	Who
	Weeks     []Part // one for each week of the report; no answers where absent
	Standouts []Standout
	recent    []answered // of the last weeks
}

func (b *book) pupils() (list []Pupil) {
	papers := map[Who][]sat{}
	for _, p := range b.papers {
		papers[p.who] = append(papers[p.who], p)
	}
	for who, own := range papers {
		list = append(list, b.pupil(who, own))
	}
	slices.SortFunc(list, func(a, b Pupil) int { return a.Who.compare(b.Who) })
	return list
}

func (b *book) pupil(who Who, papers []sat) Pupil {
	pupil := Pupil{Who: who, Weeks: make([]Part, len(b.weeks))}
	for _, p := range papers {
		week := &pupil.Weeks[slices.Index(b.weeks, p.quiz.Week)]
		for i, a := range p.Answers {
			if !a.Counts() {
				continue
			}
			week.add(a.State == right)
			if b.recent(p) {
				item := p.form.Items[i]
				pupil.recent = append(pupil.recent, answered{item.Skill, a.State == right, b.ease(p.Class, item)})
			}
		}
	}
	pupil.Standouts = b.standouts(papers)
	return pupil
}

// classWeeks is how the whole class did in each week.
func (b *book) classWeeks(class string) []Part {
	weeks := make([]Part, len(b.weeks))
	for _, p := range b.papers {
		if p.Class != class {
			continue
		}
		week := &weeks[slices.Index(b.weeks, p.quiz.Week)]
		got, of := p.Score()
		week.Right, week.Of = week.Right+got, week.Of+of
	}
	return weeks
}
