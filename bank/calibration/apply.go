package calibration

import (
	"fmt"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/standards"
)

// Change is an item of a bank with the difficulty that its own answers show.
type Change struct {
	Item     bank.Item // as it stands
	Measured bank.Measured
}

// Enough says that the item has been answered often enough to count as measured.
func (c Change) Enough() bool { return c.Measured.Answers >= bank.MeasuredFrom }

// Range is the difficulty less and plus two standard errors: where it lies with some
// 95 chances in 100.
func (c Change) Range() (low, high standards.Difficulty) {
	return c.Measured.Difficulty - 2*c.Measured.StandardError, c.Measured.Difficulty + 2*c.Measured.StandardError
}

// Changes lists the answered items that are still in the bank as the quizzes showed them, in
// the order of the papers. Items changed since, and items the bank doesn't know, are left out.
func (l Learnt) Changes(b *bank.Bank) (changes []Change, err error) {
	for _, learnt := range l.Items {
		item, ok, err := inBank(learnt.Item, b)
		if err != nil {
			return nil, err
		}
		if ok {
			changes = append(changes, Change{item, bank.Measured{
				Difficulty: learnt.Difficulty, StandardError: learnt.StandardError, Answers: learnt.Answers,
			}})
		}
	}
	return changes, nil
}

// inBank finds the item in a bank, if it still asks what the quiz asked.
func inBank(it results.Item, b *bank.Bank) (item bank.Item, ok bool, err error) {
	asked := bank.NewHandItem(it.Asks, it.Key, it.Skill, "en", bank.Origin{})
	task, understood := it.Task()
	if understood {
		asked = bank.NewItem(task, "", bank.Origin{})
	}
	id, ok, err := b.Has(asked.Fingerprint())
	if err != nil || !ok || id != it.ID {
		return item, false, err
	}
	item, err = b.Get(id)
	// A task turned around is the same item to a bank, but another one to children.
	return item, item.Key == it.Key && (!understood || item.Task == task.String()), err
}

// Table is what the papers taught, as a bank keeps it after the one it has.
func (l Learnt) Table(before bank.Table, by string, at time.Time) bank.Table {
	t := bank.Table{
		Number: before.Number + 1, At: at.UTC().Truncate(time.Second), By: by, Papers: l.Papers, Answers: l.Answers,
		Levels: map[standards.SkillID]bank.Learnt{}, Weights: map[string]bank.Learnt{},
	}
	for _, level := range l.Levels {
		t.Levels[standards.SkillID(level.Name)] = level.forBank()
	}
	for _, weight := range l.Weights {
		t.Weights[weight.Name] = weight.forBank()
	}
	return t
}

func (w Weight) forBank() bank.Learnt {
	return bank.Learnt{
		Default: thousandths(w.Default), Value: thousandths(w.Learnt.Value), SE: thousandths(w.Learnt.SE), Answers: w.Answers,
	}
}

// Applied counts the items that got a new revision.
type Applied struct{ Measured, Predicted int }

// Apply brings the bank to what was learnt, each change as a new revision: items that have
// been answered often enough are measured, all others are predicted from the new table, which
// the bank keeps for the items to come. Papers that teach nothing new leave the bank as it is.
// Interrupted, it is finished by doing it again.
func (l Learnt) Apply(b *bank.Bank, changes []Change, by, reason string, at time.Time) (done Applied, err error) {
	before, err := b.Table()
	if err != nil {
		return done, err
	}
	table := l.Table(before, by, at)
	predict, err := predictions(b, table)
	if err != nil {
		return done, err
	}
	measured := map[string]bank.Measured{}
	for _, change := range changes {
		measured[change.Item.ID] = change.Measured
	}
	done, err = reviseAll(b, by, reason, at, func(item *bank.Item) {
		if m, ok := measured[item.ID]; ok {
			measure(item, m)
		}
		predict(item)
	})
	if err != nil || sameTable(before, table) {
		return done, err
	}
	return done, b.KeepTable(table)
}

// measure gives the item its own difficulty, once it rests on enough answers. Few answers
// don't take away what more have shown elsewhere.
func measure(item *bank.Item, m bank.Measured) {
	switch {
	case m.Answers >= bank.MeasuredFrom:
		item.Measured = &m
	case item.Measured != nil && item.Measured.Answers < bank.MeasuredFrom:
		item.Measured = nil
	}
}

// predictions moves predictions of the bank's items from the table that it has to another. That
// of an item by hand may be a person's own; then it stays.
func predictions(b *bank.Bank, after bank.Table) (func(*bank.Item), error) {
	before, err := b.KeptTable()
	if err != nil {
		return nil, err
	}
	catalogue, err := b.Catalogue()
	return func(item *bank.Item) {
		if !item.ByHand() || before.PredictedBySkill(*item, catalogue) {
			item.Predicted = after.PredictItem(*item)
		}
	}, err
}

// sameTable says that two tables predict alike.
func sameTable(a, b bank.Table) bool {
	if len(a.Levels) != len(b.Levels) || len(a.Weights) != len(b.Weights) || a.Answers != b.Answers || a.Papers != b.Papers {
		return false
	}
	for skill, level := range a.Levels {
		if b.Levels[skill] != level {
			return false
		}
	}
	for name, weight := range a.Weights {
		if b.Weights[name] != weight {
			return false
		}
	}
	return true
}

// Forget takes the bank back to the table that every bank begins with, as new revisions: no
// item is measured any more, and all are predicted as if no paper had been marked. The papers
// stay where they are, so that they can teach again.
func Forget(b *bank.Bank, by, reason string, at time.Time) (done Applied, err error) {
	before, err := b.Table()
	if err != nil {
		return done, err
	}
	predict, err := predictions(b, bank.Table{})
	if err != nil {
		return done, err
	}
	if done, err = reviseAll(b, by, reason, at, func(item *bank.Item) {
		item.Measured = nil
		predict(item)
	}); err != nil || before.Number == 0 {
		return done, err
	}
	return done, b.KeepTable(bank.Table{Number: before.Number + 1, At: at.UTC().Truncate(time.Second), By: by})
}

// reviseAll changes every item of the bank and counts what became of them.
func reviseAll(b *bank.Bank, by, reason string, at time.Time, change func(*bank.Item)) (done Applied, err error) {
	var ids []string
	for item, err := range b.Find(bank.Query{}) {
		if err != nil {
			return done, err
		}
		ids = append(ids, item.ID)
	}
	_, err = b.ReviseAll(ids, by, reason, at, func(item *bank.Item) error {
		was := item.Difficulty()
		had := item.Measured
		change(item)
		switch {
		case !sameMeasure(had, item.Measured):
			done.Measured++
		case item.Difficulty() != was:
			done.Predicted++
		}
		return nil
	})
	if err != nil {
		return done, fmt.Errorf("only a part of the items could be changed; do it again: %w", err)
	}
	return done, nil
}

func sameMeasure(a, b *bank.Measured) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}
