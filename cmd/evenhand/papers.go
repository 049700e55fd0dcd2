package main

import (
	"fmt"
	"io"
	"path/filepath"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/followup"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/files"

	"github.com/urfave/cli/v2"
)

// printFlags say how sheets are printed.
var printFlags = []cli.Flag{
	&cli.StringFlag{Name: "paper", Usage: "`SIZE` of the paper: letter or a4", Value: "letter"},
	&cli.StringFlag{Name: "lang", Usage: "`LANGUAGE` of the sheets: en or es", Value: "en"},
	&cli.BoolFlag{Name: "both", Usage: "English, and below it Spanish, on each sheet"},
	&cli.BoolFlag{Name: "large", Usage: "large print: all that a child reads 1.5 times as large"},
	&cli.IntFlag{Name: "columns", Usage: "at most `N` items side by side, 1 or 2", Value: 2},
	&cli.BoolFlag{Name: "spaced", Usage: "one item below the other with more room between"},
	&cli.IntFlag{Name: "fewer", Usage: "print only `N` items of each form, in the same balance", DefaultText: "all"},
	&cli.BoolFlag{Name: "aloud", Usage: "also what to read aloud, form-A-aloud.pdf"},
	&cli.BoolFlag{Name: "html", Usage: "also pages for a browser that print the same, form-A.html"},
	&cli.BoolFlag{Name: "strips", Usage: "strips to cut apart; several forms take turns in strips.pdf"},
}

// On sheets of all kinds, and on strips, these options would say nothing beside others.
var (
	onSheets = rules(
		apart("both", "that prints English and Spanish", "lang"),
		apart("spaced", "that has one item below the other", "columns"),
	)
	onStrips = apart("strips", "strips are set as close as they can be", "columns", "spaced")
)

// printedAs is how the command line wants sheets printed.
func printedAs(c *cli.Context) bank.Printed {
	return bank.Printed{
		Paper: c.String("paper"), Lang: c.String("lang"), Large: c.Bool("large"), Columns: c.Int("columns"),
		Both: c.Bool("both"), Spaced: c.Bool("spaced"), Fewer: c.Int("fewer"), Aloud: c.Bool("aloud"), HTML: c.Bool("html"), Strips: c.Bool("strips"),
	}
}

// printedAgain is the same for a quiz that was given: what the command line leaves open is as it was.
func printedAgain(c *cli.Context, before *bank.Printed) bank.Printed {
	again := printedAs(c)
	if before == nil {
		return again
	}
	unlessSaid(c, "paper", &again.Paper, before.Paper)
	if !again.Both {
		unlessSaid(c, "lang", &again.Lang, before.Lang)
	}
	if !c.IsSet("lang") { // said, one language is wanted
		unlessSaid(c, "both", &again.Both, before.Both)
	}
	unlessSaid(c, "large", &again.Large, before.Large)
	unlessSaid(c, "columns", &again.Columns, before.Columns)
	if !c.IsSet("columns") { // said, items may stand side by side
		unlessSaid(c, "spaced", &again.Spaced, before.Spaced)
	}
	unlessSaid(c, "fewer", &again.Fewer, before.Fewer)
	unlessSaid(c, "aloud", &again.Aloud, before.Aloud)
	unlessSaid(c, "html", &again.HTML, before.HTML)
	if !c.IsSet("columns") && !c.IsSet("spaced") { // said, whole pages are wanted
		unlessSaid(c, "strips", &again.Strips, before.Strips)
	}
	return again
}

// unlessSaid puts the value from before where the command line leaves the flag off.
func unlessSaid[T any](c *cli.Context, flag string, value *T, before T) {
	if !c.IsSet(flag) {
		*value = before
	}
}

func sheetOptions(p bank.Printed, key bool) sheet.Options {
	o := sheet.Options{PaperSize: p.Paper, Lang: p.Lang, Both: p.Both, Large: p.Large, Columns: p.Columns, Spaced: p.Spaced, Key: key}
	if p.Strips {
		o.Layout = sheet.Strips
	}
	return o
}

