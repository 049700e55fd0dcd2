package followup

import (
	"time"

	"evenhand/bank"
	"evenhand/bank/evidence/report"
)

// Again is the bank as if no set had been chosen for a report before: what an earlier one noted as used in the week is
// free in it, so that the same sheets come.
func Again(b *bank.Bank, r *report.Report, class, week string) *bank.Bank {
	use := Set{About: r.Title(), Class: class, Week: week}.Use(time.Time{})
	return b.AsIfTakenBack(bank.Earlier{Title: use.Quiz, Week: use.Week})
}
