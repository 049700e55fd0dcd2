package main

import (
	"errors"
	"io"
	"iter"
	"os"
	"path/filepath"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/export/qti"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func exportCommand() *cli.Command {
	return &cli.Command{
		Name: "export", Usage: "write the whole bank as CSV, or a quiz for tests on a screen", ArgsUsage: "[FILE]\n       evenhand export --as qti [QUIZ] FILE.zip",
		Description: "As CSV it is one row an item, its history and uses aside; evenhand import reads it back. Without a file it\n" +
			"goes to stdout. As QTI, which is an open standard (QTI 3.0), it is a zip file that other programs read:\n" +
			"a test for each form of the QUIZ, by its title, week, the beginning of its ID or its folder, or without one\n" +
			"the bank's ready items alone. Hands to draw on a clock are left to a person to mark. Nothing about pupils is in either.\n\n" +
			"Example: evenhand export our-items.csv\n" +
			"         evenhand export --as qti demo/friday friday.zip",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "as", Usage: "the `FORMAT`: csv or qti", Value: "csv"},
			&cli.StringFlag{Name: "lang", Usage: "with --as qti: the `LANGUAGE` of the questions, en or es", Value: "en"},
			overwriteFlag,
		},
		Action: exportItems,
	}
}

func exportItems(c *cli.Context) error {
	switch as, lang := c.String("as"), c.String("lang"); {
	case lang != "en" && lang != "es":
		return usagef("--lang is %q; it can be en or es", lang)
	case as == "qti":
		return exportQTI(c)
	case as != "csv":
		return usagef("--as is %q; it can be csv or qti", as)
	case c.IsSet("lang"):
		return usagef("--lang goes with --as qti; CSV has the questions in all their languages")
	}
	return exportBank(c)
}

func exportBank(c *cli.Context) error {
	if c.NArg() > 1 {
		return usagef("export takes one FILE, but got %d", c.NArg())
	}
	path := c.Args().First()
	toStdout := path == "" || path == "-"
	if toStdout && c.Bool(overwriteFlag.Name) {
		return usagef("--overwrite goes with a file: evenhand export FILE --overwrite")
	}
	if err := csvFile.named(path); err != nil {
		return err
	}
	return readingBank(c, func(b *bank.Bank) error {
		write := func(w io.Writer) error { return export.WriteBank(w, b.Find(bank.Query{})) }
		if toStdout {
			return write(c.App.Writer)
		}
		if err := writeFile(c, path, func(w io.Writer) error { return errors.Join(markUTF8(w), write(w)) }); err != nil {
			return err
		}
		say(c, "wrote %s", path)
		return nil
	})
}

// markUTF8 begins a CSV file with a byte order mark, without which spreadsheets take the ñ of
// Año for two other letters.
func markUTF8(w io.Writer) error {
	_, err := io.WriteString(w, "\ufeff")
	return err
}

func exportQTI(c *cli.Context) error {
	if c.NArg() < 1 || c.NArg() > 2 {
		return usagef("say what to write and where: export --as qti QUIZ FILE.zip, or export --as qti FILE.zip for the whole bank")
	}
	path := c.Args().Get(c.NArg() - 1)
	if err := zipFile.named(path); err != nil {
		return err
	}
	return readingBank(c, func(b *bank.Bank) error {
		p, items, err := packageOf(c, b)
		if err != nil {
			return err
		}
		var n qti.Count
		err = writeFile(c, path, func(w io.Writer) (err error) {
			n, err = qti.Write(w, p, items)
			return err
		})
		if err != nil {
			return err
		}
		say(c, "wrote %s: %s, %s", path, count(len(p.Tests), "test"), count(n.Items, "item"))
		if n.ByPerson > 0 {
			say(c, "%s for a person to mark, such as hands to draw on a clock: a machine can't judge them", count(n.ByPerson, "item"))
		}
		return nil
	})
}

// packageOf is the quiz, or else the bank's ready items.
func packageOf(c *cli.Context, b *bank.Bank) (qti.Package, iter.Seq2[qti.Item, error], error) {
	if c.NArg() == 2 {
		p, err := quizPackage(c, b, c.Args().First())
		return p, p.Sequence(), err
	}
	p := qti.Package{Title: bank.NameOf(c.String("bank")), Lang: c.String("lang")}
	return p, qti.OfBank(b.Find(bank.Query{Standings: []bank.Standing{bank.Ready}}), p.Lang), nil
}

// quizPackage is a quiz as the bank keeps it, or reads it from its folder or quiz.csv and its items from the bank.
func quizPackage(c *cli.Context, b *bank.Bank, path string) (qti.Package, error) {
	if !isQuizFolder(path) {
		kept, err := keptQuiz(c, b, path)
		if err != nil {
			return qti.Package{}, err
		}
		quiz := assemble.QuizOf(kept)
		return qti.OfQuiz(quiz.Title, c.String("lang"), export.QuizRows(quiz), b.Get)
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		path = filepath.Join(path, "quiz.csv")
	}
	rows, err := export.ReadQuizFile(path)
	if err != nil {
		return qti.Package{}, err
	}
	return qti.OfQuiz(export.Title(path), c.String("lang"), rows, b.Get)
}