// checkPrint refuses print options before any work is done.
func checkPrint(c *cli.Context) error {
	if err := sheetOptions(printedAs(c), false).Check(); err != nil {
		return usagef("%v", err)
	}
	if c.IsSet("fewer") && c.Int("fewer") < 1 {
		return usagef("--fewer is %d; a form keeps at least 1 item", c.Int("fewer"))
	}
	return nil
}

// writeQuizFiles writes all files of a quiz into a folder, which appears with all of
// them or not at all. mayFill says whether it may be replaced.
func writeQuizFiles(c *cli.Context, quiz assemble.Quiz, dir string) error {
	return writeFolder(c, dir, func(write writing) error {
		if err := writeForms(c, quiz, printedAs(c), write); err != nil {
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

// writeFolder writes a folder for colleagues, but for what has pupils' codes, which appears with all its files or not at all.
func writeFolder(c *cli.Context, dir string, fill func(writing) error) error {
	saySwept(c, filepath.Dir(dir))
	err := files.Folder(dir, func(dir string) error {
		return fill(func(name string, write func(io.Writer) error) error {
			mode := files.Shared
			if followup.Private(name) { // with pupils' codes
				mode = files.Private
			}
			return files.Write(filepath.Join(dir, name), mode, write)
		})
	})
	if err != nil {
		return fmt.Errorf("nothing was written into %s: %w", dir, err)
	}
	return nil
}

// writeForms writes every form's sheet and key, the answers of all forms in one file, and with --strips
// the forms by turns.
func writeForms(c *cli.Context, quiz assemble.Quiz, as bank.Printed, write writing) error {
	var papers []sheet.Paper
	for _, form := range quiz.Forms {
		if as.Fewer > 0 {
			var err error
			if form, err = assemble.Fewer(form, as.Fewer); err != nil {
				return err
			}
		}
		papers = append(papers, sheet.PaperOf(quiz, form, as.Lang))
		sayOtherLanguage(c, form, as)
		if err := writeForm(c, papers[len(papers)-1], as, write); err != nil {
			return err
		}
	}
	if as.Strips && len(papers) > 1 {
		if err := write("strips.pdf", func(w io.Writer) error { return sheet.WriteStrips(w, papers, sheetOptions(as, false)) }); err != nil {
			return err
		}
	}
	return write("keys.pdf", func(w io.Writer) error { return sheet.WriteKeys(w, papers, sheetOptions(as, true)) })
}

// sayOtherLanguage names the items that a sheet with Spanish has in English only, as a colleague worded them there
// alone.
func sayOtherLanguage(c *cli.Context, form assemble.Form, as bank.Printed) {
	if as.Lang != "es" && !as.Both {
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
func writeForm(c *cli.Context, paper sheet.Paper, as bank.Printed, write writing) error {
	if err := sayUnprintable(c, paper, as); err != nil {
		return err
	}
	for _, key := range []bool{false, true} {
		name := "form-" + paper.Form + map[bool]string{true: "-key"}[key] + ".pdf"
		if err := write(name, func(w io.Writer) error { return sheet.WritePDF(w, paper, sheetOptions(as, key)) }); err != nil {
			return err
		}
	}
	if as.Aloud {
		if err := write("form-"+paper.Form+"-aloud.pdf", func(w io.Writer) error { return sheet.WriteScript(w, paper, sheetOptions(as, false)) }); err != nil {
			return err
		}
	}
	if !as.HTML {
		return nil
	}
	return write("form-"+paper.Form+".html", func(w io.Writer) error { return sheet.WriteHTML(w, paper, sheetOptions(as, false)) })
}

// sayUnprintable warns of characters that the font does not have.
func sayUnprintable(c *cli.Context, paper sheet.Paper, as bank.Printed) error {
	missing, err := sheet.Unprintable(paper, sheetOptions(as, false))
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
