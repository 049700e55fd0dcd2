package desk

import (
	"context"
	"net/url"

	"evenhand/assemble"
)

// makeMakeUp makes one more even form of a quiz for pupils who were absent, keeps it and shows it.
func makeMakeUp(v *visit) error {
	sat, err := v.satAsked()
	if err != nil {
		return err
	}
	of := sat[0]
	plan, ok, err := assemble.PlanOf(of)
	if err != nil || !ok {
		return v.wrong("makeup.noplan")
	}
	ctx, done := context.WithTimeout(v.Context(), 6*searchFor)
	defer done()
	var all assemble.Quiz
	filled, err := v.ifNeeded(func() (err error) {
		all, err = assemble.MakeUp(ctx, v.desk.bank, plan, sat, assemble.Options{Seed: 1, Limit: searchFor})
		return err
	})
	if err != nil {
		return v.notMade("makeup.not", plan, err, "/class?class="+url.QueryEscape(of.Class))
	}
	given := all.LastForm().Given(v.by(), v.now())
	given.Plan, given.PacingWeek, given.Class, given.MakeUp = of.Plan, of.PacingWeek, of.Class, of.ID
	if err := v.desk.bank.KeepQuiz(given); err != nil {
		return err
	}
	return v.toQuiz(given, filled, "")
}
