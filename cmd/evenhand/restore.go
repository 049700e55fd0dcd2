package main

import (
	"path/filepath"

	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func restoreCommand() *cli.Command {
	return &cli.Command{
		Name: "restore", Usage: "put a backup in the place of the bank and its marks", ArgsUsage: "BACKUP",
		Description: "The backup is copied and the copy checked before anything is touched. What stood there is kept beside it,\n" +
			"under a name with the time in it. A backup without marks leaves the marks as they are.\n\n" +
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
	done, err := results.Restore(path, backup, now())
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
