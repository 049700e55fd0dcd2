package main

import (
	"fmt"
	"path/filepath"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

// assembleTerm makes a quiz for each week of a term, each in a folder of its own, named after its week.
func assembleTerm(c *cli.Context, path string) error {
	if weeks := c.Int("weeks"); weeks < 1 || weeks > plan.MaxWeeks {
		return usagef("--weeks is %d; a term has 1 to %d weeks", weeks, plan.MaxWeeks)
	}
	text, err := planText(c, path, true)
	if err != nil {
		return err
	}
	pacing, err := plan.ParsePacing(text, path)
	if err != nil {
		return err
	}
	if pacing.Weekly, err = amended(c, pacing.Weekly); err != nil {
		return err
	}
	options, err := assembleOptions(c)
	if err != nil {
		return err
	}
	if first, err := weekOf(c, "from-week"); err != nil {
		return err
	} else if first != "" {
		options.Week = first
	}
	aim, err := aimOf(c, pacing.Weekly)
	if err != nil {
		return err
	}
	return openForUse(c)(c, func(b *bank.Bank) error {
		if options, err = aim.at(c, b, options); err != nil {
			return err
		}
		uses := termUses(pacing, options.Week, c.Int("weeks"))
		for _, use := range uses {
			if err := mayFill(c, b, filepath.Join(c.String("out"), use.Week), use); err != nil {
				return err
			}
		}
		again, err := madeAgain(c, b, uses, pacing.Weekly.Class)
		if err != nil {
			return err
		}
		var term assemble.Term
		lacks := c.Int("weeks") * len(pacing.New) // each skill may lack in each week, and is told by itself
		err = filling(c, b, lacks, func() (err error) {
			term, err = assemble.AssembleTerm(c.Context, again.choose, pacing, c.Int("weeks"), options)
			return err
		})
		if err != nil {
			return err
		}
		return deliverTerm(c, b, again, term, string(text))
	})
}

// termUses are the quizzes of a term, by title and week.
func termUses(pacing plan.Pacing, first string, weeks int) (uses []bank.Use) {
	from, err := plan.ParseWeek(first)
	if err != nil || weeks < 1 || weeks > plan.MaxWeeks {
		return nil // the assembler says what is wrong
	}
	school := plan.SchoolWeeks(from, weeks, pacing.Skip)
	for i, plan := range pacing.Plans(weeks) {
		uses = append(uses, bank.Use{Quiz: plan.TitleFor(school[i].String()), Week: school[i].String()})
	}
	return uses
}

func readPacing(c *cli.Context, name string) (plan.Pacing, error) {
	text, err := planText(c, name, true)
	if err != nil {
		return plan.Pacing{}, err
	}
	return plan.ParsePacing(text, name)
}

func deliverTerm(c *cli.Context, b *bank.Bank, again again, term assemble.Term, pacing string) error {
	for i, quiz := range term.Quizzes {
		term.Quizzes[i] = sheet.WithChoices(quiz)
	}
	for _, quiz := range term.Quizzes {
		if err := writeQuizFiles(c, quiz, filepath.Join(c.String("out"), quiz.Week)); err != nil {
			return err
		}
	}
	for i, quiz := range term.Quizzes {
		if c.Bool("try") {
			break
		}
		about := bank.Quiz{Plan: pacing, PacingWeek: i + 1, Class: term.Plans[i].Class}
		if err := again.keep(b, givenNow(c, quiz, about)); err != nil {
			return fmt.Errorf("the quizzes are in %s, but that of week %s could not be noted in the bank: %w", c.String("out"), quiz.Week, err)
		}
	}
	if err := table(c.App.Writer, term.Table()); err != nil {
		return err
	}
	for _, quiz := range term.Quizzes {
		say(c, "%s: %s", quiz.Week, quiz.Verdict())
	}
	say(c, "%s in %s, each in a folder of its own", count(len(term.Quizzes), "week"), c.String("out"))
	return nil
}
