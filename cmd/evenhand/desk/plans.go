package desk

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
)

// plans lists the team's plans.
func plans(v *visit) error {
	list, err := v.desk.bank.Plans()
	if err != nil {
		return err
	}
	var page struct{ Plans, Terms []bank.Plan }
	for _, p := range list {
		if p.Pacing {
			page.Terms = append(page.Terms, p)
		} else {
			page.Plans = append(page.Plans, p)
		}
	}
	return v.show("plans", page)
}

// planPage is all that the page of a plan shows.
type planPage struct {
	Name    string // under which it is kept; empty for a new one
	Form    planForm
	Week    string
	Offered []offer
	Mistake string // what is wrong with the plan as typed
	Verdict string // whether it can be met
	Met     bool   // it can
	Fill    bool   // making items would help
	Rest    bool   // but not with all that is in the way
	Saved   bool
	begun
	unmet
}

// unmet is what of a plan can't be kept together, and the ways out.
type unmet struct {
	Plan      plan.Plan
	Clashes   []assemble.Clash
	FirstWays bool // the first way of each is enough
	CutShort  bool // there may be more
	InPlan    bool // the plan can be changed here
}

// unmetBy is why an attempt at a quiz of the plan failed: what can't be kept together, or what is said of it.
func (v *visit) unmetBy(p plan.Plan, err error) (why unmet, said string) {
	var impossible *assemble.ImpossibleError
	switch {
	case errors.As(err, &impossible) && len(impossible.Clashes) > 0:
		return unmet{p, impossible.Clashes, impossible.FirstWays(), impossible.CutShort, false}, ""
	case errors.As(err, &impossible):
		return unmet{}, v.said.say("plan.notime")
	}
	return unmet{}, v.said.Tell(err)
}

// notMade is the fault that a quiz was not changed or made, with the reason and the way back; what could be
// changed in its plan is not told, as that is not for here.
func (v *visit) notMade(key string, p plan.Plan, err error, link string) error {
	why, said := v.unmetBy(p, err)
	for i := range why.Clashes {
		why.Clashes[i].Ways, why.Clashes[i].Generate = nil, nil
	}
	why.FirstWays, why.InPlan = false, false
	text := strings.TrimSpace(v.said.say(key) + " " + said)
	return &fault{status: http.StatusConflict, text: text, link: link, unmet: why, err: err}
}

// explain puts on the page why no quiz was made.
func (v *visit) explain(page *planPage, p plan.Plan, err error) {
	page.unmet, page.Verdict = v.unmetBy(p, err)
	var impossible *assemble.ImpossibleError
	if errors.As(err, &impossible) {
		page.Fill, page.Rest, page.InPlan = len(impossible.Generate) > 0, !impossible.ByMaking(), true
	}
}

// Title is what the quiz would be called.
func (p planPage) Title() string {
	return plan.Plan{Title: p.Form.Title + p.Form.Ending}.TitleFor(p.Week)
}

// Way is what the button of a way out sends; empty where the way is told in words alone.
func (p planPage) Way(w assemble.Way) string {
	if w.Change == assemble.ChangeOther {
		return ""
	}
	return fmt.Sprintf("way:%d.%d.%d.%s", w.Change, w.Row, w.To, w.Grade)
}

// goWay changes the form as the button of a way out says.
func (f *planForm) goWay(sent string) {
	var change assemble.Change
	var row, to int
	sent, grade := sent[:max(0, strings.LastIndex(sent, "."))], sent[strings.LastIndex(sent, ".")+1:]
	if n, err := fmt.Sscanf(sent, "%d.%d.%d", &change, &row, &to); n != 3 || err != nil {
		return
	}
	if grade != "" {
		f.More = fmt.Sprintf("grade = %q\n", grade) + f.More
	}
	switch change {
	case assemble.ChangeMinutes:
		f.Minutes = to
	case assemble.ChangeForms:
		f.Forms = to
	case assemble.ChangeRest:
		f.Rest = to
	case assemble.ChangeCount:
		for i := range f.Rows {
			if f.Rows[i].Skill == "" {
				continue // no row of the plan
			}
			if row == 0 && to == 0 {
				f.Rows = slices.Delete(f.Rows, i, i+1)
				return
			}
			if row == 0 {
				f.Rows[i].Count = to
				return
			}
			row--
		}
	}
}

