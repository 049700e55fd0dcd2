package main

import (
	"errors"
	"fmt"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func checkCommand() *cli.Command {
	return &cli.Command{
		Name: "check", Usage: "look for damage in the bank and its marks", ArgsUsage: "[--json]",
		Description: "Goes through the files' structure, every index, every item, every use and every marked paper, and says of each\n" +
			"whether it is as it was written.\n\nExample: evenhand check",
		Flags:  []cli.Flag{jsonFlag},
		Action: checkBank,
	}
}

// checkedJSON is what check tells other programs.
type checkedJSON struct {
	bank.Report
	Marks        *results.Checked `json:"marks"` // null where nothing is marked
	MarksProblem string           `json:"marks_problem"`
}

func checkBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	sweepBeside(c, c.String("bank"))
	return readingBank(c, func(b *bank.Bank) error {
		report, err := b.Check()
		if err != nil {
			return err
		}
		marks, damage := checkMarks(c)
		if c.Bool("json") {
			if err := printJSON(c, checkedJSON{report, marks, messageOf(damage)}); err != nil {
				return err
			}
		} else {
			printChecked(c, report, marks)
		}
		if !report.Whole() {
			damage = errors.Join(fmt.Errorf("%s is damaged: %s; put a backup in its place with evenhand restore BACKUP, "+
				"or save what can be read with evenhand export FILE",
				b.Path(), count(len(report.Problems)+report.More, "problem")), damage)
		}
		if damage != nil {
			return damage
		}
		if report.Older > 0 {
			say(c, "%s worked out by another evenhand, which is no damage (evenhand refresh brings them along); one is %s", count(report.Older, "item"), report.Example)
		}
		say(c, "%s is undamaged%s", b.Path(), map[bool]string{true: ", and so are its marks"}[marks != nil])
		return nil
	})
}

// checkMarks looks through the marks beside the bank; nil where there are none.
func checkMarks(c *cli.Context) (*results.Checked, error) {
	s, err := results.Open(results.Path(c.String("bank")), patient(c, bank.Options{ReadOnly: true}))
	if errors.Is(err, results.ErrNone) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	found, err := s.Check()
	return &found, errors.Join(err, s.Close())
}

func printChecked(c *cli.Context, report bank.Report, marks *results.Checked) {
	fmt.Fprintf(c.App.Writer, "%s, %s, %s\n", count(report.Items, "item"), count(report.Revisions, "revision"), count(report.Uses, "use"))
	for _, problem := range report.Problems {
		fmt.Fprintln(c.App.Writer, problem)
	}
	switch {
	case marks == nil:
		fmt.Fprintln(c.App.Writer, "no marks")
	case marks.Quizzes == 1:
		fmt.Fprintf(c.App.Writer, "1 marked quiz, %s, %s\n", count(marks.Papers, "paper"), count(marks.Earlier, "earlier marking"))
	default:
		fmt.Fprintf(c.App.Writer, "%d marked quizzes, %s, %s\n", marks.Quizzes, count(marks.Papers, "paper"), count(marks.Earlier, "earlier marking"))
	}
}

func messageOf(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}
