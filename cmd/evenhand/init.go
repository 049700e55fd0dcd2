package main

import (
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func initCommand() *cli.Command {
	return &cli.Command{
		Name: "init", Usage: "make a new, empty bank", ArgsUsage: "[--bank FILE]",
		Description: "The bank is one file that only you can read, until you let colleagues in (on Linux and macOS: chmod g+rw team.bank).\n" +
			"Keep it on a disk of this computer or on a server that the team works on: on a shared network folder two people\n" +
			"at once can damage it, as such folders do not all hold a file for one program at a time.\n" +
			"A team on several computers may keep it in a PostgreSQL database instead: --bank 'postgres://HOST/DATABASE?bank=NAME'.\n" +
			"The password then comes from ~/.pgpass or PGPASSWORD and never stands in the address. evenhand copy moves a bank.\n" +
			"A bank that is there already is never touched.\n\nExample: evenhand --bank team.bank init",
		Action: makeBank,
	}
}

func makeBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	path := c.String("bank")
	sweepBeside(c, path)
	b, err := bank.Create(path)
	if err != nil {
		return err
	}
	say(c, "made the bank %s; bring in a list with evenhand import, or items with evenhand generate", path)
	say(c, "a draft is let into quizzes by a colleague who has read it; if you work alone, say so: evenhand review --anyone on")
	return b.Close()
}
