package main

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/assemble"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func printCommand() *cli.Command {
	return &cli.Command{
		Name: "print", Usage: "print a quiz that was given again: large, in Spanish, one form", ArgsUsage: "QUIZ --out DIR [options]",
		Description: "QUIZ is a quiz that the bank keeps, by its title, week or the beginning of its ID, or its folder. Its sheets and keys\n" +
			"come as they were given, with the very items as they stood then; options change the paper, the language or the print.\n\n" +
			"Example: evenhand print 2026-W48 --out friday-large --large --form B",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "out", Usage: "the new `DIR` to write into"},
			&cli.StringSliceFlag{Name: "form", Usage: "only this `FORM`; may be given again"},
		}, printFlags...),
		Action: printQuiz,
	}
}

func printQuiz(c *cli.Context) error {
	name, err := oneArgument(c, "QUIZ")
	if err != nil {
		return err
	}
	dir := c.String("out")
	if dir == "" {
		return usagef("say where to write: --out DIR")
	}
	if err := checkPrint(c); err != nil {
		return err
	}
	if exists(dir) {
		return fmt.Errorf("%s is there already; name a new folder", dir)
	}
	return readingBank(c, func(b *bank.Bank) error {
		kept, err := keptQuiz(c, b, name)
		if err != nil {
			return err
		}
		quiz, as := assemble.QuizOf(kept), printedAgain(c, kept.Printed)
		if quiz.Forms, err = wantedForms(c, quiz); err != nil {
			return err
		}
		if err := writeFolder(c, dir, func(write writing) error { return writeForms(c, quiz, as, write) }); err != nil {
			return err
		}
		say(c, "%s (%s) in %s", quiz.Title, quiz.Week, dir)
		return nil
	})
}

// wantedForms are those of --form, or all.
func wantedForms(c *cli.Context, quiz assemble.Quiz) ([]assemble.Form, error) {
	names := c.StringSlice("form")
	if len(names) == 0 {
		return quiz.Forms, nil
	}
	var forms []assemble.Form
	for _, name := range names {
		at := slices.IndexFunc(quiz.Forms, func(f assemble.Form) bool { return strings.EqualFold(f.Name, name) })
		if at < 0 {
			return nil, usagef("%s has no form %q; its forms are A to %s", quiz.Title, name, quiz.Forms[len(quiz.Forms)-1].Name)
		}
		forms = append(forms, quiz.Forms[at])
	}
	return forms, nil
}
