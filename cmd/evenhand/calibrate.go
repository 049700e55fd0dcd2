package main

import (
	"fmt"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func calibrateCommand() *cli.Command {
	return &cli.Command{
		Name: "calibrate", Usage: "learn from all marks how difficult the bank's items are", ArgsUsage: "[--dry-run]",
		Description: "Fits one model to all marked papers, starting from the default table of weights: an item with few answers stays\n" +
			"near what its traits say, one with many follows the answers. Items get their measured difficulty as a new revision;\n" +
			"quizzes already given stay as they are. It prints what moved and the weights learnt.\n\n" +
			"Example: evenhand calibrate --dry-run",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "dry-run", Usage: "only show; change nothing"},
			&cli.BoolFlag{Name: "verbose", Usage: "show difficulties in logits, with their standard errors"},
			byFlag, jsonFlag,
		},
		Action: calibrateBank,
	}
}

func calibrateBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
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
		if err := showCalibration(c, learnt, changes); err != nil {
			return err
		}
		if c.Bool("dry-run") {
			say(c, "this was a dry run: nothing is changed")
			return nil
		}
		reason := fmt.Sprintf("calibrated on %s", count(learnt.Papers, "paper"))
		n, err := results.Relabel(b, changes, author(c), reason, now())
		if err != nil {
			return err
		}
		say(c, "%s relabelled, %d as before", count(n, "item"), len(changes)-n)
		return nil
	})
}

// allPapers reads all quizzes with all their papers, of which there is at least one.
func allPapers(c *cli.Context) (quizzes []results.Quiz, papers []results.Paper, err error) {
	err = withResults(c, bank.Options{ReadOnly: true}, func(s *results.Store) error {
		if quizzes, err = s.Quizzes(); err != nil {
			return err
		}
		for _, quiz := range quizzes {
			some, err := s.Papers(quiz.ID)
			if err != nil {
				return err
			}
			papers = append(papers, some...)
		}
		if len(papers) == 0 {
			return results.ErrNone
		}
		return nil
	})
	return quizzes, papers, err
}

// learn fits the model, with a bar that fills as what is still to be gained shrinks.
func learn(c *cli.Context, quizzes []results.Quiz, papers []results.Paper) (results.Learnt, error) {
	advance, end := progress(c, "learning")
	defer end()
	first := 0.0
	return results.Learn(quizzes, papers, func(_ int, toGain float64) {
		first = max(first, toGain)
		advance(int(1000*(1-toGain/first)), 1000)
	})
}

// calibratedJSON is what calibrate shows, as other programs read it; in logits.
type calibratedJSON struct {
	Papers  int          `json:"papers"`
	Answers int          `json:"answers"`
	Items   []itemLogits `json:"items"`
	Weights []weightJSON `json:"weights"`
}

type itemLogits struct {
	ID        string   `json:"id"`
	Predicted float64  `json:"predicted"`
	Before    *float64 `json:"measured_before,omitempty"`
	Measured  float64  `json:"measured"`
	Error     float64  `json:"standard_error"`
	Answers   int      `json:"answers"`
}

type weightJSON struct {
	Name    string  `json:"name"`
	Default float64 `json:"default"`
	Learnt  float64 `json:"learnt"`
	Error   float64 `json:"standard_error"`
}

func showCalibration(c *cli.Context, l results.Learnt, changes []results.Change) error {
	if c.Bool("json") {
		return printJSON(c, calibrationJSON(l, changes))
	}
	rows := [][]string{{"ITEM", "QUESTION", "PREDICTED", "MEASURED", "LIKELY WITHIN", "ANSWERS"}}
	for _, change := range changes {
		rows = append(rows, changeRow(change, c.Bool("verbose")))
	}
	if err := table(c.App.Writer, rows); err != nil {
		return err
	}
	fmt.Fprintln(c.App.Writer)
	weights := [][]string{{"WEIGHT", "DEFAULT", "LEARNT", "STANDARD ERROR"}}
	for _, w := range l.Weights {
		weights = append(weights, []string{w.Name, logits(w.Default), logits(w.Learnt.Value), logits(w.Learnt.SE)})
	}
	if err := table(c.App.Writer, weights); err != nil {
		return err
	}
	say(c, "weights are in logits: 1 more turns 7 in 10 right into 5 in 10; learnt from %s with %s", count(l.Papers, "paper"), count(l.Answers, "answer"))
	return nil
}

func logits(x float64) string { return fmt.Sprintf("%.2f", x) }

func changeRow(change results.Change, verbose bool) []string {
	item, m := change.Item, change.Measured
	low, high := change.Range()
	row := []string{item.ID, item.Question("en"), inTen(item.Predicted), inTen(m.Difficulty), fmt.Sprintf("%d to %d", tenths(high), tenths(low)), fmt.Sprint(m.Answers)}
	if verbose {
		row[2], row[3], row[4] = item.Predicted.String(), m.Difficulty.String(), "standard error "+m.StandardError.String()
	}
	return row
}

// inTen is the share right as "7 in 10".
func inTen(d standards.Difficulty) string { return fmt.Sprintf("%d in 10", tenths(d)) }

func tenths(d standards.Difficulty) int { return (d.Percent() + 5) / 10 }

func calibrationJSON(l results.Learnt, changes []results.Change) calibratedJSON {
	out := calibratedJSON{Papers: l.Papers, Answers: l.Answers, Items: []itemLogits{}, Weights: []weightJSON{}}
	for _, change := range changes {
		item := itemLogits{change.Item.ID, change.Item.Predicted.Logits(), nil, change.Measured.Difficulty.Logits(), change.Measured.StandardError.Logits(), change.Measured.Answers}
		if m := change.Item.Measured; m != nil {
			before := m.Difficulty.Logits()
			item.Before = &before
		}
		out.Items = append(out.Items, item)
	}
	for _, w := range l.Weights {
		out.Weights = append(out.Weights, weightJSON{w.Name, w.Default, w.Learnt.Value, w.Learnt.SE})
	}
	return out
}
