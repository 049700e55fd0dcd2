package desk

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/generate"
	"evenhand/bank/results"
	"evenhand/standards"
)

// searchFor is how long a quiz is searched for before the best so far is taken.
const searchFor = 10 * time.Second

// quizzes lists the quizzes that were made, the latest first.
func quizzes(v *visit) error {
	list, err := v.desk.bank.Quizzes()
	if err != nil {
		return err
	}
	slices.Reverse(list)
	return v.show("quizzes", struct{ Quizzes []bank.Quiz }{list})
}

// quizAsked is the quiz that the address names.
func (v *visit) quizAsked() (bank.Quiz, error) {
	q, err := v.desk.bank.Quiz(v.PathValue("id"))
	if err != nil {
		return q, v.noQuiz(err)
	}
	return q, nil
}

// satAsked is the quiz that the address names, itself or by one of its make-up forms, and behind it these.
func (v *visit) satAsked() ([]bank.Quiz, error) {
	sat, err := v.desk.bank.WithMakeUps(v.PathValue("id"))
	if err != nil {
		return nil, v.noQuiz(err)
	}
	return sat, nil
}

func (v *visit) noQuiz(err error) error {
	now, found, lost := v.desk.bank.Instead(v.PathValue("id"))
	if lost != nil {
		return lost
	}
	if found && v.Method == http.MethodGet {
		return &fault{status: http.StatusSeeOther, link: strings.Replace(v.URL.Path, v.PathValue("id"), now.ID, 1)}
	}
	if found {
		return &fault{status: http.StatusSeeOther, link: "/quizzes/" + now.ID + "?changed"}
	}
	return &fault{status: http.StatusNotFound, text: v.said.say("quiz.nothing"), err: err}
}

// placed is a place of the quiz with the drawing of each form's item.
type placed struct {
	Number int
	Items  []placedItem
}

type placedItem struct {
	shown
	Place string // such as A3
}

// quiz shows the forms side by side.
func quiz(v *visit) error {
	q, err := v.quizAsked()
	if err != nil {
		return err
	}
	var places []placed
	for i := range q.Forms[0].Items {
		place := placed{Number: i + 1}
		for _, form := range q.Forms {
			if i < len(form.Items) {
				place.Items = append(place.Items, placedItem{v.draw(form.Items[i].Item), fmt.Sprint(form.Name, i+1)})
			}
		}
		places = append(places, place)
	}
	marked, pupils := 0, []string(nil)
	err = v.readMarks(func(s *results.Store) (err error) {
		if marked, err = v.markedIn(s, q); err == nil && v.who.Marks {
			pupils, err = v.pupilsOf(s, q)
		}
		return err
	})
	if err != nil {
		return err
	}
	searched := assemble.QuizOf(q)
	lacking, err := lackingIn(searched, v.said.Lang)
	if err != nil {
		return err
	}
	return v.show("quiz", struct {
		bank.Quiz
		Places   []placed
		Apart    string
		Marked   int
		Searched assemble.Quiz
		Pupils   string // codes of its class, for those who may see them
		Lacking  string // characters that the printing font lacks
		Filled   bool   // items were made for what was just changed
		Changed  bool   // what was just pressed was for this quiz as it was before it changed
	}{q, places, apart(searched), marked, searched, strings.Join(pupils, ", "), lacking, v.Form.Has("filled"), v.Form.Has("changed")})
}

// lackingIn are the characters of a quiz's sheets that the printing font lacks; question marks stand there.
func lackingIn(q assemble.Quiz, lang string) (string, error) {
	var lacking []rune
	for _, form := range q.Forms {
		missing, err := sheet.Unprintable(sheet.PaperOf(q, form, lang), sheet.Options{Lang: lang})
		if err != nil {
			return "", err
		}
		lacking = append(lacking, missing...)
	}
	slices.Sort(lacking)
	return string(slices.Compact(lacking)), nil
}

// markedIn counts the papers of the quiz that are marked.
func (v *visit) markedIn(s *results.Store, q bank.Quiz) (int, error) {
	papers, err := v.papersOf(s, q)
	if q.MakeUp != "" {
		papers = slices.DeleteFunc(papers, func(p results.Paper) bool { return !isOf(p, q) })
	}
	return len(papers), err
}

// papersOf are the papers that are kept for a quiz; those of a make-up form stand among those of its quiz.
func (v *visit) papersOf(s *results.Store, q bank.Quiz) ([]results.Paper, error) {
	if q.MakeUp != "" {
		var err error
		if q, err = v.desk.bank.Quiz(q.MakeUp); err != nil {
			return nil, err
		}
	}
	return s.Papers(results.QuizOf(q).ID)
}

// isOf says that a paper is one of the quiz's own forms.
func isOf(p results.Paper, q bank.Quiz) bool {
	return slices.ContainsFunc(q.Forms, func(f bank.QuizForm) bool { return f.Name == p.Form })
}

