package desk

import (
	"context"
	"errors"
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
	var all assemble.Quiz
	filled := false
	err = v.inTurn(func(ctx context.Context) (err error) {
		filled, err = v.ifNeeded(func() (err error) {
			all, err = assemble.MakeUp(ctx, v.desk.bank, plan, sat, assemble.Options{Seed: 1, Limit: searchFor})
			return err
		})
		return err
	})
	if errors.As(err, new(*fault)) {
		return err
	}
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
