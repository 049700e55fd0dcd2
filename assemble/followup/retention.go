package followup

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/standards"
)

// Term is what was taught in a term, what stuck, and what should come back.
type Term struct {
	Next   plan.Week // of school, in which things come back
	Taught []Taught  // in the order of teaching
	Back   []Back    // the most pressing first
}

// Taught is a skill, or the part of it that a pacing list names, with the answers since it was new.
type Taught struct {
	Skill standards.SkillID
	Where standards.Where
	Week  plan.Week // in which it was new

	When  report.Part        // answers in that very week
	After [spans]report.Part // later ones, by Spans
	Last  plan.Week          // in which it was asked for last; Week where it wasn't
}

// spans is how many spans of weeks are told apart.
const spans = 4

// spanFrom are the weeks of school after which each span begins; it lasts until the next begins.
var spanFrom = [spans]int{1, 2, 4, 8}

// Spans are the spans in words.
var Spans = [spans]string{"1 week", "2-3 weeks", "4-7 weeks", "8 weeks or more"}

// Back is something that should come back, and why.
type Back struct {
	Taught
	Why []string
}

// Calendar is what a pacing list says of weeks.
type Calendar struct {
	Return []int       // after so many weeks of school a skill is due; nil for no list
	Skip   []plan.Week // weeks without school
}

// TaughtBy is what a pacing list has taught from its first week on until a week, that one included.
func TaughtBy(p plan.Pacing, from, until plan.Week) (list []Taught) {
	most := 0
	for _, s := range p.New {
		most = max(most, s.Week)
	}
	school := plan.SchoolWeeks(from, most, p.Skip)
	for _, s := range p.New {
		if week := school[s.Week-1]; week.Compare(until) <= 0 {
			list = append(list, Taught{Skill: s.Skill, Where: s.Where, Week: week, Last: week})
		}
	}
	slices.SortStableFunc(list, func(a, b Taught) int { return a.Week.Compare(b.Week) })
	return list
}

// TaughtIn is what the quizzes asked for, each skill as new in the week in which one first did.
func TaughtIn(quizzes []results.Quiz) (list []Taught) {
	for _, quiz := range byWeek(quizzes) {
		week, err := plan.ParseWeek(quiz.Week)
		if err != nil {
			continue
		}
		for _, item := range itemsOf(quiz) {
			if !slices.ContainsFunc(list, func(t Taught) bool { return t.Skill == item.Skill }) {
				list = append(list, Taught{Skill: item.Skill, Week: week, Last: week})
			}
		}
	}
	return list
}

func byWeek(quizzes []results.Quiz) []results.Quiz {
	return slices.SortedStableFunc(slices.Values(quizzes), func(a, b results.Quiz) int { return cmp.Compare(a.Week, b.Week) })
}

// TermOf counts right answers to what was taught by how long ago it was new, in weeks of school, as they stand on the
// papers: it corrects for nothing, neither for how hard the items were nor for who was there. Next is the week
// for which it says what should come back.
func TermOf(taught []Taught, quizzes []results.Quiz, papers []results.Paper, c Calendar, next plan.Week) Term {
	t := Term{Next: next, Taught: slices.Clone(taught)}
	own := map[string]results.Quiz{}
	for _, quiz := range quizzes {
		own[quiz.ID] = quiz
	}
	for _, paper := range papers {
		quiz, ok := own[paper.Quiz]
		week, err := plan.ParseWeek(quiz.Week)
		form, has := quiz.Form(paper.Form)
		if !ok || err != nil || !has || len(form.Items) != len(paper.Answers) || week.Compare(next) >= 0 {
			continue
		}
		for i, answer := range paper.Answers {
			for k := range t.Taught {
				if answer.Counts() && t.Taught[k].is(form.Items[i]) {
					t.Taught[k].count(week, c.Skip, answer.State == results.Right)
				}
			}
		}
	}
	for _, one := range t.Taught {
		if why := one.why(c, next); len(why) > 0 {
			t.Back = append(t.Back, Back{one, why})
		}
	}
	slices.SortStableFunc(t.Back, func(a, b Back) int {
		return cmp.Or(cmp.Compare(a.pressing(), b.pressing()), a.Last.Compare(b.Last))
	})
	return t
}

// is says whether an item is of what was taught.
func (t Taught) is(item results.Item) bool {
	if item.Skill != t.Skill {
		return false
	}
	if len(t.Where) == 0 {
		return true
	}
	asked, ok := item.Task()
	return ok && t.Where.Holds(asked.Traits())
}

// count takes an answer of a week; earlier ones, from before it was taught, don't count.
func (t *Taught) count(week plan.Week, skip []plan.Week, right bool) {
	distance := plan.SchoolWeeksUntil(t.Week, week, skip)
	if distance < 0 {
		return
	}
	part := &t.When
	for i, from := range spanFrom {
		if distance >= from {
			part = &t.After[i]
		}
	}
	if part.Of++; right {
		part.Right++
	}
	if week.Compare(t.Last) > 0 {
		t.Last = week
	}
}

// Latest is the answers of the longest time after it was new, and that time in words; no answers and "" where there are
// none.
func (t Taught) Latest() (report.Part, string) {
	for i, part := range slices.Backward(t.After[:]) {
		if part.Of > 0 {
			return part, "after " + Spans[i]
		}
	}
	return t.When, "in the week it was new"
}

// longUnasked is after how many weeks of school without it a skill should be asked for again (common practice).
const longUnasked = 4

// why says why it should come back in a week.
func (t Taught) why(c Calendar, next plan.Week) (list []string) {
	if part, when := t.Latest(); part.Enough() && !part.MostlyRight() {
		list = append(list, fmt.Sprintf("%d of %d right %s", part.Right, part.Of, when))
	}
	if n := plan.SchoolWeeksUntil(t.Week, next, c.Skip); slices.Contains(c.Return, n) {
		list = append(list, fmt.Sprintf("due: new %s ago", weeksOf(n)))
	}
	if n := plan.SchoolWeeksUntil(t.Last, next, c.Skip); n > longUnasked {
		list = append(list, fmt.Sprintf("not asked for in %s", weeksOf(n)))
	}
	return list
}

// pressing orders what comes back: what was forgotten first, the least right answers before others.
func (b Back) pressing() float64 {
	if part, _ := b.Latest(); part.Enough() && !part.MostlyRight() {
		return part.Share().Value
	}
	return 1
}

func weeksOf(n int) string {
	if n == 1 {
		return "1 week"
	}
	return fmt.Sprintf("%d weeks", n)
}

// Name is what was taught, as a pacing list names it.
func (t Taught) Name() string {
	if len(t.Where) == 0 {
		return string(t.Skill)
	}
	return strings.Join([]string{string(t.Skill), t.Where.String()}, " where ")
}
