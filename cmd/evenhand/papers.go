package main

import (
	"fmt"
	"io"
	"path/filepath"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/sheet"
	"evenhand/bank/files"

	"github.com/urfave/cli/v2"
)

// printFlags say how sheets are printed.
var printFlags = []cli.Flag{
	&cli.StringFlag{Name: "paper", Usage: "`SIZE` of the paper: letter or a4", Value: "letter"},
	&cli.StringFlag{Name: "lang", Usage: "`LANGUAGE` of the sheets: en or es", Value: "en"},
	&cli.BoolFlag{Name: "large", Usage: "large print, 24 points"},
	&cli.IntFlag{Name: "columns", Usage: "at most this `MANY` items side by side, 1 or 2", Value: 2},
	&cli.BoolFlag{Name: "strips", Usage: "strips to cut apart, one form on each"},
}

func printOptions(c *cli.Context, key bool) sheet.Options {
	o := sheet.Options{PaperSize: c.String("paper"), Lang: c.String("lang"), Large: c.Bool("large"), Columns: c.Int("columns"), Key: key}
	if c.Bool("strips") {
		o.Layout = sheet.Strips
	}
	return o
}

// checkPrint refuses print options before any work is done.
func checkPrint(c *cli.Context) error {
	if err := printOptions(c, false).Check(); err != nil {
		return usagef("%v", err)
	}
	return nil
}

// paperOf is a form as the sheet package prints it.
func paperOf(quiz assemble.Quiz, form assemble.Form, lang string) sheet.Paper {
	paper := sheet.Paper{Title: quiz.Title, Form: form.Name, Week: quiz.Week}
	for _, placed := range form.Items {
		paper.Questions = append(paper.Questions, sheet.QuestionOf(placed.Item, placed.Number, lang))
	}
	return paper
}

// writeQuizFiles writes all files of a quiz into a folder, which appears with all of
// them or not at all. mayFill says whether it may be replaced.
func writeQuizFiles(c *cli.Context, quiz assemble.Quiz, dir string) error {
	return writeFolder(c, dir, func(write writing) error {
		if err := writeForms(c, quiz, write); err != nil {
			return err
		}
		if err := write("quiz.json", func(w io.Writer) error { return export.WriteQuizJSON(w, quiz) }); err != nil {
			return err
		}
		return write("quiz.csv", func(w io.Writer) error { return export.WriteQuiz(w, quiz) })
	})
}

// writing writes a file of a folder by its name.
type writing func(name string, write func(io.Writer) error) error

// writeFolder writes a folder for colleagues, which appears with all its files or not at all.
func writeFolder(c *cli.Context, dir string, fill func(writing) error) error {
	saySwept(c, filepath.Dir(dir))
	err := files.Folder(dir, func(dir string) error {
		return fill(func(name string, write func(io.Writer) error) error {
			return files.Write(filepath.Join(dir, name), files.Shared, write)
		})
	})
	if err != nil {
		return fmt.Errorf("can't write the quiz into %s: %w", dir, err)
	}
	return nil
}

// writeForms writes every form's sheet and key.
func writeForms(c *cli.Context, quiz assemble.Quiz, write writing) error {
	for _, form := range quiz.Forms {
		if err := writeForm(c, paperOf(quiz, form, c.String("lang")), write); err != nil {
			return err
		}
	}
	return nil
}

// writeForm writes a form's sheet and its key.
func writeForm(c *cli.Context, paper sheet.Paper, write writing) error {
	if err := sayUnprintable(c, paper); err != nil {
		return err
	}
	for _, key := range []bool{false, true} {
		name := "form-" + paper.Form + map[bool]string{true: "-key"}[key] + ".pdf"
		if err := write(name, func(w io.Writer) error { return sheet.WritePDF(w, paper, printOptions(c, key)) }); err != nil {
			return err
		}
	}
	return nil
}

// sayUnprintable warns of characters that the font does not have.
func sayUnprintable(c *cli.Context, paper sheet.Paper) error {
	missing, err := sheet.Unprintable(paper, printOptions(c, false))
	if err == nil && len(missing) > 0 {
		say(c, "form %s: the font has no %q; a question mark stands there", paper.Form, string(missing))
	}
	return err
}

// fileNames says what was written, in a few words.
func fileNames(quiz assemble.Quiz) string {
	last := quiz.Forms[len(quiz.Forms)-1].Name
	forms := "form-A.pdf and its key"
	if last != "A" {
		forms = fmt.Sprintf("form-A.pdf to form-%s.pdf and their keys", last)
	}
	return forms + ", quiz.csv, quiz.json"
}
