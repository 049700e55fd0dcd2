package main

import (
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func backupCommand() *cli.Command {
	return &cli.Command{
		Name: "backup", Usage: "copy the bank, also while it is in use", ArgsUsage: "FILE",
		Description: "The copy is a whole bank of its own, as it stood at one moment. A file that is there is never replaced.\n\nExample: evenhand backup copies/evenhand-2026-11-27.bank",
		Action:      backupBank,
	}
}

func backupBank(c *cli.Context) error {
	path, err := oneArgument(c, "FILE")
	if err != nil {
		return err
	}
	return readingBank(c, func(b *bank.Bank) error {
		size, err := b.BackupFile(path)
		if err != nil {
			return err
		}
		say(c, "copied %s to %s, %d KB; evenhand --bank %s check proves it whole", b.Path(), path, (size+1023)/1024, path)
		return nil
	})
}
