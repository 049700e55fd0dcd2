package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"evenhand/bank/results"
)

// Report is what is shown of some quizzes. Make it with Of.
type Report struct {
	Names map[string]string // of pupils by code, for a terminal only; may be nil

	Quizzes   []Quiz // by week
	Weeks     []string
	Classes   []string
	Skills    []Skill
	Groups    []Group
	Others    []Who // in no group: no pattern so far, or too few answers to tell
	Pupils    []Pupil
	Items     []Item
	Standards []Standard

	book *book
}

// Who is a pupil.
type Who struct{ Class, Code string }

func (a Who) compare(b Who) int {
	return cmp.Or(cmp.Compare(a.Class, b.Class), cmp.Compare(a.Code, b.Code))
}

// Of makes a report of papers of the quizzes; other papers are left out.
func Of(quizzes []results.Quiz, papers []results.Paper) *Report {
	b := newBook(quizzes, papers)
	r := &Report{book: b, Weeks: b.weeks, Classes: b.classes}
	r.Quizzes = b.summaries()
	r.Skills = b.skills()
	r.Pupils = b.pupils()
	r.Groups, r.Others = b.together(r.Pupils)
	r.Items = b.items()
	r.Standards = b.standards()
	return r
}

// Title names what is reported, in a few words.
func (r *Report) Title() string { return r.TitleIn("en") }

// TitleIn is the same in a language ("en" or "es"; any other reads as "en").
func (r *Report) TitleIn(lang string) string {
	none, several := "No quizzes", "%d quizzes, %s to %s"
	if lang == "es" {
		none, several = "Ninguna prueba", "%d pruebas, %s a %s"
	}
	switch n := len(r.Quizzes); n {
	case 0:
		return none
	case 1:
		return r.Quizzes[0].Name()
	default:
		return fmt.Sprintf(several, n, r.Weeks[0], r.LastWeek())
	}
}

// LastWeek is the latest week reported.
func (r *Report) LastWeek() string {
	if len(r.Weeks) == 0 {
		return ""
	}
	return r.Weeks[len(r.Weeks)-1]
}

// who is a pupil as a terminal shows it: the class where there are several, the code,
// and the name where a roster gave it.
func (r *Report) who(p Who) string {
	return strings.TrimSpace(r.code(p) + " " + r.Names[p.Code])
}

// code is a pupil without a name.
func (r *Report) code(p Who) string {
	if len(r.Classes) > 1 {
		return strings.TrimSpace(p.Class + " " + p.Code)
	}
	return p.Code
}

func (r *Report) list(pupils []Who, name func(Who) string) string {
	texts := make([]string, len(pupils))
	for i, p := range pupils {
		texts[i] = name(p)
	}
	return strings.Join(texts, ", ")
}

// book is the papers in order, each beside its form.
type book struct {
	quizzes   []results.Quiz
	papers    []sat
	weeks     []string
	classes   []string
	own       map[string][]string // the weeks of each class
	questions map[[3]string]*question
	shares    map[[2]string]Part // right answers by class and item
}

// sat is a paper with what was asked.
type sat struct {
	results.Paper
	quiz *results.Quiz
	form results.Form
	who  Who
}

func newBook(quizzes []results.Quiz, papers []results.Paper) *book {
	b := &book{own: map[string][]string{}, questions: map[[3]string]*question{}, shares: map[[2]string]Part{}}
	own := map[string][]results.Paper{}
	for _, p := range papers {
		own[p.Quiz] = append(own[p.Quiz], p)
	}
	for _, quiz := range quizzes { // a quiz that only other classes sat says nothing here
		if len(own[quiz.ID]) > 0 {
			b.quizzes = append(b.quizzes, quiz)
		}
	}
	slices.SortStableFunc(b.quizzes, func(a, b results.Quiz) int { return cmp.Compare(a.Week, b.Week) })
	for i := range b.quizzes {
		quiz := &b.quizzes[i]
		b.weeks = append(b.weeks, quiz.Week)
		for _, p := range own[quiz.ID] {
			if form, ok := quiz.Form(p.Form); ok && len(p.Answers) == len(form.Items) {
				b.papers = append(b.papers, sat{p, quiz, form, Who{p.Class, p.Pupil}})
				b.classes = append(b.classes, p.Class)
				if weeks := b.own[p.Class]; !slices.Contains(weeks, quiz.Week) {
					b.own[p.Class] = append(weeks, quiz.Week)
				}
			}
		}
	}
	slices.Sort(b.classes)
	b.classes, b.weeks = slices.Compact(b.classes), slices.Compact(b.weeks)
	return b
}

// recentWeeks is how many of a class's own weeks with a quiz, the last one included, this
// week's groups look at: what was missed longer ago has most likely been taught again
// (common practice).
const recentWeeks = 3

// recentOf are those weeks of a class.
func (b *book) recentOf(class string) []string {
	return b.own[class][max(0, len(b.own[class])-recentWeeks):]
}

// RecentWeeks are the weeks of a class that the groups look at.
func (r *Report) RecentWeeks(class string) []string { return r.book.recentOf(class) }

// recent says whether a paper is from the last weeks of its class.
func (b *book) recent(p sat) bool { return slices.Contains(b.recentOf(p.Class), p.quiz.Week) }

// recentInWords says from which weeks the groups come.
func (r *Report) recentInWords() string {
	var texts []string
	for _, class := range r.Classes {
		text := strings.Join(r.book.recentOf(class), ", ")
		if len(r.Classes) > 1 {
			text = strings.TrimSpace(class + " " + text)
		}
		texts = append(texts, text)
	}
	return "From the last quizzes of the class: " + strings.Join(texts, "; ") + "."
}

// place is an item's place: week and "A3".
func place(p sat, i int) string { return fmt.Sprintf("%s %s%d", p.quiz.Week, p.form.Name, i+1) }

// where lists places for people: "A1, A3", or where there are several weeks
// "2026-W47 A1, A3; 2026-W48 A2".
func (b *book) where(places []string) string {
	text, before := "", ""
	for _, place := range places {
		week, spot, _ := strings.Cut(place, " ")
		switch {
		case week == before:
			text += ", " + spot
		case len(b.weeks) == 1:
			text = spot
		case before == "":
			text = place
		default:
			text += "; " + place
		}
		before = week
	}
	return text
}
