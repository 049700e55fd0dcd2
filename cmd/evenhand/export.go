package main

import (
	"io"

	"evenhand/assemble/export"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func exportCommand() *cli.Command {
	return &cli.Command{
		Name: "export", Usage: "write the whole bank as CSV", ArgsUsage: "[FILE]",
		Description: "One row an item, its history and uses aside; evenhand import reads it back. Nothing about pupils is in it.\nWithout a file it goes to stdout.\n\n" +
			"Example: evenhand export our-items.csv",
		Action: exportBank,
	}
}

func exportBank(c *cli.Context) error {
	if c.NArg() > 1 {
		return usagef("export takes one FILE, but got %d", c.NArg())
	}
	return readingBank(c, func(b *bank.Bank) error {
		write := func(w io.Writer) error { return export.WriteBank(w, b.Find(bank.Query{})) }
		path := c.Args().First()
		if path == "" || path == "-" {
			return write(c.App.Writer)
		}
		if err := writeFile(path, write); err != nil {
			return err
		}
		say(c, "wrote %s", path)
		return nil
	})
}
