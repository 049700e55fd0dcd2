package followup

import (
	"errors"
	"maps"
	"math"
	"slices"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// fill chooses the items of a sheet.
func (m *maker) fill(s *Sheet) (err error) {
	share := m.shareOf(m.asked(s.kinds, s.skills...))
	if s.Kind == Extension {
		s.Items, err = m.choose(s, extensionItems, min(share, max(30, share-harder)), nil)
		return err
	}
	if s.Recheck, err = m.choose(s, recheckItems, share, m.near); err != nil {
		return err
	}
	near, err := m.choose(s, halfASheet, share, m.near)
	if err != nil {
		return err
	}
	easy, err := m.choose(s, halfASheet, (share+100)/2, helping)
	if err != nil {
		return err
	}
	if len(easy)+len(near) == 0 {
		return words.Errorf("no items of %s are left that did not stand in the quiz, and no others exist", s.skills[0])
	}
	if m.shareRight(easy) < m.shareRight(near) { // the helping looks have no easier items left
		easy, near = near, easy
	}
	skill, _ := standards.Catalogue().Skill(s.skills[0])
	taken := func(t task.Task) bool { return m.prints[t.Fingerprint()] }
	if e, ok := exampleOf(skill, s.kinds, m.options.Seed, taken); ok {
		s.Example = &e
	}
	return s.trim(easy, near)
}

// trim puts the easier items before those near the quiz, fewer of both where they don't fit on two pages of
// usual print.
func (s *Sheet) trim(easy, near []bank.Item) error {
	for {
		s.Items = slices.Concat(easy, near)
		pages, err := sheet.PageCount(s.paper("en"), sheet.Options{})
		if err != nil || pages <= mostPages || len(s.Items) <= mostPages {
			return err
		}
		if len(easy) >= len(near) {
			easy = easy[:len(easy)-1]
		} else {
			near = near[1:]
		}
	}
}

// expected is how likely a typical pupil of the class gets an item of the skill right, by its difficulty for the
// skill's own grade.
func (m *maker) expected(skill standards.SkillID, d standards.Difficulty) float64 {
	if m.ability != nil {
		d = d.For(skill, standards.Difficulty(*m.ability))
	}
	return d.ShareRight()
}

// shareOf is how many in 100 answers of the class to the items are to be expected right.
func (m *maker) shareOf(items []results.Item) int {
	if len(items) == 0 {
		return plan.DefaultShareRight
	}
	sum := 0.0
	for _, item := range items {
		sum += m.expected(item.Skill, item.Difficulty)
	}
	return max(1, min(99, int(math.Round(100*sum/float64(len(items))))))
}

// shareRight is the expected share right of items, 1 of none.
func (m *maker) shareRight(items []bank.Item) float64 {
	sum := 0.0
	for _, item := range items {
		sum += m.expected(item.Skill, item.Difficulty())
	}
	return (sum + 1e-9) / (float64(len(items)) + 1e-9)
}

// mostLooks is how many looks a choice asks for, so that a sheet says seldom what else is to be done.
const mostLooks = 2

// near are the looks in which the quizzes asked for a skill most.
func (m *maker) near(skill standards.Skill, _ []*task.MisstepKind) []task.Look {
	looks := m.looks[skill.ID]
	return looks[:min(mostLooks, len(looks))]
}

// helping are looks that show how, and the usual one.
func helping(skill standards.Skill, kinds []*task.MisstepKind) []task.Look {
	var looks []task.Look
	for _, look := range append(slices.Clone(wayFor(skill, kinds).help), skill.Looks[0]) {
		if slices.Contains(skill.Looks, look) && !slices.Contains(looks, look) {
			looks = append(looks, look)
		}
	}
	return looks
}

// choosing is one choice of the assembler: so many items of the sheet's skills, which so many in 100 are expected to
// get right.
type choosing struct {
	sheet        *Sheet
	count, share int
	looks        func(standards.Skill, []*task.MisstepKind) []task.Look
}

// choose takes the items out for all that follows. Where no more items exist than fewer, and making some doesn't
// help, it chooses those, and in any look.
func (m *maker) choose(s *Sheet, count, share int, looks func(standards.Skill, []*task.MisstepKind) []task.Look) ([]bank.Item, error) {
	for c := (choosing{s, count, share, looks}); ; {
		items, err := m.telling(c)
		var impossible *assemble.ImpossibleError
		switch stuck := errors.As(err, &impossible) && !impossible.ByMaking() && m.ctx.Err() == nil; {
		case stuck && c.count > 1:
			c.count--
			continue
		case stuck && c.looks != nil:
			c.looks, c.count = nil, count
			continue
		case stuck:
			return nil, nil
		case err != nil:
			return nil, err
		}
		for _, item := range items {
			m.out[item.ID] = true
			if asked, err := task.Parse(item.Task); err == nil {
				m.prints[asked.Fingerprint()] = true
			}
		}
		return items, nil
	}
}

// mostTries is how often items in which the misstep can't show are given up for others.
const mostTries = 10

// telling chooses items in which the misstep can show: in nearly all where one trait tells that, and where others
// are left anyway, it chooses again without them.
func (m *maker) telling(c choosing) (best []bank.Item, err error) {
	without, dud := maps.Clone(m.out), len(c.sheet.skills)*plan.MaxItems
	for range mostTries {
		items, err := m.assembled(c, without)
		switch {
		case err != nil && best != nil:
			return best, nil
		case err != nil:
			return nil, err
		}
		n := 0
		for _, item := range items {
			asked, err := task.Parse(item.Task)
			if len(c.sheet.kinds) > 0 && (err != nil || !canShow(asked, c.sheet.kinds)) {
				without[item.ID] = true
				n++
			}
		}
		if n < dud {
			best, dud = items, n
		}
		if n == 0 {
			break
		}
	}
	return best, nil
}

// assembled is a choice of the assembler; as many items as can be tell the misstep alone.
func (m *maker) assembled(c choosing, without map[string]bool) (items []bank.Item, err error) {
	s := c.sheet
	asked := plan.Plan{Title: "practice", Forms: 1, ShareRight: c.share, Diagnose: s.kinds}
	for i, id := range s.skills {
		row := plan.Row{Skill: id, Count: (c.count + len(s.skills) - 1 - i) / len(s.skills), Where: telling(id, s.kinds)}
		skill, known := standards.Catalogue().Skill(id)
		if c.looks != nil && known {
			row.Looks = c.looks(skill, s.kinds)
		}
		if row.Count > 0 {
			asked.Rows = append(asked.Rows, row)
		}
	}
	o := assemble.Options{Seed: m.options.Seed, Week: m.options.Week, Without: without, Ability: m.ability, Limit: searchFor}
	quiz, err := assemble.Assemble(m.ctx, m.bank, asked, o)
	if err != nil {
		return nil, err
	}
	for _, placed := range quiz.Forms[0].Items {
		items = append(items, placed.Item)
	}
	return items, nil
}
