package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"evenhand/assemble"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/import/marks"

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
			&cli.StringSliceFlag{Name: "pupils", Usage: "also the whole class in one file, set.pdf, in the order of the " +
				"`CODES`, such as P01-P24, each with the form that the marks propose"},
			&cli.StringFlag{Name: "roster", Usage: "the same by your `FILE` of codes and names, with the names on the sheets; they are not kept"},
			codesFlag, classFlag,
		}, printFlags...),
		Before: together(
			only([]string{"pupils", "roster"}, "without pupils no class is seated", codesFlag.Name, classFlag.Name),
			onSheets, onStrips,
		),
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
	if err := errors.Join(checkPrint(c), folder.named(dir)); err != nil {
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
		set, err := classSet(c, quiz, results.QuizOf(kept), as.Lang)
		if err != nil {
			return err
		}
		err = writeFolder(c, dir, func(write writing) error {
			if err := writeForms(c, quiz, as, write); err != nil || len(set) == 0 {
				return err
			}
			return write("set.pdf", func(w io.Writer) error { return sheet.WriteSet(w, set, sheetOptions(as, false)) })
		})
		if err != nil {
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

// classSet are the sheets of a class in seating order, with the forms that grid and prompt propose, too;
// none where no pupils are named.
func classSet(c *cli.Context, quiz assemble.Quiz, asked results.Quiz, lang string) ([]sheet.Paper, error) {
	codes, err := namedPupils(c)
	if err != nil || len(codes) == 0 {
		return nil, err
	}
	roster, err := readRoster(c)
	if err != nil {
		return nil, err
	}
	var seated []marks.Seat
	err = withResults(c, bank.Options{}, func(s *results.Store) (err error) {
		seated, err = marks.SeatsIn(s, asked, c.String("class"), codes)
		return err
	})
	if err != nil {
		return nil, err
	}
	var seats []sheet.Seat
	for _, seat := range seated {
		seats = append(seats, sheet.Seat{Form: seat.Form, Pupil: or(roster.Names[seat.Pupil], seat.Pupil)})
	}
	return sheet.SetOf(quiz, seats, lang), nil
}
