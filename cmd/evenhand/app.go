package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"

	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

// run is the whole program; it gives the exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	app := newApp()
	app.Reader, app.Writer, app.ErrWriter = stdin, stdout, stderr
	err := app.Run(flagsFirst(app, args))
	if err == nil {
		return exitDone
	}
	code := exitCode(err)
	if message := strings.TrimSpace(err.Error()); message != "" {
		fmt.Fprintln(stderr, "evenhand: "+message)
	}
	return code
}

// interruptible lets a command end in order when the user stops it, until the function given is
// called. Elsewhere an interrupt ends the program at once, which no file here minds.
func interruptible(c *cli.Context) (done context.CancelFunc) {
	c.Context, done = signal.NotifyContext(c.Context, os.Interrupt)
	return done
}

// newApp is the program's commands, in the order of a teacher's week.
func newApp() *cli.App {
	app := &cli.App{
		Name:      "evenhand",
		Usage:     "a grade team's bank of mathematics items, and fair quizzes from it",
		UsageText: "evenhand [--bank FILE] COMMAND [options] [arguments]",
		Description: "Keep items in a bank, bring in colleagues' lists, plan a quiz and print it in even forms.\n" +
			"Start with 'evenhand demo' to see all of it on a small school, or with 'evenhand init'.\n" +
			"'evenhand help COMMAND' tells more about a command and gives an example.",
		Flags: []cli.Flag{bankFlag},
		Commands: []*cli.Command{
			skillsCommand(), standardsCommand(), demoCommand(),
			initCommand(), importCommand(), generateCommand(), listCommand(), showCommand(), reviseCommand(), retireCommand(),
			planCommand(), assembleCommand(), exportCommand(), tagCommand(),
			markCommand(), reportCommand(), calibrateCommand(),
			backupCommand(), checkCommand(),
		},
		Action:                    noCommand,
		OnUsageError:              onUsageError,
		DisableSliceFlagSeparator: true,
		ExitErrHandler:            func(*cli.Context, error) {},
		HideVersion:               true,
		CustomAppHelpTemplate:     appHelp,
	}
	for _, command := range app.Commands {
		command.OnUsageError = onUsageError
		command.CustomHelpTemplate = commandHelp
		command.HideHelpCommand = true
		for _, flag := range command.Flags {
			if yes, ok := flag.(*cli.BoolFlag); ok {
				yes.DisableDefaultText = true
			}
		}
	}
	return app
}

func onUsageError(c *cli.Context, err error, _ bool) error {
	if c.Command.Name == c.App.Name {
		return usagef("%v; see evenhand help", err)
	}
	return usagef("%v; see evenhand help %s", err, c.Command.Name)
}

// noCommand runs when the first argument is no command.
func noCommand(c *cli.Context) error {
	if !c.Args().Present() {
		return cli.ShowAppHelp(c)
	}
	var names []string
	for _, command := range c.App.Commands {
		names = append(names, command.Name)
	}
	typed := c.Args().First()
	if name, ok := standards.Nearest(typed, names); ok {
		return usagef("no command %q; did you mean %q? See evenhand help", typed, name)
	}
	return usagef("no command %q; evenhand help lists them all", typed)
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
