package plan

import (
	"fmt"
	"slices"

	"evenhand/standards/words"
)

// Pacing says which skills are new in which week of a term, and how the weekly
// quizzes mix them with earlier ones.
type Pacing struct {
	Weekly Plan   // what every week's quiz has in common; its rows are filled in week by week
	Items  int    // in each form
	Share  int    // how many in 100 items of a week are of its new skills, when earlier ones are due
	Return []int  // after so many weeks a skill comes back
	Skip   []Week // weeks without school, in order; the weeks of the term go on behind them
	New    []NewSkill
}

// NewSkill is a skill in the week in which it is new.
type NewSkill struct {
	Week int // from 1
	Row      // its count is filled in week by week
}

// What a pacing list means when it doesn't say (common practice, no source: a
// little more than half new, and returns at growing distances).
const defaultShare = 60

var defaultReturn = []int{1, 2, 4, 8}

// MaxWeeks is how many weeks a term has at most: a school year and some.
const MaxWeeks = 60

type pacingText struct {
	commonText
	New    any       `toml:"new_share"`
	Return any       `toml:"return"`
	Skip   any       `toml:"skip"`
	Skills []newText `toml:"new"`
}

type newText struct {
	Week    any `toml:"week"`
	Skill   any `toml:"skill"`
	Where   any `toml:"where"`
	Layouts any `toml:"layouts"`
	Looks   any `toml:"looks"` // as lists called layouts before
}

// ParsePacing reads a pacing list in TOML; name is the file's name for messages.
// ExamplePacing shows all that may stand in it. Everything that is wrong is told
// together, in a *MistakesError.
func ParsePacing(text []byte, name string) (Pacing, error) {
	d := newDocument(text, name)
	var typed pacingText
	if err := d.decode(&typed); err != nil {
		return Pacing{}, err
	}
	if d.has("row") && !d.has("new") {
		return Pacing{}, words.Errorf("%s is a plan for one quiz, not a pacing list; "+
			"leave off --weeks or --pacing, or see what evenhand plan --pacing prints", name)
	}
	if !d.atMost("new", len(typed.Skills)) {
		return Pacing{}, d.err()
	}
	p := Pacing{Weekly: d.common(typed.commonText)}
	p.Items = d.whole("items", typed.Items, 0, 1, MaxItems)
	if typed.Items == nil {
		d.wrong("items", nil, "items is missing; write how many items a week's form holds, items = 10")
	}
	p.Share = d.whole("new_share", typed.New, defaultShare, 0, 100)
	p.Return = d.weeks("return", typed.Return)
	p.Skip = d.skipped("skip", typed.Skip)
	for i, s := range typed.Skills {
		p.New = append(p.New, d.newSkill(element("new", i), s))
	}
	if !slices.ContainsFunc(p.New, func(s NewSkill) bool { return s.Week == 1 }) {
		d.wrong("new", nil, "no skill is new in week 1, so its quiz would be empty; begin with a [[new]] with week = 1")
	}
	p.Weekly.Bands = d.bands(typed.Bands, max(p.Items, 1))
	return p, d.err()
}

// weeks reads a list of distances in weeks, each longer than the one before.
func (d *document) weeks(path string, value any) []int {
	if value == nil {
		return defaultReturn
	}
	list, ok := value.([]any)
	if !ok {
		d.wrong(path, nil, "%s is a list of weeks in brackets, such as [1, 2, 4, 8], not %s", path, d.read(path))
		return defaultReturn
	}
	var weeks []int
	for i, v := range list {
		n := d.whole(element(path, i), v, 1, 1, MaxWeeks)
		if len(weeks) > 0 && n <= weeks[len(weeks)-1] {
			d.wrong(element(path, i), nil, "the weeks grow from one to the next; %d doesn't", n)
		}
		weeks = append(weeks, n)
	}
	return weeks
}

