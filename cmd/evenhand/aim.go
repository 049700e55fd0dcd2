package main

import (
	"errors"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

// aim finds the level of the class that a plan is for.
type aim struct {
	class   string
	share   int // how many in 100 answers should be right
	quizzes []results.Quiz
	papers  []results.Paper
}

// aimOf reads the papers of the plan's class, before the bank is opened to write.
func aimOf(c *cli.Context, plan plan.Plan) (a aim, err error) {
	a.class, a.share = plan.Class, plan.ShareRight
	if a.class == "" {
		return a, nil
	}
	if err := results.CheckClass(a.class); err != nil {
		return a, usagef("class: %v", err)
	}
	if a.quizzes, a.papers, err = allPapers(c); errors.Is(err, results.ErrNone) {
		err = nil
	}
	return a, err
}

// at is the options aimed at the class as it stands. Without papers they are for the usual of
// the grade, and it is said.
func (a aim) at(c *cli.Context, b *bank.Bank, o assemble.Options) (assemble.Options, error) {
	if a.class == "" {
		return o, nil
	}
	ability, level, err := calibration.AimAt(a.class, a.share, a.quizzes, a.papers, b)
	if err != nil {
		return o, err
	}
	if ability == nil {
		say(c, "%v; the quiz is for the usual of the grade", calibration.NoPapers(a.class, a.papers))
		return o, nil
	}
	o.Ability = ability
	say(c, "for %s, %s (by %s of %s)", a.class, level.Words(), count(level.Answers, "answer"), count(level.Pupils, "pupil"))
	return o, nil
}
