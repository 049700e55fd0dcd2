package main

import (
	"io"

	"github.com/urfave/cli/v2"
)

func helpCommand() *cli.Command {
	return &cli.Command{
		Name: "help", Usage: "tell more about a command", ArgsUsage: "[COMMAND]",
		Description: "Without COMMAND, lists all commands.\n\n" +
			"Example: evenhand help assemble\n" +
			"         evenhand help --man > evenhand.1",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "man", Usage: "print all of it as a manual page, for man(1)"},
		},
		Action: runHelp,
	}
}

func runHelp(c *cli.Context) error {
	if c.NArg() > 1 {
		return usagef("help takes one command; evenhand help lists them all")
	}
	if c.Bool("man") && c.NArg() > 0 {
		return usagef("--man prints the page of all commands; leave off %q", c.Args().First())
	}
	if c.Bool("man") {
		page, err := c.App.ToManWithSection(1)
		if err != nil {
			return err
		}
		_, err = io.WriteString(c.App.Writer, page)
		return err
	}
	name := c.Args().First()
	if name == "" {
		cli.HelpPrinter(c.App.Writer, appHelp, c.App)
		return nil
	}
	command := c.App.Command(name)
	if command == nil {
		return unknownName(c.App, name)
	}
	cli.HelpPrinter(c.App.Writer, commandHelp, command)
	return nil
}

const appHelp = `{{.Name}} - {{.Usage}}

Usage: {{.UsageText}}

{{.Description}}

Commands:
{{range .VisibleCommands}}  {{printf "%-10s" .Name}} {{.Usage}}
{{end}}
Everywhere:
  --bank FILE  the bank; else $EVENHAND_BANK, else evenhand.bank in this folder
Exit codes: 0 done, 1 failed, 2 wrong usage, 3 done in part.
`

const commandHelp = `evenhand {{.Name}} - {{.Usage}}

Usage: evenhand {{.Name}} {{.ArgsUsage}}

{{.Description}}
{{if .VisibleFlags}}
Options:
{{range .VisibleFlags}}  {{.}}
{{end}}{{end}}`
