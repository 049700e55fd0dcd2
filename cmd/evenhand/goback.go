package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"evenhand/bank/results"
)

// goBack puts a backup in the place of a bank that a desk had open, and says in words what was done or why not.
func goBack(bankPath, backup string) (told string) {
	done, err := results.Restore(bankPath, backup, now())
	told = fmt.Sprintf("%s is as it was in %s.", filepath.Base(bankPath), filepath.Base(backup))
	if err != nil {
		told = err.Error()
	}
	if len(done.Kept) > 0 {
		told += " What stood there before is kept as " + strings.Join(done.Kept, " and ") + "."
	}
	return told
}
