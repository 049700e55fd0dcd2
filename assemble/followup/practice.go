package followup

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Set is what one class practises after its quizzes.
type Set struct {
	About string             // the quizzes, in a few words
	Week  string             // ISO week in which it is practised
	Level *calibration.Level // where the class stands, at which the items are aimed; nil for the usual of the grade
	Class string
	// Sheets: one for each group, one of mixed items for those without a pattern, and one for those who need
	// none of it; the last two only where there is somebody.
	Sheets []Sheet
	Absent []string // codes of pupils with too few answers to tell

	aboutSpanish string // About in Spanish
}

// Sheet is what some pupils work on.
type Sheet struct {
	Name        string // begins the names of its files: group-1, mixed, extension
	Kind        Kind
	report.Told // what on and why, in English; in has it in other languages

	Pupils  []Pupil
	Example *sheet.Example // none on the extension
	Items   []bank.Item    // from easy to near the quiz
	Recheck []bank.Item    // three for Wednesday; none on the extension

	group  report.Group // of a sheet for a group
	kinds  []*task.MisstepKind
	skills []standards.SkillID
}

// Kind is for whom a sheet is.
type Kind string

// The kinds of sheets.
const (
	ForGroup  Kind = "group"     // pupils with one misstep or one skill to work on
	Mixed     Kind = "mixed"     // pupils who missed things without one pattern
	Extension Kind = "extension" // pupils who need none of it
)

// Pupil is a code with what was counted, in English and in Spanish.
type Pupil struct {
	Code, Count  string
	countSpanish string
}

// Options say how practice is chosen.
type Options struct {
	Week string // ISO week in which it is practised
	Seed uint64
	// Quizzes and Papers are all that is marked of the class: they tell its level, at which the items are aimed. Without
	// papers the usual of the grade counts.
	Quizzes []results.Quiz
	Papers  []results.Paper
}

// How much stands on a sheet (common practice): as many items as two pages hold, half of them easier.
const (
	halfASheet     = 4
	recheckItems   = 3
	extensionItems = 6
	mostPages      = 2
	mostSkills     = 3
	harder         = 15              // in 100, by which an extension is harder than the quiz
	searchFor      = 2 * time.Second // each search
)

// MissingError says that the bank lacks items to practise with; Make them and it has enough.
type MissingError struct {
	Sheets []string // what on
	Make   []assemble.Generate
}

func (e *MissingError) Error() string {
	var text strings.Builder
	fmt.Fprintf(&text, "the bank has too few items to practice: %s. Make the missing items (--fill does it):", strings.Join(e.Sheets, "; "))
	for _, g := range e.Make {
		fmt.Fprintf(&text, "\n      %s", g.Command())
	}
	return text.String()
}

// Unwrap lets assemble.Filling make them.
func (e *MissingError) Unwrap() error { return &assemble.ImpossibleError{Generate: e.Make} }

// Practice chooses the sheets for a class by a report about it. None of the items stood in the quizzes reported, and
// none comes twice. It reads the bank only; Items says which to note as used. The error is a
// *MissingError where the bank has too few items.
func Practice(ctx context.Context, b *bank.Bank, r *report.Report, class string, o Options) (Set, error) {
	m := &maker{ctx: ctx, bank: b, report: r, options: o, out: map[string]bool{}, prints: map[string]bool{}, looks: map[standards.SkillID][]task.Look{}}
	m.takeQuizzes()
	set := Set{About: r.Title(), aboutSpanish: r.TitleIn("es"), Week: o.Week, Class: class}
	level, err := calibration.LevelOf(class, o.Quizzes, o.Papers, b)
	switch {
	case err == nil:
		typical := level.Aim(50) // of half right the class's own level
		m.ability, set.Level = &typical, &level
	case !errors.As(err, new(calibration.NoPapersError)):
		return Set{}, err
	}
	set.Sheets, set.Absent = m.sheets(class)
	missing := &MissingError{}
	for i := range set.Sheets {
		err := m.fill(&set.Sheets[i])
		var impossible *assemble.ImpossibleError
		switch {
		case errors.As(err, &impossible) && impossible.ByMaking():
			missing.Sheets = append(missing.Sheets, set.Sheets[i].Title)
			missing.Make = append(missing.Make, impossible.Generate...)
		case err != nil:
			return Set{}, words.Errorf("practice for %q: %w", set.Sheets[i].Title, err)
		}
	}
	if len(missing.Make) > 0 {
		return Set{}, missing
	}
	return set, nil
}

// Items are the IDs of all items of a set.
func (s Set) Items() (ids []string) {
	for _, sheet := range s.Sheets {
		for _, item := range slices.Concat(sheet.Items, sheet.Recheck) {
			ids = append(ids, item.ID)
		}
	}
	return ids
}

// Use is how the bank notes that pupils have seen the items.
func (s Set) Use(at time.Time) bank.Use {
	return bank.Use{Quiz: strings.TrimSpace("Practice " + s.Class + " after " + s.About), Week: s.Week, At: at}
}