// pupilsOf are the pupils whom a quiz is for: those of its class, and for a make-up form those who were absent.
func (v *visit) pupilsOf(s *results.Store, q bank.Quiz) ([]string, error) {
	if q.MakeUp == "" {
		return s.Pupils(q.Class)
	}
	papers, err := v.papersOf(s, q)
	var absent []string
	for _, p := range papers {
		if _, answered := p.Score(); (q.Class == "" || p.Class == q.Class) && (answered == 0 || isOf(p, q)) {
			absent = append(absent, p.Pupil)
		}
	}
	return absent, err
}

// readMarks reads the pupils' results; without any, nothing is read.
func (v *visit) readMarks(read func(*results.Store) error) error {
	s, err := results.Open(results.Path(v.desk.bank.Path()), bank.Options{ReadOnly: true})
	if errors.Is(err, results.ErrNone) {
		return nil
	}
	if err != nil {
		return err
	}
	return errors.Join(read(s), s.Close())
}

// aimed are the options for a quiz of the plan in the week, aimed at the plan's class.
func (v *visit) aimed(p plan.Plan, week string) (assemble.Options, error) {
	o := assemble.Options{Seed: 1, Week: week, Limit: searchFor}
	if p.Class == "" {
		return o, nil
	}
	err := v.readMarks(func(s *results.Store) error {
		quizzes, papers, err := s.All()
		if err == nil {
			o.Ability, _, err = calibration.AimAt(p.Class, p.ShareRight, quizzes, papers, v.desk.bank)
		}
		return err
	})
	return o, err
}

// pressedTwice is within what time the same form sent again is a button that was pressed twice.
const pressedTwice = time.Minute

// makeQuiz makes the quiz of a plan, keeps both and shows it. With fill, missing items are made.
func (v *visit) makeQuiz(page planPage, fill bool) error {
	p, err := v.parsed(page.Form)
	if err != nil {
		return v.showPlan(page)
	}
	text, err := page.Form.text()
	if err != nil {
		return err
	}
	if there, err := v.desk.bank.Quiz(p.TitleFor(page.Week) + " (" + page.Week + ")"); err == nil {
		if there.Plan == text && there.By == v.by() && v.now().Sub(there.At) < pressedTwice {
			return v.to("/quizzes/" + there.ID)
		}
		page.Verdict = v.said.say("quiz.there", v.said.QuizName(there))
		return v.showPlan(page)
	}
	q, err := v.assemble(p, page.Week, fill, nil)
	if err != nil {
		v.explain(&page, p, err)
		return v.showPlan(page)
	}
	given := sheet.WithChoices(q).Given(v.by(), v.now())
	given.Plan, given.Class = text, p.Class
	if there, err := v.desk.bank.Quiz(given.ID); err == nil { // a quiz is its week and its items, whatever its title
		page.Verdict = v.said.say("quiz.same", v.said.QuizName(there))
		return v.showPlan(page)
	}
	if err := v.desk.bank.KeepQuiz(given); err != nil {
		return err
	}
	if page.Name == "" {
		page.Name = page.Form.Title
	}
	// The quiz has its plan. One that somebody else has saved under the name meanwhile stays.
	if _, err := v.savePlan(page.Seen, bank.Plan{Name: page.Name, Text: text}); err != nil && !errors.As(err, new(*bank.PlanOvertakenError)) {
		return err
	}
	return v.to("/quizzes/" + given.ID)
}

// assemble makes a quiz for a plan in a week; with fill it makes the items that are missing.
func (v *visit) assemble(p plan.Plan, week string, fill bool, amend func(*assemble.Options)) (assemble.Quiz, error) {
	o, err := v.aimed(p, week)
	if err != nil {
		return assemble.Quiz{}, err
	}
	if amend != nil {
		amend(&o)
	}
	var quiz assemble.Quiz
	err = v.inTurn(func(ctx context.Context) (err error) {
		if fill {
			quiz, err = assemble.Filling{Bank: v.desk.bank, By: v.by(), At: v.now()}.Assemble(ctx, p, o)
		} else {
			quiz, err = assemble.Assemble(ctx, v.desk.bank, p, o)
		}
		return err
	})
	return quiz, err
}

// ifNeeded tries; where items lack, it makes them and tries again, and says that it did.
func (v *visit) ifNeeded(try func() error) (filled bool, err error) {
	filling := assemble.Filling{
		Bank: v.desk.bank, By: v.by(), At: v.now(),
		Made: func(standards.SkillID, generate.Result) { filled = true },
	}
	err = filling.Try(1, try)
	return filled, err
}

// unsatQuiz is the quiz that the address names, of which no paper is marked.
func (v *visit) unsatQuiz() (bank.Quiz, error) {
	q, err := v.quizAsked()
	if err != nil {
		return q, err
	}
	marked := 0
	err = v.readMarks(func(s *results.Store) (err error) {
		marked, err = v.markedIn(s, q)
		return err
	})
	if err == nil && marked > 0 {
		err = v.wrong("quiz.sat")
	}
	return q, err
}
