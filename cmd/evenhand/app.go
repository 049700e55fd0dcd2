package main

import (
	"fmt"
	"io"

	"github.com/urfave/cli/v2"
)

// run is the whole program; it gives the exit code. Started from a file manager, it opens the desk.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	clicked := len(args) == 1 && doubleClicked()
	if clicked {
		args = append(args, "desk")
	}
	app := newApp()
	said := &plain{to: stderr}
	app.Reader, app.Writer, app.ErrWriter = stdin, &plain{to: stdout}, said
	defer stoppable(said)()
	err := app.Run(flagsFirst(app, args))
	if err == nil {
		return exitDone
	}
	code := exitCode(err)
	if message := inWords(err); message != "" {
		fmt.Fprintln(said, "evenhand: "+message)
		if clicked {
			_ = showTrouble(message) // there is nowhere else to say it
		}
	}
	if more := advice(err); more != "" {
		fmt.Fprintln(said, more)
	}
	return code
}

// newApp is the program's commands, in the order of a teacher's week.
func newApp() *cli.App {
	bank := *bankFlag // what a run finds in its environment stays its own
	app := &cli.App{
		Name:      "evenhand",
		Usage:     "a grade team's bank of mathematics items, and fair quizzes from it",
		UsageText: "evenhand [--bank FILE] COMMAND [options] [arguments]",
		Description: "Keep items in a bank, bring in colleagues' lists, plan a quiz and print it in even forms.\n" +
			"Start with 'evenhand demo' to try everything on a made-up school, or with 'evenhand init'.\n" +
			"'evenhand help COMMAND' tells more about a command and gives examples. They work as they stand in the folder where\n" +
			"'evenhand demo' was run, after: export EVENHAND_BANK=demo/alder-hill.bank EVENHAND_BY=MK",
		Flags: []cli.Flag{&bank},
		Commands: []*cli.Command{
			skillsCommand(), standardsCommand(), demoCommand(),
			initCommand(), importCommand(), listsCommand(), generateCommand(), listCommand(), showCommand(), reviseCommand(), reviewCommand(), retireCommand(),
			planCommand(), plansCommand(), assembleCommand(), quizzesCommand(), printCommand(), exportCommand(), tagCommand(),
			markCommand(), reportCommand(), practiceCommand(), letterCommand(), termCommand(), calibrateCommand(),
			unuseCommand(), forgetCommand(),
			backupCommand(), restoreCommand(), copyCommand(), checkCommand(), refreshCommand(), mergeCommand(), deskCommand(), serveCommand(),
			helpCommand(), completionCommand(), completeCommand(),
		},
		Action:                    noCommand,
		OnUsageError:              onUsageError,
		DisableSliceFlagSeparator: true,
		ExitErrHandler:            func(*cli.Context, error) {},
		HideHelpCommand:           true,
		Version:                   version(),
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

// noCommand runs when the first argument is no command.
func noCommand(c *cli.Context) error {
	if !c.Args().Present() {
		return cli.ShowAppHelp(c)
	}
	return unknownName(c.App, c.Args().First())
}
