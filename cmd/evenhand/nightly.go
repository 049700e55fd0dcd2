package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
)

// nightly keeps proved copies of a bank and its marks, one a day, while a desk serves it.
type nightly struct {
	bank *bank.Bank
	dir  string
	keep int // days
	say  func(format string, args ...any)
}

// run makes the copy of a day as soon as the day has none, until the context ends. What fails is said and
// tried again an hour later.
func (n nightly) run(ctx context.Context) {
	ticks := time.NewTicker(time.Hour)
	defer ticks.Stop()
	for {
		if err := n.copy(time.Now()); err != nil {
			n.say("the backup of today failed, and is tried again in an hour: %v", err)
		}
		select {
		case <-ctx.Done():
			return
		case <-ticks.C:
		}
	}
}

// copy makes the copy of a day, unless it is there, and then removes those beyond the days to keep.
func (n nightly) copy(now time.Time) error {
	path := filepath.Join(n.dir, now.Format(nightlyName))
	if exists(path) {
		return nil
	}
	if err := os.MkdirAll(n.dir, 0o700); err != nil {
		return err
	}
	// The marks first: where the bank's copy stands, the day is done.
	marks, err := results.Open(results.Path(n.bank.Path()), bank.Options{ReadOnly: true})
	switch {
	case errors.Is(err, results.ErrNone):
	case err != nil:
		return err
	default:
		_ = os.Remove(path + ".marks") // of a try that went no further
		if _, err = marks.BackupFile(path + ".marks"); err != nil {
			return errors.Join(err, marks.Close())
		}
		if err := marks.Close(); err != nil {
			return err
		}
	}
	if _, err := n.bank.BackupFile(path); err != nil {
		return err
	}
	return n.prune()
}

// nightlyName is the name of a day's copy, as package time writes it.
const nightlyName = "evenhand-2006-01-02.bank"

// prune removes the oldest copies beyond the days to keep; other files of the folder stay.
func (n nightly) prune() error {
	files, err := os.ReadDir(n.dir)
	if err != nil {
		return err
	}
	var days []string
	for _, file := range files {
		if _, err := time.Parse(nightlyName, file.Name()); err == nil {
			days = append(days, file.Name())
		}
	}
	slices.Sort(days)
	for _, day := range days[:max(0, len(days)-n.keep)] {
		path := filepath.Join(n.dir, day)
		if err := os.Remove(path); err != nil {
			return fmt.Errorf("an old backup can't be removed: %w", err)
		}
		if err := os.Remove(path + ".marks"); err != nil && !errors.Is(err, os.ErrNotExist) {
			return fmt.Errorf("an old backup can't be removed: %w", err)
		}
	}
	return nil
}
