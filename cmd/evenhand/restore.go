package main

import (
	"path/filepath"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"

	"github.com/urfave/cli/v2"
)

func restoreCommand() *cli.Command {
	return &cli.Command{
		Name: "restore", Usage: "put a backup in the place of the bank and its marks", ArgsUsage: "BACKUP",
		Description: "The backup is checked before anything is touched. What stood there is kept under a name with the time in it,\n" +
			"beside the bank's file, or of a bank in a database beside the backup: there all programs wait meanwhile, and go on\n" +
			"with the bank as it was. A backup without marks leaves the marks as they are, and who may come in at the team's\n" +
			"desk stays as it is.\n\n" +
			"Example: evenhand backup copies/today.bank\n" +
			"         evenhand restore copies/today.bank",
		Action: restoreBank,
	}
}

func restoreBank(c *cli.Context) error {
	backup, err := oneArgument(c, "BACKUP")
	if err != nil {
		return err
	}
	path := c.String("bank")
	saySwept(c, filepath.Dir(path))
	copies := results.Copies{Dir: filepath.Dir(backup)} // where what a database holds now is kept, too
	done, err := copies.GoBack(path, backup, now(), patient(c, bank.Options{}), desk.AccessBuckets...)
	for _, kept := range done.Kept {
		say(c, "what stood there before is kept as %s", kept)
	}
	if err != nil {
		return err
	}
	if done.Marks {
		say(c, "%s and its marks are as they were in %s", path, backup)
		return nil
	}
	say(c, "%s is as it was in %s; the backup holds no marks, so those of the bank stay as they are", path, backup)
	return nil
}