// offer is how many of the bank's items may fill a row.
type offer struct {
	Skill        string
	Count, Found int
}

// Lacks says that items are missing for what the form asks.
func (p planPage) Lacks() bool {
	return p.Fill || slices.ContainsFunc(p.Offered, func(o offer) bool { return o.Found < o.Count })
}

// newPlan shows an empty plan, or another one's text to start from.
func newPlan(v *visit) error {
	page := planPage{Form: newPlanForm(v.said), Week: v.week()}
	if from := v.FormValue("from"); from != "" {
		saved, err := v.desk.bank.Plan(from)
		if err != nil {
			return v.missing("plan.nothing")
		}
		if page.Form, err = readPlanForm(saved.Text); err != nil {
			return err
		}
		page.Seen = seen(saved)
	}
	if _, err := v.desk.bank.Quiz(page.Title() + " (" + page.Week + ")"); err == nil { // there is this week's already
		if week, err := plan.ParseWeek(page.Week); err == nil {
			page.Week = week.Add(1).String()
		}
	}
	return v.showPlan(page)
}

// keptPlan shows a plan that is kept.
func keptPlan(v *visit) error {
	saved, err := v.desk.bank.Plan(v.PathValue("name"))
	if err != nil {
		return v.missing("plan.nothing")
	}
	f, err := readPlanForm(saved.Text)
	if err != nil {
		return err
	}
	return v.showPlan(planPage{Name: saved.Name, begun: begun{Seen: seen(saved)}, Form: f, Saved: v.URL.Query().Has("saved")})
}

// typedPlan shows how a plan stands as far as it is typed.
func typedPlan(v *visit) error {
	return v.showPlan(planPage{Name: v.PathValue("name"), Form: v.desk.pages.planFormOf(v.URL.Query())})
}

// showPlan fills in what follows from the form.
func (v *visit) showPlan(page planPage) error {
	if page.Week == "" {
		page.Week = v.week()
	}
	if !slices.ContainsFunc(page.Form.Rows, func(r rowForm) bool { return r.Skill != "" }) && v.FormValue("do") == "" {
		return v.show("plan", page) // nothing is chosen yet
	}
	p, err := v.parsed(page.Form)
	if err != nil {
		page.Mistake = v.said.mistakes(err)
		return v.show("plan", page)
	}
	counts, err := assemble.Offered(v.desk.bank, p, page.Week)
	if err != nil {
		page.Mistake = v.said.Tell(err)
		return v.show("plan", page)
	}
	for i, row := range p.Rows {
		page.Offered = append(page.Offered, offer{v.said.rowName(row), row.Count * p.Forms, counts[i]})
	}
	return v.show("plan", page)
}

// week is the week that the form says, else this one.
func (v *visit) week() string {
	if week, err := plan.ParseWeek(v.FormValue("week")); err == nil {
		return week.String()
	}
	return plan.WeekOf(v.desk.o.Now()).String()
}

// parsed reads the form as a plan.
func (v *visit) parsed(f planForm) (plan.Plan, error) {
	text, err := f.text()
	if err != nil {
		return plan.Plan{}, err
	}
	return plan.Parse([]byte(text), v.said.say("plan.title"))
}

// mistakesInText are what is wrong with a text, each with its line and what stands there.
func (s sentences) mistakesInText(err error) (list []string) {
	var all *plan.MistakesError
	if !errors.As(err, &all) {
		return []string{s.Tell(err)}
	}
	for _, m := range all.Mistakes {
		list = append(list, s.say("plan.mistake", m.Line, strings.TrimSpace(m.Excerpt), s.Told(m.Message)))
	}
	return list
}

