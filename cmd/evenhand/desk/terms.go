package desk

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/bank"
)

// termPage is a term by weeks on one page: what is new in each, what comes back, and its quiz.
type termPage struct {
	Name    string // of the pacing list; empty for a new one
	Text    string
	Problem []string // what is wrong with the text
	Saved   bool
	begun
	Items int
	Weeks []termWeek
}

// termWeek is a week of it.
type termWeek struct {
	Number  int
	Dates   string
	Today   bool
	New     []termRow
	Again   []termRow
	Quizzes []bank.Quiz // given for this week of the list
}

// termRow is a skill with how many items of each form ask it.
type termRow struct {
	Name  string
	Count int
}

// newTerm shows the example of a pacing list to begin with.
func newTerm(v *visit) error { return v.show("term", termPage{Text: plan.ExamplePacing()}) }

// term shows a pacing list that is kept.
func term(v *visit) error {
	saved, err := v.desk.bank.Plan(v.PathValue("name"))
	if err != nil || !saved.Pacing {
		return v.missing("plan.nothing")
	}
	return v.showTerm(termPage{Name: saved.Name, begun: begun{Seen: seen(saved)}, Text: saved.Text, Saved: v.URL.Query().Has("saved")})
}

// keepTerm keeps a pacing list as it is typed.
func keepTerm(v *visit) error {
	text := strings.ReplaceAll(v.FormValue("text"), "\r\n", "\n")
	page := termPage{Name: strings.TrimSpace(v.FormValue("name")), begun: begun{Seen: v.FormValue("seen")}, Text: text}
	pacing, err := plan.ParsePacing([]byte(page.Text), v.said.say("term.title"))
	if err != nil {
		v.w.WriteHeader(http.StatusBadRequest)
		return v.showTerm(page)
	}
	if page.Name == "" {
		page.Name = pacing.Weekly.Title
	}
	kept, err := v.savePlan(page.Seen, bank.Plan{Name: page.Name, Pacing: true, Text: page.Text})
	if page.overtaken(err) {
		v.w.WriteHeader(http.StatusConflict)
		return v.showTerm(page)
	}
	if err != nil {
		return asTyped(err)
	}
	return v.to("/terms/" + url.PathEscape(kept.Name) + "?saved")
}

// showTerm fills in the weeks. They begin where the list's first quiz was given, else in this week.
func (v *visit) showTerm(page termPage) error {
	pacing, err := plan.ParsePacing([]byte(page.Text), v.said.say("term.title"))
	if err != nil {
		page.Problem = v.said.mistakesInText(err)
		return v.show("term", page)
	}
	quizzes, err := v.desk.bank.Quizzes()
	if err != nil {
		return err
	}
	quizzes = slices.DeleteFunc(quizzes, func(q bank.Quiz) bool { return q.PacingWeek == 0 || q.Plan != page.Text })
	first := plan.WeekOf(v.desk.o.Now())
	for _, q := range quizzes {
		if week, err := plan.ParseWeek(q.Week); err == nil && q.PacingWeek == 1 {
			first = week
		}
	}
	page.Items = pacing.Items
	plans := pacing.Plans(weeksOf(pacing))
	weeks := plan.SchoolWeeks(first, len(plans), pacing.Skip)
	for i, asked := range plans {
		week := weeks[i]
		one := termWeek{Number: i + 1, Dates: v.said.Dates(week), Today: week == plan.WeekOf(v.desk.o.Now())}
		for _, row := range asked.Rows {
			told := termRow{v.said.rowName(row), row.Count}
			if slices.ContainsFunc(pacing.New, func(s plan.NewSkill) bool {
				return s.Week == i+1 && s.Skill == row.Skill && s.Where.String() == row.Where.String()
			}) {
				one.New = append(one.New, told)
			} else {
				one.Again = append(one.Again, told)
			}
		}
		for _, q := range quizzes {
			if q.PacingWeek == i+1 {
				one.Quizzes = append(one.Quizzes, q)
			}
		}
		page.Weeks = append(page.Weeks, one)
	}
	return v.show("term", page)
}

// weeksAfter is for how many weeks after its last new skill a term is shown: then all has come back at least once.
const weeksAfter = 2

func weeksOf(p plan.Pacing) int {
	last := 1
	for _, s := range p.New {
		last = max(last, s.Week)
	}
	return min(last+weeksAfter, plan.MaxWeeks)
}
