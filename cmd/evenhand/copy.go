package main

import (
	"errors"
	"fmt"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func copyCommand() *cli.Command {
	return &cli.Command{
		Name: "copy", Usage: "copy a bank to a new place, a file or a database", ArgsUsage: "FROM TO [--marks]",
		Description: "FROM and TO are each a file or postgres://HOST/DATABASE?bank=NAME. All of the bank with its history is copied, and\n" +
			"the copy compared, entry by entry, before it is done. At TO there must be no bank yet, and FROM stays as it is:\n" +
			"put it away afterwards, so that nobody goes on in the wrong one. The marks are copied with --marks only.\n\n" +
			"Example: evenhand copy demo/alder-hill.bank grade-2.bank --marks",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "marks", Usage: "copy the pupils' results, too"}},
		Action: copyBank,
	}
}

func copyBank(c *cli.Context) error {
	if c.NArg() != 2 {
		return usagef("name two banks: evenhand copy FROM TO")
	}
	from, to := c.Args().Get(0), c.Args().Get(1)
	if err := isThere(from); err != nil {
		return err
	}
	o := patient(c, bank.Options{ReadOnly: true})
	b, err := bank.Open(from, o) // says what is wrong if it is no bank
	if err != nil {
		return err
	}
	if err := b.Close(); err != nil {
		return err
	}
	entries, err := bank.Copy(from, to, o)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "copied %s to %s: %d entries, compared and equal\n", from, to, entries)
	marks := results.Path(from)
	s, err := results.Open(marks, o)
	switch {
	case errors.Is(err, results.ErrNone):
		return nil
	case err != nil:
		return inPartf("the bank is copied, but not its marks: %w", err)
	case !c.Bool("marks"):
		say(c, "its marks stay where they are; with --marks they are copied, too")
		return s.Close()
	}
	if err := s.Close(); err != nil {
		return err
	}
	if entries, err = bank.Copy(marks, results.Path(to), o); err != nil {
		return inPartf("the bank is copied, but not its marks: %w", err)
	}
	fmt.Fprintf(c.App.Writer, "copied its marks to %s: %d entries, compared and equal\n", results.Path(to), entries)
	return nil
}
