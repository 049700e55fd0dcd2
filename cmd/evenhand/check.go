package main

import (
	"fmt"

	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func checkCommand() *cli.Command {
	return &cli.Command{
		Name: "check", Usage: "prove the bank whole", ArgsUsage: "[--json]",
		Description: "Goes through the file's structure, every index and every item, and works out every key again.\n\nExample: evenhand check",
		Flags:       []cli.Flag{jsonFlag},
		Action:      checkBank,
	}
}

func checkBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	return readingBank(c, func(b *bank.Bank) error {
		report, err := b.Check()
		if err != nil {
			return err
		}
		if c.Bool("json") {
			if err := printJSON(c, report); err != nil {
				return err
			}
		} else {
			fmt.Fprintf(c.App.Writer, "%s, %s, %s\n", count(report.Items, "item"), count(report.Revisions, "revision"), count(report.Uses, "use"))
			for _, problem := range report.Problems {
				fmt.Fprintln(c.App.Writer, problem)
			}
		}
		if !report.Whole() {
			return fmt.Errorf("%s is not whole: %s; go back to a backup, or export what is readable with evenhand export", b.Path(), count(len(report.Problems)+report.More, "problem"))
		}
		say(c, "%s is whole", b.Path())
		return nil
	})
}
