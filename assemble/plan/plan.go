package plan

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Plan is what a teacher asks of a quiz: the rules that every form must keep
// and the mark to aim at.
type Plan struct {
	Title      string
	Items      int                 // in a form, where the plan says it beside its rows; else 0
	Minutes    int                 // most working time of a form; 0 means no limit
	Forms      int                 // 1 to 6
	ShareRight int                 // 1 to 99: how many in 100 answers should be right
	Grade      string              // K, 1 or 2: the pupils it is for; empty for the highest among its rows
	Class      string              // the class it is for, such as 2A; empty for none
	Rest       int                 // an item used in the last Rest weeks stays out
	Shared     int                 // items that stand in every form and link them
	Diagnose   []*task.MisstepKind // missteps to tell apart, where that costs nothing else
	Rows       []Row
	Bands      []BandCount
	Quotas     []Quota
	Same       []standards.Condition // of items with these, every form holds as many as the others
}

// Row is one row of a plan: each form takes Count of its items from it.
type Row struct {
	Skill standards.SkillID
	Count int
	Where standards.Where
	Looks []task.Look // the looks that will do, the wished-for first; none means any
	Vary  bool        // any of the looks, by turns, and not the first that will do
}

// BandCount bounds how many items of a form lie in a band of difficulty.
type BandCount struct {
	Band            standards.Band
	AtLeast, AtMost int
}

// Quota bounds how many items of a form have the traits, whatever their row.
type Quota struct {
	Where           standards.Where
	AtLeast, AtMost int
}

// Limits on plans, wide enough for any class and small enough for any sum.
const (
	MaxItems   = 100 // in a form
	maxMinutes = 600
	maxRest    = 520 // ten years of weeks
	maxRules   = 60  // rows, and quotas, and new skills of a term: more than anybody can look over
)

// MaxForms is how many forms a quiz has at most.
const MaxForms = 6

// DefaultShareRight is the mark aimed at when a plan names none: most pupils
// succeed and there is still something to learn (common practice, no source).
const DefaultShareRight = 75

// Size is how many items a form of the plan holds.
func (p Plan) Size() int {
	n := 0
	for _, r := range p.Rows {
		n += r.Count
	}
	return n
}

// Skills lists the skills of the rows, each once, in the order of the rows.
func (p Plan) Skills() []standards.SkillID {
	var skills []standards.SkillID
	for _, r := range p.Rows {
		if !slices.Contains(skills, r.Skill) {
			skills = append(skills, r.Skill)
		}
	}
	return skills
}

// grades are the grades that a plan may name, in order.
var grades = []string{"K", "1", "2"}

// MayName says that a plan can name a grade: K, 1 or 2.
func MayName(grade string) bool { return slices.Contains(grades, grade) }

// ForGrade is the grade of the pupils whom the plan is for, 0 for kindergarten: the
// one it names, else the highest among its rows.
func (p Plan) ForGrade() int {
	if p.Grade != "" {
		return slices.Index(grades, p.Grade)
	}
	highest := 0
	for _, row := range p.Rows {
		highest = max(highest, standards.GradeOf(row.Skill))
	}
	return highest
}

// Name says which items the band counts.
func (b BandCount) Name() string { return string(b.Band) + " items" }

// Name says which items the quota counts.
func (q Quota) Name() string { return "items with " + q.Where.String() }

// Name says in a few words what the row asks for: "add-two-digit where
// regroups >= 1, shown as column".
func (r Row) Name() string {
	name := string(r.Skill)
	if len(r.Where) > 0 {
		name += " where " + r.Where.String()
	}
	if len(r.Looks) > 0 {
		looks := make([]string, len(r.Looks))
		for i, l := range r.Looks {
			looks[i] = string(l)
		}
		between := " or "
		if r.Vary {
			between = " and "
		}
		name += ", shown as " + strings.Join(looks, between)
	}
	return name
}

// TitleFor is the title of the quiz of a week: {week} in it becomes the number of
// the week, such as 48.
func (p Plan) TitleFor(week string) string {
	number := ""
	if w, err := ParseWeek(week); err == nil {
		number = fmt.Sprint(w.Number)
	}
	return strings.Join(strings.Fields(strings.ReplaceAll(p.Title, "{week}", number)), " ")
}
