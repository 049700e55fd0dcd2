package desk

import (
	"strconv"
	"strings"

	"evenhand/assemble"
	"evenhand/assemble/sheet"
	"evenhand/bank"
)

// changeQuiz puts a changed quiz in the place of this one, which nobody has sat yet: an item swapped for
// another, all chosen anew but those that are to stay, or a place moved in every form.
func changeQuiz(v *visit) error {
	q, err := v.unsatQuiz()
	if err != nil {
		return err
	}
	switch {
	case v.FormValue("up") != "":
		return v.movePlace(q, v.FormValue("up"), -1)
	case v.FormValue("down") != "":
		return v.movePlace(q, v.FormValue("down"), 1)
	case v.FormValue("others") != "" && len(v.Form["keep"]) == 0:
		return v.wrong("quiz.nopins")
	case v.FormValue("others") != "":
		return v.chooseAgain(q, "", func(e *assemble.Earlier) { e.Keep = v.Form["keep"] })
	}
	place := v.FormValue("place")
	return v.chooseAgain(q, strings.TrimLeft(place, formNames), func(e *assemble.Earlier) { e.Replace = []string{place} })
}

// formNames are the letters of forms.
const formNames = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"

// chooseAgain assembles the quiz anew with what is kept of it, and shows the place that was changed. Where the
// bank has nothing else that fits, items are made.
func (v *visit) chooseAgain(q bank.Quiz, place string, keeping func(*assemble.Earlier)) error {
	p, ok, err := assemble.PlanOf(q)
	if err != nil || !ok {
		return v.wrong("quiz.noplan")
	}
	var chosen assemble.Quiz
	filled, err := v.ifNeeded(func() (err error) {
		chosen, err = v.assemble(p, q.Week, false, func(o *assemble.Options) {
			o.Forms, o.Earlier = len(q.Forms), assemble.EarlierOf(q)
			keeping(&o.Earlier)
		})
		return err
	})
	if err != nil {
		return v.notMade("quiz.notswapped", p, err, "/quizzes/"+q.ID)
	}
	return v.putInPlace(sheet.WithChoices(chosen).Given(v.by(), v.now()), q, filled, place)
}

// putInPlace keeps a quiz that takes the place of another, and shows it where it was changed.
func (v *visit) putInPlace(given, q bank.Quiz, filled bool, place string) error {
	given.Plan, given.PacingWeek, given.Class = q.Plan, q.PacingWeek, q.Class
	given.MakeUp, given.From, given.Printed = q.MakeUp, q.ID, q.Printed
	if err := v.desk.bank.ChangeQuiz(bank.Earlier{ID: q.ID}, given); err != nil {
		return err
	}
	return v.toQuiz(given, filled, place)
}

// toQuiz shows a quiz, at a place unless that is empty, and says if items were made for it.
func (v *visit) toQuiz(q bank.Quiz, filled bool, place string) error {
	at := "/quizzes/" + q.ID
	if filled {
		at += "?filled"
	}
	if place != "" {
		at += "#place-" + place
	}
	return v.to(at)
}

// movePlace moves a place of the quiz in all forms at once, so that neighbours still do the same together.
func (v *visit) movePlace(q bank.Quiz, place string, by int) error {
	at, err := strconv.Atoi(place)
	if at, by = at-1, at-1+by; err != nil || min(at, by) < 0 || max(at, by) >= len(q.Forms[0].Items) {
		return v.wrong("quiz.noplace")
	}
	moved := assemble.QuizOf(q).Moved(at, by)
	return v.putInPlace(moved.Given(v.by(), v.now()), q, false, strconv.Itoa(by+1))
}

// takeBackQuiz frees the items of a quiz that was not given.
func takeBackQuiz(v *visit) error {
	q, err := v.unsatQuiz()
	if err != nil {
		return err
	}
	if _, err := v.desk.bank.TakeBackQuiz(q.ID); err != nil {
		return err
	}
	return v.to("/quizzes")
}
