package main

import (
	"errors"
	"fmt"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

// assembleMakeUp makes one more even form of a quiz that was given, for pupils who were absent. It is
// kept as a quiz of its own, whose marks count with the quiz.
func assembleMakeUp(c *cli.Context) error {
	dir := c.String("out")
	switch {
	case c.NArg() > 1:
		return usagef("name one plan at most")
	case dir == "":
		return usagef("say where to write: --out DIR")
	case exists(dir):
		return fmt.Errorf("%s is there already; name a new folder", dir)
	}
	if err := errors.Join(checkPrint(c), folder.named(dir)); err != nil {
		return err
	}
	return openForUse(c)(c, func(b *bank.Bank) error {
		kept, err := keptQuiz(c, b, c.String("makeup"))
		if err != nil {
			return err
		}
		sat, err := b.WithMakeUps(kept.ID)
		if err != nil {
			return err
		}
		plan, err := planOf(c, sat[0])
		if err != nil {
			return err
		}
		var quiz assemble.Quiz
		err = filling(c, b, 1, func() (err error) {
			quiz, err = assemble.MakeUp(c.Context, b, plan, sat, assemble.Options{Seed: c.Uint64("seed"), Limit: c.Duration("limit")})
			return err
		})
		if err != nil {
			return err
		}
		return deliverMakeUp(c, b, quiz, sat[0])
	})
}

// planOf is the plan of a quiz that was given: the one on the command line, else its own.
func planOf(c *cli.Context, given bank.Quiz) (plan.Plan, error) {
	if c.NArg() == 1 {
		return readPlan(c, c.Args().First())
	}
	plan, ok, err := assemble.PlanOf(given)
	if err == nil && !ok {
		err = usagef("the bank does not keep the plan of %s; name it in front: evenhand assemble PLAN.toml ...", given.Name())
	}
	return plan, err
}

// deliverMakeUp writes the new form and shows it beside those that were sat.
func deliverMakeUp(c *cli.Context, b *bank.Bank, all assemble.Quiz, of bank.Quiz) error {
	balance := assemble.BalanceOf(all)
	quiz := all.LastForm()
	dir := c.String("out")
	about := bank.Quiz{Plan: of.Plan, PacingWeek: of.PacingWeek, Class: of.Class, MakeUp: of.ID}
	if err := keepAndWrite(c, b, again{}, quiz, about); err != nil || c.Bool("json") {
		return err
	}
	if err := table(c.App.Writer, balance.Table()); err != nil {
		return err
	}
	say(c, "%s", all.Verdict())
	say(c, "form %s of %s in %s, for pupils who were absent; its marks count with the quiz: evenhand mark %s",
		quiz.Forms[0].Name, of.Name(), dir, of.ID)
	return nil
}
