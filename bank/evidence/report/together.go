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
	Title   string // the same in words
	Why     string // what their answers suggest
	Next    string // how to begin, where a misstep suggests it
	Members []Member

	Kinds []*task.MisstepKind // the missteps, where it is about one
	Skill standards.SkillID   // the skill, where it is about that
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

func groupOf(p Pupil) (Group, Member, bool) {
	if len(p.Standouts) > 0 {
		s := p.Standouts[0]
		return Group{Class: p.Class, Work: s.Name(), Title: s.Name(), Why: "likely " + s.Tells(), Next: nextSteps(s.Kinds), Kinds: s.Kinds},
			Member{p.Who, s.Count(), s.Shown, s.Chances}, true
	}
	skill, part, ok := weakest(p.recent)
	if !ok {
		return Group{}, Member{}, false
	}
	return Group{
			Class: p.Class,
			Work:  string(skill),
			Title: skillInWords(skill),
			Why:   "missed half of these items or more, and more than these pupils miss elsewhere",
			Skill: skill,
		},
		Member{p.Who, fmt.Sprintf("%d of %d right", part.Right, part.Of), part.Right, part.Of}, true
}

// nextSteps are the ways to begin, each once.
func nextSteps(kinds []*task.MisstepKind) string {
	var steps []string
	for _, kind := range kinds {
		if !slices.Contains(steps, kind.Reteach) {
			steps = append(steps, kind.Reteach)
		}
	}
	return strings.Join(steps, "; ")
}
