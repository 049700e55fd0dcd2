package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"evenhand/assemble/followup"
	"evenhand/assemble/sheet"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func letterCommand() *cli.Command {
	return &cli.Command{
		Name: "letter", Usage: "print a page for families: what was practiced, what to try at home", ArgsUsage: "[QUIZ] --out FILE [options]",
		Description: "QUIZ is a quiz that the bank keeps, or a week such as 2026-W48, whose quizzes all count; without it the latest week.\n" +
			"One page, in English and Spanish: what was practiced and two things to try at home. It tells no score and names no child.\n\n" +
			"Example: evenhand letter 2026-W48 --out letter.pdf\n" +
			"         evenhand letter --out carta.pdf --lang es --large",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "out", Usage: "the `FILE` to write, a PDF"},
			&cli.StringFlag{Name: "lang", Usage: "`LANGUAGE`: both, en or es", Value: "both"},
			&cli.StringFlag{Name: "paper", Usage: "`SIZE` of the paper: letter or a4", Value: "letter"},
			&cli.BoolFlag{Name: "large", Usage: "large print"},
			&cli.BoolFlag{Name: "html", Usage: "also a page for a browser that prints the same, beside FILE with the ending .html"},
			overwriteFlag,
		},
		Action: writeLetter,
	}
}

func writeLetter(c *cli.Context) error {
	langs := map[string][]string{"both": {"en", "es"}, "en": {"en"}, "es": {"es"}}[c.String("lang")]
	options := sheet.Options{PaperSize: c.String("paper"), Large: c.Bool("large")}
	switch {
	case c.NArg() > 1:
		return usagef("name one quiz or week; put quotes around a title of several words")
	case c.NArg() == 1 && strings.TrimSpace(c.Args().First()) == "":
		return usagef("the name of the quiz or week is empty; leave it out for the latest week")
	case c.String("out") == "":
		return usagef("say where to write: --out FILE")
	case c.Bool("html") && filepath.Ext(c.String("out")) == ".html":
		return usagef("--out %s is for the PDF; give it the ending .pdf, and the page for a browser stands beside it", c.String("out"))
	case langs == nil:
		return usagef("no language %q for letters; write both, en or es", c.String("lang"))
	}
	if err := pdfFile.named(c.String("out")); err != nil {
		return err
	}
	if err := options.Check(); err != nil {
		return usagef("%v", err)
	}
	var quizzes []bank.Quiz
	err := readingBank(c, func(b *bank.Bank) (err error) {
		quizzes, err = weekQuizzes(c, b)
		return err
	})
	if err != nil {
		return err
	}
	letter, err := followup.LetterOf(quizzes)
	if err != nil {
		return err
	}
	out := c.String("out")
	page := strings.TrimSuffix(out, filepath.Ext(out)) + ".html"
	if c.Bool("html") { // both or none
		if err := guardOf(c, page).Check(page); err != nil {
			return cantWrite(c, page, err)
		}
	}
	if err := writeFile(c, out, func(w io.Writer) error { return letter.Write(w, langs, options) }); err != nil {
		return err
	}
	if c.Bool("html") {
		if err := writeFile(c, page, func(w io.Writer) error { return letter.WriteHTML(w, langs, options) }); err != nil {
			return err
		}
		out += " and " + page
	}
	say(c, "wrote %s, about %s", out, letter.Week)
	return nil
}

// weekQuizzes are the quiz named, or all of the week named, or of the latest week.
func weekQuizzes(c *cli.Context, b *bank.Bank) ([]bank.Quiz, error) {
	name := c.Args().First()
	all, err := b.Quizzes()
	if err != nil {
		return nil, err
	}
	all = slices.DeleteFunc(all, func(q bank.Quiz) bool { return q.TakenBack })
	wanted := weekNamed(name, all, func(q bank.Quiz) (title, week string) { return q.Title, q.Week })
	switch {
	case name != "" && wanted == "":
		quiz, err := keptQuiz(c, b, name)
		return []bank.Quiz{quiz}, err
	case name == "":
		for _, quiz := range all {
			wanted = max(wanted, quiz.Week)
		}
	}
	all = slices.DeleteFunc(all, func(q bank.Quiz) bool { return q.Week != wanted })
	if len(all) == 0 && name == "" {
		return nil, fmt.Errorf("no quiz was given yet; evenhand assemble makes one")
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("the bank keeps no quiz of %s; evenhand quizzes lists them", wanted)
	}
	return all, nil
}
