package desk

import (
	"slices"
	"strings"
	"time"

	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/results"
)

// day is one of the five school days of the strip, with what falls on it.
type day struct {
	Name  string
	Date  string // in words, such as 3 December
	Today bool
	Done  bool // what falls on it is done
	Due   bool // it is not, and the day is here or past
}

// weekQuiz is a quiz in one line of the page.
type weekQuiz struct {
	bank.Quiz
	Marked int
}

// weekPage is what the first page shows.
type weekPage struct {
	Week     string
	Number   int // of the week
	Days     []day
	Quizzes  []weekQuiz // of this week
	Earlier  []weekQuiz // of the week before
	Drafts   int        // items that wait for a review
	Lists    int        // that are not brought in, or have rows left to mend
	Ready    int
	LastPlan string // to start this week's quiz from
	LastName string // what this week's quiz would be called
	Dates    string // from Monday to Friday, in words
	Demo     bool   // the demo school can be opened from here
	Rests    bool   // what papers taught counts for nothing until it is learnt again
}

// week shows what this week needs.
func week(v *visit) error {
	now := v.desk.o.Now()
	this := plan.WeekOf(now)
	counts, err := v.desk.bank.Count()
	if err != nil {
		return err
	}
	page := weekPage{Week: this.String(), Number: this.Number, Drafts: counts[bank.Draft], Ready: counts[bank.Ready], Demo: v.desk.o.DemoSchool != nil}
	if page.Quizzes, page.Earlier, err = v.quizzesAround(this); err != nil {
		return err
	}
	lists, err := v.desk.uploads.all(v.Context())
	if err != nil {
		return err
	}
	for _, one := range lists {
		if !one.Done {
			page.Lists++
		}
	}
	if page.LastPlan, err = v.lastPlan(); err != nil {
		return err
	}
	if learnt, err := v.desk.bank.KeptTable(); err == nil { // damage there keeps nobody from this page
		page.Rests = learnt.Outlived()
	}
	page.LastName = v.said.PlanName(page.LastPlan)
	monday := this.Monday()
	page.Dates = v.said.Dates(this)
	made := len(page.Quizzes) > 0
	marked := made && !slices.ContainsFunc(page.Quizzes, func(q weekQuiz) bool { return q.Marked == 0 })
	for weekday := time.Monday; weekday <= time.Friday; weekday++ {
		date := v.said.Date(monday.AddDate(0, 0, int(weekday-time.Monday)))
		d := day{Name: strings.ToLower(weekday.String()), Date: date, Today: weekday == now.Weekday()}
		came := now.Weekday() >= weekday || now.Weekday() == time.Sunday
		switch weekday {
		case time.Thursday:
			d.Done, d.Due = made, came && !made
		case time.Friday:
			d.Done, d.Due = marked, came && made && !marked
		}
		page.Days = append(page.Days, d)
	}
	return v.show("week", page)
}

// quizzesAround are the quizzes of a week and of the one before, with how many of their papers are marked.
func (v *visit) quizzesAround(this plan.Week) (now, earlier []weekQuiz, err error) {
	all, err := v.desk.bank.Quizzes()
	if err != nil {
		return nil, nil, err
	}
	for _, q := range all {
		switch q.Week {
		case this.String():
			now = append(now, weekQuiz{Quiz: q})
		case this.Add(-1).String():
			earlier = append(earlier, weekQuiz{Quiz: q})
		}
	}
	err = v.readMarks(func(s *results.Store) (err error) {
		for _, list := range [][]weekQuiz{now, earlier} {
			for i := range list {
				if list[i].Marked, err = v.markedIn(s, list[i].Quiz); err != nil {
					return err
				}
			}
		}
		return nil
	})
	return now, earlier, err
}

// lastPlan is the name of the plan that was kept last; empty without any.
func (v *visit) lastPlan() (string, error) {
	all, err := v.desk.bank.Plans()
	if err != nil {
		return "", err
	}
	all = slices.DeleteFunc(all, func(p bank.Plan) bool { return p.Pacing })
	if len(all) == 0 {
		return "", nil
	}
	return slices.MaxFunc(all, func(a, b bank.Plan) int { return a.At.Compare(b.At) }).Name, nil
}