// maker chooses the sheets of a set.
type maker struct {
	ctx     context.Context
	bank    *bank.Bank
	report  *report.Report
	options Options
	out     map[string]bool // IDs that stay out: of the quizzes, and of sheets before
	prints  map[string]bool // fingerprints of the same
	looks   map[standards.SkillID][]task.Look
	ability *int // of the typical pupil of the class, in thousandths of a logit; nil for the usual of the grade
}

// takeQuizzes puts the items of the quizzes out, and notes in which looks the quizzes asked for a skill.
func (m *maker) takeQuizzes() {
	for _, quiz := range m.report.Quizzes {
		for _, item := range itemsOf(quiz.Quiz) {
			m.out[item.ID] = true
			if asked, ok := item.Task(); ok {
				m.prints[asked.Fingerprint()] = true
			}
		}
		kept, err := m.bank.Quiz(quiz.ID)
		if err != nil {
			continue // made without this bank: its looks are not known
		}
		for _, form := range kept.Forms {
			for _, placed := range form.Items {
				m.looks[placed.Item.Skill] = append(m.looks[placed.Item.Skill], placed.Item.Look)
			}
		}
	}
	for skill, looks := range m.looks {
		m.looks[skill] = oftenFirst(looks)
	}
}

// oftenFirst lists what is there, each once, the most frequent first.
func oftenFirst[T comparable](all []T) (list []T) {
	count := map[T]int{}
	for _, one := range all {
		if count[one]++; count[one] == 1 {
			list = append(list, one)
		}
	}
	slices.SortStableFunc(list, func(a, b T) int { return count[b] - count[a] })
	return list
}

// itemsOf are the items of a quiz's forms.
func itemsOf(quiz results.Quiz) (items []results.Item) {
	for _, form := range quiz.Forms {
		items = append(items, form.Items...)
	}
	return items
}

// asked are the items of the quizzes that one of the missteps can show in, or that are of one of the skills.
func (m *maker) asked(kinds []*task.MisstepKind, skills ...standards.SkillID) (items []results.Item) {
	for _, quiz := range m.report.Quizzes {
		for _, item := range itemsOf(quiz.Quiz) {
			posed, ok := item.Task()
			if slices.Contains(skills, item.Skill) || ok && len(kinds) > 0 && canShow(posed, kinds) {
				items = append(items, item)
			}
		}
	}
	return items
}

// sheets are the sheets without their items, and the pupils of whom too little is known.
func (m *maker) sheets(class string) (list []Sheet, absent []string) {
	for _, g := range m.report.Groups {
		if g.Class != class {
			continue
		}
		s := Sheet{Name: fmt.Sprintf("group-%d", len(list)+1), Kind: ForGroup, Told: g.Told, group: g, kinds: g.Kinds}
		for _, member := range g.Members {
			s.Pupils = append(s.Pupils, Pupil{member.Code, member.Count, g.CountIn("es", member)})
		}
		if s.skills = []standards.SkillID{g.Skill}; len(g.Kinds) > 0 {
			s.skills = mostAsked(m.asked(g.Kinds), mostSkills)
		}
		list = append(list, s)
	}
	mixed, ready := Sheet{Name: "mixed", Kind: Mixed}, Sheet{Name: "extension", Kind: Extension}
	mixed.Told, ready.Told = mixed.in("en"), ready.in("en")
	missed := map[standards.SkillID]int{}
	for _, p := range m.report.Pupils {
		if p.Class != class || !slices.Contains(m.report.Others, p.Who) {
			continue
		}
		all, bySkill := p.Recent()
		counted := Pupil{p.Code, report.RightIn("en", all), report.RightIn("es", all)}
		switch {
		case !all.Enough():
			absent = append(absent, p.Code)
		case all.MostlyRight():
			ready.Pupils = append(ready.Pupils, counted)
		default:
			mixed.Pupils = append(mixed.Pupils, counted)
			for skill, part := range bySkill {
				missed[skill] += part.Of - part.Right
			}
		}
	}
	if len(mixed.Pupils) > 0 {
		for skill := range missed {
			mixed.skills = append(mixed.skills, skill)
		}
		slices.SortFunc(mixed.skills, func(a, b standards.SkillID) int { return cmp.Or(missed[b]-missed[a], cmp.Compare(a, b)) })
		mixed.skills = mixed.skills[:min(mostSkills, len(mixed.skills))]
		list = append(list, mixed)
	}
	if len(ready.Pupils) > 0 {
		ready.skills = mostAsked(m.asked(nil, m.allSkills()...), extensionItems)
		list = append(list, ready)
	}
	return list, absent
}

func (m *maker) allSkills() (skills []standards.SkillID) {
	for _, s := range m.report.Skills {
		skills = append(skills, s.ID)
	}
	return skills
}

// mostAsked are the skills that most of the items are of.
func mostAsked(items []results.Item, most int) []standards.SkillID {
	var skills []standards.SkillID
	for _, item := range items {
		skills = append(skills, item.Skill)
	}
	skills = oftenFirst(skills)
	return skills[:min(most, len(skills))]
}