// inForm says the keys of a plan as the form names its fields.
func (s sentences) inForm() sentences {
	s.instead = map[string]string{}
	for key, label := range map[string]string{
		"title": "plan.quiztitle", "forms": "plan.forms", "minutes": "plan.minutes", "share_right": "plan.share", "rest": "plan.rest",
		"class": "plan.class", "count": "plan.count",
	} {
		s.instead[key] = "“" + s.say(label) + "”"
		if s.Lang == "es" {
			s.instead[key] = "«" + s.say(label) + "»"
		}
	}
	return s
}

// mistakes are what is wrong with the form as a plan. It has no lines: only what was read and what would be right.
func (s sentences) mistakes(err error) string {
	var all *plan.MistakesError
	if !errors.As(err, &all) {
		return s.Tell(err)
	}
	form, said := s.inForm(), []string(nil)
	for _, m := range all.Mistakes {
		said = append(said, form.Told(m.Message))
	}
	return strings.Join(said, "; ")
}

// sentPlan does what a button of the page asks: add or drop a row, try, keep the plan, or make the
// quiz.
func sentPlan(v *visit) error {
	page := planPage{Name: strings.TrimSpace(v.FormValue("name")), begun: begun{Seen: v.FormValue("seen")},
		Form: v.desk.pages.planFormOf(v.PostForm), Week: v.week()}
	action, at, _ := strings.Cut(v.FormValue("do"), ":")
	switch action {
	case "add":
		page.Form.Rows = append(page.Form.Rows, rowForm{Count: 2})
		return v.showPlan(page)
	case "drop":
		if n, err := strconv.Atoi(at); err == nil && n >= 0 && n < len(page.Form.Rows) {
			page.Form.Rows = slices.Delete(page.Form.Rows, n, n+1)
		}
		return v.showPlan(page)
	case "keep":
		return v.keepPlan(page)
	case "way":
		page.Form.goWay(at)
		return v.tryPlan(page)
	case "make", "fill":
		return v.makeQuiz(page, action == "fill")
	}
	return v.tryPlan(page)
}

// keepPlan keeps the plan under its name.
func (v *visit) keepPlan(page planPage) error {
	text, err := page.Form.text()
	if err != nil {
		return err
	}
	if page.Name == "" {
		page.Name = page.Form.Title
	}
	if _, err := v.parsed(page.Form); err != nil {
		return v.showPlan(page)
	}
	kept, err := v.savePlan(page.Seen, bank.Plan{Name: page.Name, Text: text})
	if page.overtaken(err) {
		v.w.WriteHeader(http.StatusConflict)
		return v.showPlan(page)
	}
	if err != nil {
		return asTyped(err)
	}
	return v.to("/plans/" + url.PathEscape(kept.Name) + "?saved")
}

// tryPlan finds out whether the plan can be met, and what would help if not.
func (v *visit) tryPlan(page planPage) error {
	p, err := v.parsed(page.Form)
	if err != nil {
		return v.showPlan(page)
	}
	quiz, err := v.assemble(p, page.Week, false, nil)
	if err != nil {
		v.explain(&page, p, err)
	} else {
		page.Verdict, page.Met = v.said.say("plan.canbe", apart(quiz)), true
	}
	return v.showPlan(page)
}

// apart is how far the forms of a quiz lie apart at the most, in points.
func apart(quiz assemble.Quiz) string {
	most := 0
	for t := range quiz.Forms[0].Scores {
		low, high := quiz.Forms[0].Scores[t], quiz.Forms[0].Scores[t]
		for _, form := range quiz.Forms {
			low, high = min(low, form.Scores[t]), max(high, form.Scores[t])
		}
		most = max(most, high-low)
	}
	return points(most)
}
