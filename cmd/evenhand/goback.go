package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"
)

// goBack puts a backup in the place of a bank that a desk had open, and says in words what was done or why not.
func goBack(bankPath, backup string, copies results.Copies) (told string) {
	done, err := copies.GoBack(bankPath, backup, now(), desk.AccessBuckets...)
	told = fmt.Sprintf("%s is as it was in %s.", bank.NameOf(bankPath), filepath.Base(backup))
	if err != nil {
		told = err.Error()
	}
	if len(done.Kept) > 0 {
		told += " What stood there before is kept as " + strings.Join(done.Kept, " and ") + "."
	}
	return told
}
