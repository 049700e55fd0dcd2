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
	&cli.BoolFlag{Name: "large", Usage: "large print: all that a child reads 1.5 times as large"},
	&cli.IntFlag{Name: "columns", Usage: "at most this `MANY` items side by side, 1 or 2", Value: 2},
	&cli.BoolFlag{Name: "spaced", Usage: "one item below the other with more room between"},
	&cli.IntFlag{Name: "fewer", Usage: "print only this `MANY` items of each form, in the same balance", DefaultText: "all"},
	&cli.BoolFlag{Name: "aloud", Usage: "also what to read aloud, form-A-aloud.pdf"},
	&cli.BoolFlag{Name: "html", Usage: "also pages for a browser that print the same, form-A.html"},
	&cli.BoolFlag{Name: "strips", Usage: "strips to cut apart; several forms take turns in strips.pdf"},
}

func printOptions(c *cli.Context, key bool) sheet.Options {
	o := sheet.Options{PaperSize: c.String("paper"), Lang: c.String("lang"), Large: c.Bool("large"), Columns: c.Int("columns"), Spaced: c.Bool("spaced"), Key: key}
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
	if c.IsSet("fewer") && c.Int("fewer") < 1 {
		return usagef("--fewer is %d; a form keeps at least 1 item", c.Int("fewer"))
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

// writeForms writes every form's sheet and key, the answers of all forms in one file, and with --strips
// the forms by turns.
func writeForms(c *cli.Context, quiz assemble.Quiz, write writing) error {
	var papers []sheet.Paper
	for _, form := range quiz.Forms {
		if c.IsSet("fewer") {
			var err error
			if form, err = assemble.Fewer(form, c.Int("fewer")); err != nil {
				return err
			}
		}
		papers = append(papers, paperOf(quiz, form, c.String("lang")))
		sayOtherLanguage(c, form)
		if err := writeForm(c, papers[len(papers)-1], write); err != nil {
			return err
		}
	}
	if c.Bool("strips") && len(papers) > 1 {
		if err := write("strips.pdf", func(w io.Writer) error { return sheet.WriteStrips(w, papers, printOptions(c, false)) }); err != nil {
			return err
		}
	}
	return write("keys.pdf", func(w io.Writer) error { return sheet.WriteKeys(w, papers, printOptions(c, true)) })
}

// sayOtherLanguage names the items that a Spanish sheet has in English, as a colleague worded them there
// alone.
func sayOtherLanguage(c *cli.Context, form assemble.Form) {
	if c.String("lang") != "es" {
		return
	}
	for _, placed := range form.Items {
		if placed.Item.OwnWords("es") != "" && placed.Item.Wording["es"] == "" {
			say(c, "%s%d is printed in English, as its own words are in English only; evenhand revise %s --wording-es adds Spanish ones",
				form.Name, placed.Number, placed.Item.ID)
		}
	}
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
	if c.Bool("aloud") {
		if err := write("form-"+paper.Form+"-aloud.pdf", func(w io.Writer) error { return sheet.WriteScript(w, paper, printOptions(c, false)) }); err != nil {
			return err
		}
	}
	if !c.Bool("html") {
		return nil
	}
	return write("form-"+paper.Form+".html", func(w io.Writer) error { return sheet.WriteHTML(w, paper, printOptions(c, false)) })
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
	return forms + ", all answers in keys.pdf, quiz.csv, quiz.json"
}
