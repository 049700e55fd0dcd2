package main

import (
	"fmt"

	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/evidence/report"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

// showCalibration prints what was learnt: as tables in a teacher's words, with --verbose in
// logits, or as JSON.
func showCalibration(c *cli.Context, b *bank.Bank, l calibration.Learnt, changes []calibration.Change) error {
	before, err := b.Table()
	if err != nil {
		return err
	}
	after := l.Table(before, author(c), now())
	if c.Bool("json") {
		return printJSON(c, calibrationJSON(l, changes, after))
	}
	items := [][]string{{"ITEM", "QUESTION", "SO FAR", "NOW", "LIKELY WITHIN", "ANSWERS", "BASIS"}}
	for _, change := range changes {
		items = append(items, changeRow(change, after, c.Bool("verbose")))
	}
	levels := [][]string{{"SKILL", "OF 100 RIGHT WITHOUT ITS TRAITS, SUPPOSED", "LEARNT", "LIKELY WITHIN"}}
	for _, level := range l.Levels {
		levels = append(levels, weightRow(level, 0, c.Bool("verbose")))
	}
	weights := [][]string{{"TRAIT", "OF 70 IN 100 IT LEAVES, SUPPOSED", "LEARNT", "LIKELY WITHIN"}}
	for _, weight := range l.Weights {
		weights = append(weights, weightRow(weight, standards.DifficultyFor(.7), c.Bool("verbose")))
	}
	for _, rows := range [][][]string{items, levels, weights, classRows(l, c.Bool("verbose"))} {
		if len(rows) == 1 {
			continue
		}
		if err := table(c.App.Writer, rows); err != nil {
			return err
		}
		fmt.Fprintln(c.App.Writer)
	}
	say(c, "learnt from %s with %s", count(l.Papers, "paper"), count(l.Answers, "answer"))
	say(c, "%s", report.Caution)
	return nil
}

// changeRow is what an answered item was supposed to be, and what it is now.
func changeRow(change calibration.Change, after bank.Table, verbose bool) []string {
	item := change.Item
	was, now, within := item.Difficulty(), after.PredictItem(item), ""
	if change.Enough() {
		now = change.Measured.Difficulty
		low, high := change.Range()
		within = fmt.Sprintf("%d to %d", high.Tenths(), low.Tenths())
		if verbose {
			within = "standard error " + change.Measured.StandardError.String()
		}
	}
	row := []string{item.ID, item.Question("en"), inTen(was), inTen(now), within, fmt.Sprint(change.Measured.Answers), string(basisAfter(change, after))}
	if verbose {
		row[2], row[3] = was.String(), now.String()
	}
	return row
}

func basisAfter(change calibration.Change, after bank.Table) bank.Basis {
	item := change.Item
	item.Measured = &change.Measured
	return after.Basis(item)
}

func inTen(d standards.Difficulty) string { return fmt.Sprintf("%d in 10", d.Tenths()) }

// weightRow is a number of the table as what it makes of an item, in 100 answers.
func weightRow(w calibration.Weight, on standards.Difficulty, verbose bool) []string {
	if verbose {
		return []string{w.Name, logits(w.Default), logits(w.Learnt.Value), "standard error " + logits(w.Learnt.SE)}
	}
	becomes := func(logits float64) int { return (on + standards.Difficulty(1000*logits)).Percent() }
	e := w.Learnt
	return []string{w.Name, fmt.Sprint(becomes(w.Default)), fmt.Sprint(becomes(e.Value)),
		fmt.Sprintf("%d to %d", becomes(e.Value+2*e.SE), becomes(e.Value-2*e.SE))}
}

func classRows(l calibration.Learnt, verbose bool) [][]string {
	rows := [][]string{{"CLASS", "TERM", "PUPILS", "STANDS"}}
	for _, class := range l.Classes {
		stands := class.Words()
		if verbose {
			stands = fmt.Sprintf("%s, standard error %s", logits(class.Level.Value), logits(class.Level.SE))
		}
		rows = append(rows, []string{or(class.Name, "(all)"), class.Term, fmt.Sprint(class.Pupils), stands})
	}
	return rows
}

func logits(x float64) string { return fmt.Sprintf("%.2f", x) }

// calibratedJSON is what calibrate shows, as other programs read it; in logits.
type calibratedJSON struct {
	Papers  int          `json:"papers"`
	Answers int          `json:"answers"`
	Items   []itemLogits `json:"items"`
	Levels  []weightJSON `json:"levels"`
	Weights []weightJSON `json:"weights"`
	Classes []classJSON  `json:"classes"`
}

type itemLogits struct {
	ID        string     `json:"id"`
	Predicted float64    `json:"predicted"`                 // so far
	Before    *float64   `json:"measured_before,omitempty"` // so far
	Learnt    float64    `json:"learnt"`                    // predicted from what was learnt
	Measured  float64    `json:"measured"`                  // on its own answers
	Error     float64    `json:"standard_error"`            // of measured
	Answers   int        `json:"answers"`
	Basis     bank.Basis `json:"basis"` // what counts from now on
}

type weightJSON struct {
	Name    string  `json:"name"`
	Default float64 `json:"default"`
	Learnt  float64 `json:"learnt"`
	Error   float64 `json:"standard_error"`
}

type classJSON struct {
	Class string  `json:"class"`
	Term  string  `json:"term"`
	Level float64 `json:"level"`
	Error float64 `json:"standard_error"`
	Usual float64 `json:"usual"` // of the grade
}

func calibrationJSON(l calibration.Learnt, changes []calibration.Change, after bank.Table) calibratedJSON {
	out := calibratedJSON{
		Papers: l.Papers, Answers: l.Answers, Items: []itemLogits{},
		Levels: weightsJSON(l.Levels), Weights: weightsJSON(l.Weights), Classes: []classJSON{},
	}
	for _, change := range changes {
		item, m := change.Item, change.Measured
		row := itemLogits{
			item.ID, item.Predicted.Logits(), nil, after.PredictItem(item).Logits(),
			m.Difficulty.Logits(), m.StandardError.Logits(), m.Answers, basisAfter(change, after),
		}
		if item.Measured != nil {
			before := item.Measured.Difficulty.Logits()
			row.Before = &before
		}
		out.Items = append(out.Items, row)
	}
	for _, class := range l.Classes {
		out.Classes = append(out.Classes, classJSON{class.Name, class.Term, class.Level.Value, class.Level.SE, class.Usual})
	}
	return out
}

func weightsJSON(weights []calibration.Weight) []weightJSON {
	list := []weightJSON{}
	for _, w := range weights {
		list = append(list, weightJSON{w.Name, w.Default, w.Learnt.Value, w.Learnt.SE})
	}
	return list
}
