package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func backupCommand() *cli.Command {
	return &cli.Command{
		Name: "backup", Usage: "copy the bank and its marks, also while they are in use", ArgsUsage: "FILE",
		Description: "The copy of the bank is a whole bank of its own, as it stood at one moment; the marks go to FILE.marks beside it,\n" +
			"so that FILE alone holds nothing about pupils. Both copies are checked, and a file that is there is never\n" +
			"replaced. evenhand restore FILE puts them back.\n\n" +
			"Example: evenhand backup copies/evenhand-2026-11-27.bank",
		Action: backupBank,
	}
}

func backupBank(c *cli.Context) error {
	path, err := oneArgument(c, "FILE")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("can't make the folder for the backup: %w", err)
	}
	saySwept(c, filepath.Dir(path))
	return readingBank(c, func(b *bank.Bank) error {
		marks := path + ".marks"
		if exists(marks) {
			return fmt.Errorf("%s is there already; choose another name for the backup", marks)
		}
		size, err := b.BackupFile(path)
		if err != nil {
			return err
		}
		say(c, "copied %s to %s, %d KB, checked and undamaged", b.Path(), path, kilobytes(size))
		s, err := results.Open(results.Path(c.String("bank")), patient(c, bank.Options{ReadOnly: true}))
		if errors.Is(err, results.ErrNone) {
			return nil
		}
		if err != nil {
			return inPartf("the bank is copied, but not its marks: %w", err)
		}
		size, err = s.BackupFile(marks)
		if err = errors.Join(err, s.Close()); err != nil {
			return inPartf("the bank is copied, but not its marks: %w", err)
		}
		say(c, "copied its marks to %s, %d KB, checked and undamaged: pupils' results, so keep them as your school's policy asks", marks, kilobytes(size))
		return nil
	})
}

func kilobytes(bytes int64) int64 { return (bytes + 1023) / 1024 }
