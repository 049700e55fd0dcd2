package main

import (
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func initCommand() *cli.Command {
	return &cli.Command{
		Name: "init", Usage: "make a new, empty bank", ArgsUsage: "[--bank FILE]",
		Description: "The bank is one file that only you can read; keep it where the team's other files are.\nA bank that is there already is never touched.\n\nExample: evenhand --bank team.bank init",
		Action:      makeBank,
	}
}

func makeBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	path := c.String("bank")
	b, err := bank.Create(path)
	if err != nil {
		return err
	}
	say(c, "made the bank %s; bring in a list with evenhand import, or items with evenhand generate", path)
	return b.Close()
}