// skipped reads a list of weeks without school.
func (d *document) skipped(path string, value any) (weeks []Week) {
	for i, text := range d.texts(path, value) {
		week, err := ParseWeek(text)
		if err != nil {
			d.wrong(element(path, i), nil, "%v", err)
			continue
		}
		weeks = append(weeks, week)
	}
	slices.SortFunc(weeks, Week.Compare)
	return slices.Compact(weeks)
}

func (d *document) newSkill(path string, typed newText) NewSkill {
	s := NewSkill{
		Week: d.whole(path+".week", typed.Week, 0, 1, MaxWeeks),
		Row: Row{
			Skill: d.skill(path+".skill", typed.Skill),
			Where: d.where(path+".where", typed.Where),
			Looks: d.looks(path, rowText{Skill: typed.Skill, Layouts: typed.Layouts, Looks: typed.Looks}),
		},
	}
	if typed.Week == nil {
		d.wrongKey(path+".week", nil, "the skill has no week; write in which week it is new, week = 1")
	}
	return s
}

// Plans gives the plan of each week. New skills take Share in 100 of the items
// and earlier ones that are due the rest; when there are none of one kind, the
// other takes all. A skill is due after each of the weeks in Return; one that
// finds no room stays due. When nothing is new or due, the skills that were not
// asked for longest return.
func (p Pacing) Plans(weeks int) []Plan {
	plans := make([]Plan, weeks)
	waiting := map[int]int{} // skills that are due, by number, since which week
	asked := map[int]int{}   // when each was asked last
	for w := range plans {
		week := w + 1
		fresh, due := p.fresh(week), p.due(week, waiting)
		if len(fresh)+len(due) == 0 {
			due = p.longestAgo(week, asked)
		}
		newItems := p.newItems(len(fresh), len(due))
		plans[w] = p.Weekly
		plans[w].Title = fmt.Sprintf("%s, week %d", p.Weekly.Title, week)
		for _, share := range []struct{ skills, items []int }{
			{fresh, deal(newItems, len(fresh))}, {due, deal(p.Items-newItems, len(due))},
		} {
			for i, s := range share.skills {
				if share.items[i] == 0 {
					continue
				}
				row := p.New[s].Row
				row.Count = share.items[i]
				plans[w].Rows = append(plans[w].Rows, row)
				asked[s] = week
				delete(waiting, s)
			}
		}
	}
	return plans
}

// fresh lists the skills that are new in a week.
func (p Pacing) fresh(week int) (skills []int) {
	for i, s := range p.New {
		if s.Week == week {
			skills = append(skills, i)
		}
	}
	return skills
}

// due lists the earlier skills that come back in a week, those that wait longest
// first.
func (p Pacing) due(week int, waiting map[int]int) (skills []int) {
	for i, s := range p.New {
		if _, waits := waiting[i]; !waits && slices.Contains(p.Return, week-s.Week) {
			waiting[i] = week
		}
		if waiting[i] > 0 {
			skills = append(skills, i)
		}
	}
	slices.SortStableFunc(skills, func(a, b int) int { return waiting[a] - waiting[b] })
	return skills
}

// longestAgo lists the skills begun before the week, those first that were not
// asked for longest.
func (p Pacing) longestAgo(week int, asked map[int]int) (skills []int) {
	for i, s := range p.New {
		if s.Week < week {
			skills = append(skills, i)
		}
	}
	slices.SortStableFunc(skills, func(a, b int) int { return asked[a] - asked[b] })
	return skills
}

// newItems is how many of a week's items go to its new skills.
func (p Pacing) newItems(fresh, due int) int {
	switch {
	case fresh == 0:
		return 0
	case due == 0:
		return p.Items
	}
	return (p.Items*p.Share + 50) / 100
}

// deal shares items out evenly, the first getting one more where they must.
func deal(items, among int) []int {
	hand := make([]int, among)
	for i := range hand {
		hand[i] = items / among
		if i < items%among {
			hand[i]++
		}
	}
	return hand
}
