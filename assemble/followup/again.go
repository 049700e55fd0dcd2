package followup

import (
	"errors"
	"time"

	"evenhand/bank"
	"evenhand/bank/evidence/report"
)

// Again chooses a set for a report as if none had been chosen for it before: what an earlier one noted as used
// in the week is free meanwhile, so that the same sheets come, and is noted again where none come.
func Again(b *bank.Bank, r *report.Report, class, week string, at time.Time, choose func() (Set, error)) (Set, error) {
	use := Set{About: r.Title(), Class: class, Week: week}.Use(at)
	ids, before, err := b.UsedBy(use.Quiz, use.Week)
	if err != nil {
		return Set{}, err
	}
	if _, err := b.TakeBack(use.Quiz, use.Week); err != nil {
		return Set{}, err
	}
	set, err := choose()
	if err != nil {
		use.At = before
		err = errors.Join(err, b.RecordUse(ids, use))
	}
	return set, err
}
