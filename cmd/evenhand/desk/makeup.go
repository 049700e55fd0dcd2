package desk

import (
	"context"

	"evenhand/assemble"
	"evenhand/bank"
)

// makeMakeUp makes one more even form of a quiz for pupils who were absent, keeps it and shows it.
func makeMakeUp(v *visit) error {
	of, err := v.quizAsked()
	if err == nil && of.MakeUp != "" {
		of, err = v.desk.bank.Quiz(of.MakeUp)
	}
	if err != nil {
		return err
	}
	before, err := v.desk.bank.MakeUps(of.ID)
	if err != nil {
		return err
	}
	plan, ok, err := assemble.PlanOf(of)
	if err != nil || !ok {
		return v.wrong("makeup.noplan")
	}
	ctx, done := context.WithTimeout(v.Context(), 6*searchFor)
	defer done()
	all, err := assemble.MakeUp(ctx, v.desk.bank, plan, append([]bank.Quiz{of}, before...), assemble.Options{Seed: 1, Limit: searchFor})
	if err != nil {
		return v.wrong("makeup.not", err.Error())
	}
	last := len(all.Forms) - 1
	all.Forms, all.Off = all.Forms[last:], all.Off[last:]
	given := all.Given(v.by(), v.now())
	given.Plan, given.PacingWeek, given.Class, given.MakeUp = of.Plan, of.PacingWeek, of.Class, of.ID
	if err := v.desk.bank.KeepQuiz(given); err != nil {
		return err
	}
	return v.to("/quizzes/" + given.ID)
}
