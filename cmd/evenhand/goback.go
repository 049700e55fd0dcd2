package main

import (
	"path/filepath"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"
	"evenhand/standards/words"
)

// goBack puts a backup in the place of a bank that a desk had open, and says in words what was done or why not.
func goBack(bankPath, backup string, copies results.Copies) (told *words.Told) {
	done, err := copies.GoBack(bankPath, backup, now(), bank.Options{}, desk.AccessBuckets...)
	told = words.Sayf("%s is as it was in %s.", bank.NameOf(bankPath), filepath.Base(backup))
	if err != nil {
		told = words.ToldBy(err)
	}
	if len(done.Kept) > 0 {
		told = words.Sayf("%s What stood there before is kept as %s.", told, words.Joined(done.Kept, "%s and %s"))
	}
	return told
}
