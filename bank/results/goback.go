package results

import (
	"errors"
	"fmt"
	"path/filepath"
	"time"

	"evenhand/bank"
)

// GoBack puts a backup in the place of a bank and its marks: of files as Restore does; in a database each in one step,
// for which writers wait, with all entries of the buckets to keep as they stand. What stood there before is kept, of a
// database as one more of the copies.
func (c Copies) GoBack(bankPath, backup string, at time.Time, keep ...string) (done Restored, err error) {
	if !bank.InDatabase(bankPath) {
		return Restore(bankPath, backup, at)
	}
	if err := bank.ProveFile(backup); err != nil {
		return done, err
	}
	before := filepath.Join(c.Dir, c.byHand(at))
	if marks := Path(backup); !missing(marks) {
		if err := ProveFile(marks); err != nil {
			return done, err
		}
		if err := goBackMarks(bankPath, marks, before); err != nil {
			return done, err
		}
		done.Marks = true
	}
	if err := bank.GoBack(bankPath, backup, before, bank.Options{}, keep...); err != nil {
		if done.Marks {
			err = fmt.Errorf("the marks are as they were then, but the bank is not: %w", err)
		}
		return done, err
	}
	done.Kept = append(done.Kept, before)
	return done, nil
}

// goBackMarks does it for the marks of a bank in a database, where there may be none yet.
func goBackMarks(bankPath, from, before string) error {
	s, err := Open(Path(bankPath), bank.Options{ReadOnly: true})
	if errors.Is(err, ErrNone) {
		_, err = bank.Copy(from, Path(bankPath), bank.Options{})
		return err
	}
	if err := errors.Join(err, s.Close()); err != nil {
		return err
	}
	return bank.GoBack(Path(bankPath), from, Path(before), bank.Options{})
}
