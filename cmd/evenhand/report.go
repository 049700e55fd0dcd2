package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"evenhand/bank"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func reportCommand() *cli.Command {
	return &cli.Command{
		Name: "report", Usage: "show what the marked papers tell, for teaching", ArgsUsage: "[QUIZ ...] [--csv TABLE | --html FILE]",
		Description: "QUIZ is the folder of a quiz, its quiz.csv, or a week such as 2026-W48; without any, all marked quizzes count.\n" +
			"It shows who could work together on what, each pupil's weeks, the class by skill, the items from easiest to\n" +
			"hardest and the standards so far. --html writes one page with pictures, to look at or print. --roster shows names\n" +
			"beside the codes on the screen only.\n\n" + report.Caution + "\n\n" +
			"Example: evenhand report 2026-W48 --html friday.html\n" +
			"         evenhand report --csv items --out items.csv",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "csv", Usage: "print one `TABLE` as CSV: " + strings.Join(report.Tables(), ", ")},
			&cli.StringFlag{Name: "out", Usage: "with --csv: write the table to `FILE`, which only you can read"},
			&cli.StringFlag{Name: "html", Usage: "write one page with pictures to `FILE`"},
			&cli.StringFlag{Name: "roster", Usage: "show names from your `FILE` of codes and names; they are not kept"},
			classFlag, overwriteFlag,
		},
		Before: together(
			either("csv", "html"),
			apart("csv", "names are shown on the screen only", "roster"),
			apart("html", "names are shown on the screen only", "roster"),
			only([]string{"csv"}, "it is for a table; --html FILE writes a page", "out"),
			only([]string{"out", "html"}, "nothing else is written", overwriteFlag.Name),
		),
		Action: showReport,
	}
}

func showReport(c *cli.Context) error {
	if _, err := choice(c, "csv", report.Tables()); err != nil {
		return err
	}
	if err := errors.Join(csvFile.named(c.String("out")), webPage.named(c.String("html"))); err != nil {
		return err
	}
	roster, err := readRoster(c)
	if err != nil {
		return err
	}
	quizzes, papers, err := shownPapers(c)
	if err != nil {
		return err
	}
	if quizzes, err = chosenQuizzes(c, quizzes); err != nil {
		return err
	}
	if papers, err = papersOfClass(c, papers); err != nil {
		return err
	}
	r := report.Of(quizzes, papers)
	r.Names = roster.Names
	switch {
	case c.String("csv") != "" && c.String("out") != "":
		table := func(w io.Writer) error { return r.WriteCSV(w, c.String("csv")) }
		if err := writePrivate(c, c.String("out"), table); err != nil {
			return err
		}
		say(c, "wrote %s", c.String("out"))
		return nil
	case c.String("csv") != "":
		return r.WriteCSV(c.App.Writer, c.String("csv"))
	case c.String("html") != "":
		if err := writePrivate(c, c.String("html"), r.WriteHTML); err != nil {
			return err
		}
		say(c, "wrote %s: %s", c.String("html"), r.Title())
		return nil
	}
	return printReport(c.App.Writer, r)
}

// shownPapers are allPapers, with the looks in which the bank says that the quizzes were given.
func shownPapers(c *cli.Context) (quizzes []results.Quiz, papers []results.Paper, err error) {
	if quizzes, papers, err = allPapers(c); err != nil {
		return nil, nil, err
	}
	err = readingBank(c, func(b *bank.Bank) error {
		given, err := b.Quizzes()
		quizzes = results.ShownAs(quizzes, given)
		return err
	})
	return quizzes, papers, err
}

// papersOfClass are the papers of --class, of which there is at least one; all without it.
func papersOfClass(c *cli.Context, all []results.Paper) ([]results.Paper, error) {
	if !c.IsSet("class") {
		return all, nil
	}
	class := strings.TrimSpace(c.String("class"))
	own := slices.DeleteFunc(all, func(p results.Paper) bool { return p.Class != class })
	if len(own) == 0 {
		return nil, fmt.Errorf("no papers of class %q have been marked yet; leave off --class to see all", class)
	}
	return own, nil
}

// chosenQuizzes are the quizzes named on the line; all without any.
func chosenQuizzes(c *cli.Context, all []results.Quiz) ([]results.Quiz, error) {
	if !c.Args().Present() {
		return all, nil
	}
	chosen := map[string]bool{}
	for _, name := range c.Args().Slice() {
		wanted, err := quizNamed(c, name, all)
		if err != nil {
			return nil, err
		}
		some := slices.DeleteFunc(slices.Clone(all), func(q results.Quiz) bool { return !wanted(q) })
		if len(some) == 0 {
			return nil, fmt.Errorf("no papers of %s have been marked yet; evenhand mark %s --out marks.csv makes a grid to fill in", name, inShell(name))
		}
		for _, quiz := range some {
			chosen[quiz.ID] = true
		}
	}
	return slices.DeleteFunc(all, func(q results.Quiz) bool { return !chosen[q.ID] }), nil
}

// quizNamed is a test for the quizzes that a folder, a quiz.csv, a week or a title names.
func quizNamed(c *cli.Context, name string, all []results.Quiz) (func(results.Quiz) bool, error) {
	week := weekNamed(name, all, func(q results.Quiz) (title, week string) { return q.Title, q.Week })
	if week != "" {
		return func(q results.Quiz) bool { return q.Week == week }, nil
	}
	quiz, err := givenQuiz(c, name)
	return func(q results.Quiz) bool { return q.ID == quiz.ID }, err
}

func printReport(w io.Writer, r *report.Report) error {
	fmt.Fprintln(w, r.Title())
	for _, section := range r.Sections() {
		fmt.Fprintf(w, "\n%s\n", section.Title)
		if section.Note != "" {
			fmt.Fprintln(w, section.Note)
		}
		rows := section.Rows
		if len(rows) == 1 {
			rows = append(rows, []string{"none"})
		}
		if len(rows[0]) == 0 {
			rows = rows[1:]
		}
		if err := table(w, rows); err != nil {
			return err
		}
	}
	return nil
}
