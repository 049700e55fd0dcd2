package main

import (
	"fmt"

	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func calibrateCommand() *cli.Command {
	return &cli.Command{
		Name: "calibrate", Usage: "learn from all marks how difficult the bank's items are", ArgsUsage: "[--dry-run | --forget]",
		Description: fmt.Sprintf("Learns from all marked papers what skills and traits add to difficulty, and where each class stands, so that\n"+
			"a stronger class does not make its items look easy. An item with %d answers or more is measured; every other is predicted\n"+
			"from what was learnt. Changes are new revisions; quizzes already given stay as they are. --forget takes all of it back.\n\n"+
			"Example: evenhand calibrate --dry-run", bank.MeasuredFrom),
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "dry-run", Usage: "only show; change nothing"},
			&cli.BoolFlag{Name: "forget", Usage: "go back to the difficulties that every bank begins with; the marks stay"},
			&cli.BoolFlag{Name: "verbose", Usage: "show difficulties in logits, with their standard errors"},
			byFlag, jsonFlag,
		},
		Before: together(
			apart("forget", "that only adds revisions, and calibrate brings back what the marks show", "dry-run"),
			apart("forget", "it is for what is learnt", "verbose", "json"),
		),
		Action: calibrateBank,
	}
}

func calibrateBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	if c.Bool("forget") {
		return forgetCalibration(c)
	}
	quizzes, papers, err := allPapers(c)
	if err != nil {
		return err
	}
	learnt, err := learn(c, quizzes, papers)
	if err != nil {
		return err
	}
	open := withBank
	if c.Bool("dry-run") {
		open = readingBank
	}
	return open(c, func(b *bank.Bank) error {
		changes, err := learnt.Changes(b)
		if err != nil {
			return err
		}
		if err := showCalibration(c, b, learnt, changes); err != nil {
			return err
		}
		if c.Bool("dry-run") {
			say(c, "this was a dry run: nothing is changed")
			return nil
		}
		reason := fmt.Sprintf("calibrated on %s", count(learnt.Papers, "paper"))
		done, err := learnt.Apply(b, changes, author(c), reason, now())
		if err != nil {
			return err
		}
		say(c, "%s measured anew (from %d answers on), %s predicted anew", count(done.Measured, "item"), bank.MeasuredFrom, count(done.Predicted, "other"))
		return nil
	})
}

func forgetCalibration(c *cli.Context) error {
	return withBank(c, func(b *bank.Bank) error {
		done, err := calibration.Forget(b, author(c), "calibration forgotten", now())
		if err != nil {
			return err
		}
		say(c, "%s had been measured and %s predicted otherwise; the marks stay, and calibrate learns from them again",
			count(done.Measured, "item"), count(done.Predicted, "other"))
		return nil
	})
}

// allPapers reads all quizzes with all their papers, of which there is at least one.
func allPapers(c *cli.Context) (quizzes []results.Quiz, papers []results.Paper, err error) {
	err = withResults(c, bank.Options{ReadOnly: true}, func(s *results.Store) error {
		if quizzes, papers, err = s.All(); err != nil {
			return err
		}
		if len(papers) == 0 {
			return results.ErrNone
		}
		return nil
	})
	return quizzes, papers, err
}

// learn fits the model, with a bar that fills as what is still to be gained shrinks.
func learn(c *cli.Context, quizzes []results.Quiz, papers []results.Paper) (calibration.Learnt, error) {
	advance, end := progress(c, "learning")
	defer end()
	first := 0.0
	return calibration.Learn(quizzes, papers, func(_ int, toGain float64) {
		first = max(first, toGain)
		advance(int(1000*(1-toGain/first)), 1000)
	})
}
