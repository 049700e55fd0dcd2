package main

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"strings"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"
)

// yesFlag answers the question that a command would ask.
var yesFlag = &cli.BoolFlag{Name: "yes", Usage: "don't ask, do it"}

func forgetCommand() *cli.Command {
	return &cli.Command{
		Name: "forget", Usage: "remove all results of a pupil", ArgsUsage: "PUPIL [--yes]",
		Description: "Removes every marked paper of the pupil, earlier markings and the place in the class list included, and says what\n" +
			"that was. It can't be undone. Backups, grids and reports made before still hold them. A merge of a colleague's\n" +
			"marks doesn't bring them back, unless you ask for it.\n\n" +
			"Example: evenhand forget P07 --yes",
		Flags:  []cli.Flag{yesFlag},
		Action: forgetPupil,
	}
}

func forgetPupil(c *cli.Context) error {
	text, err := oneArgument(c, "PUPIL")
	if err != nil {
		return err
	}
	pupil, err := results.ParseCode(text)
	if err != nil {
		return usagef("%v", err)
	}
	var held []results.Forgotten
	err = withResults(c, bank.Options{ReadOnly: true}, func(s *results.Store) error {
		held, err = s.Of(pupil)
		return err
	})
	if err != nil {
		return err
	}
	if len(held) == 0 {
		return fmt.Errorf("nothing is kept of %s", pupil)
	}
	if err := confirmed(c, fmt.Sprintf("Remove %s for good?", forgottenInWords(pupil, held))); err != nil {
		return err
	}
	held, err = results.Forget(results.Path(c.String("bank")), pupil, now(), patient(c, bank.Options{}))
	if err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "removed %s\n", forgottenInWords(pupil, held))
	if bank.InDatabase(c.String("bank")) {
		say(c, "the database's own backups and logs may hold them for a while; ask who keeps it")
	}
	say(c, "backups of the marks, grids and reports that were made before still hold results of %s: remove or make those anew, too", pupil)
	return nil
}

func forgottenInWords(pupil string, held []results.Forgotten) string {
	var parts []string
	for _, f := range held {
		part := fmt.Sprintf("%s and %s", count(f.Papers, "paper"), count(f.Earlier, "earlier marking"))
		if f.Class != "" {
			part += " in class " + f.Class
		}
		parts = append(parts, part)
	}
	return pupil + "'s " + strings.Join(parts, ", ")
}

// confirmed asks at a terminal; elsewhere --yes must be given.
func confirmed(c *cli.Context, question string) error {
	if c.Bool(yesFlag.Name) {
		return nil
	}
	file, ok := c.App.Reader.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return usagef("%s Say so with --yes; nothing was changed", question)
	}
	fmt.Fprintf(c.App.ErrWriter, "%s [y/N] ", question)
	line, err := bufio.NewReader(file).ReadString('\n')
	if err != nil || !strings.HasPrefix(strings.ToLower(strings.TrimSpace(line)), "y") {
		return errors.New("nothing was changed")
	}
	return nil
}
