package results

import (
	"path/filepath"
	"time"

	"evenhand/bank"
	"evenhand/standards/words"
)

// GoBack puts a backup in the place of a bank and its marks: of files as Restore does; in a database each in one step,
// for which writers wait. The buckets to keep stay as they are, if anything stands in one. What stood there before is
// kept, of a database as one more of the copies.
func (c Copies) GoBack(bankPath, backup string, at time.Time, o bank.Options, keep ...string) (done Restored, err error) {
	if !bank.InDatabase(bankPath) {
		return Restore(bankPath, backup, at, o, keep...)
	}
	if err := there(backup); err != nil {
		return done, err
	}
	if err := proved(backup, backup, bank.ProveFile); err != nil {
		return done, err
	}
	before := filepath.Join(c.Dir, c.byHand(at))
	if marks := Path(backup); !missing(marks) {
		if err := proved(marks, marks, ProveFile); err != nil {
			return done, err
		}
		if _, err := bank.GoBack(Path(bankPath), marks, Path(before), o); err != nil {
			return done, err
		}
		done.Marks = true
	}
	kept, err := bank.GoBack(bankPath, backup, before, o, keep...)
	if kept {
		done.Kept = append(done.Kept, before)
	}
	if err != nil && done.Marks {
		err = words.Errorf("the marks are as they were then, but the bank is not: %w", err)
	}
	return done, err
}
