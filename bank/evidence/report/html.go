package report

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"math"
	"slices"
	"strings"
)

//go:embed page.html
var pageText string

var page = template.Must(template.New("page").Parse(pageText))

// pageData is the page as its template sees it: words and numbers, nothing to work out.
type pageData struct {
	Title, Caution, StandardsNote, Luck string
	RangeNote, Recent, ShortCaution     string
	Quizzes                             []string // the latest
	Before                              int      // how many came before
	Groups, Singles                     []Group  // of several pupils, and of one
	Others                              string
	Practice                            []string // how to print what the groups could practice with
	Skills                              []skillView
	Pupils                              []pupilView
	Standouts                           []string
	Weeks                               string
	Items                               []itemsView
	Standards                           []standardView
	Classes, OneWeek                    bool // there are several; there is only one
}

type skillView struct {
	Skill
	Bar bar
}

type pupilView struct {
	Who     string
	Words   string // of the latest week in which there are answers, named where it isn't the class's
	Earlier string // the weeks before, for those who don't see the line
	Line    *line  // over several weeks
	Bar     *bar   // of a single one, the class marked
}

type itemsView struct {
	Quiz string
	Rows []itemView
}

type itemView struct {
	Item
	Bar bar
}

type standardView struct {
	Standard
	NotYetList string
}

// WriteHTML writes the report as one page with pictures: no scripts, nothing fetched
// from elsewhere, and pupils by code only.
func (r *Report) WriteHTML(w io.Writer) error { return page.Execute(w, r.pageData()) }

func (r *Report) pageData() pageData {
	d := pageData{
		Title: r.Title(), Caution: Caution, StandardsNote: standardsNote, Luck: r.luck(),
		RangeNote: rangeNote, ShortCaution: shortCaution, Recent: r.recentInWords(),
		Others: r.list(r.Others, r.code), Classes: len(r.Classes) > 1, Weeks: weeksInWords(r.Weeks), OneWeek: len(r.Weeks) == 1,
	}
	for _, command := range r.practice() {
		d.Practice = append(d.Practice, strings.ToUpper(practiceNote[:1])+practiceNote[1:]+" "+command)
	}
	d.Before = max(0, len(r.Quizzes)-recentWeeks)
	for _, q := range r.Quizzes[d.Before:] {
		d.Quizzes = append(d.Quizzes, q.String())
	}
	for _, g := range r.Groups {
		if len(g.Members) > 1 {
			d.Groups = append(d.Groups, g)
		} else {
			d.Singles = append(d.Singles, g)
		}
	}
	for _, s := range r.Skills {
		d.Skills = append(d.Skills, skillView{s, barOf(s.Part, math.NaN())})
	}
	for _, p := range r.Pupils {
		d.Pupils = append(d.Pupils, r.pupilView(p))
	}
	d.Standouts = r.standoutLines(r.code)
	d.Items = r.itemsViews()
	for _, s := range r.Standards {
		d.Standards = append(d.Standards, standardView{s, r.list(s.NotYet, r.code)})
	}
	return d
}

func weeksInWords(weeks []string) string {
	if len(weeks) < 2 {
		return strings.Join(weeks, "")
	}
	return weeks[0] + " to " + weeks[len(weeks)-1]
}

func (r *Report) pupilView(p Pupil) pupilView {
	v := pupilView{Who: r.code(p.Who), Words: "no answers"}
	latest := r.book.own[p.Class][len(r.book.own[p.Class])-1]
	for i, week := range slices.Backward(p.Weeks) {
		switch {
		case week.Of == 0:
		case v.Words != "no answers":
			v.Earlier = fmt.Sprintf("%s %s; %s", r.Weeks[i], rightOf(week), v.Earlier)
		case r.Weeks[i] == latest:
			v.Words = week.String()
		default: // absent last time
			v.Words = r.Weeks[i] + ": " + week.String()
		}
	}
	if class := r.book.classWeeks(p.Class); len(class) == 1 {
		one := barOf(p.Weeks[0], class[0].Share().Value)
		v.Bar = &one
	} else {
		several := lineOf(p, class)
		v.Line = &several
	}
	return v
}

// itemsViews are the items of the last week by quiz.
func (r *Report) itemsViews() (list []itemsView) {
	for _, it := range r.LastItems() {
		if len(list) == 0 || list[len(list)-1].Quiz != it.Quiz {
			list = append(list, itemsView{Quiz: it.Quiz})
		}
		v := itemView{it, barOf(it.Part, it.Expected())}
		last := &list[len(list)-1]
		last.Rows = append(last.Rows, v)
	}
	return list
}
