package desk

import (
	"bytes"
	"cmp"
	"mime"
	"path"
	"slices"
	"strings"
	"unicode"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/export/qti"
	"evenhand/assemble/followup"
	"evenhand/assemble/sheet"
	"evenhand/bank"
)

// printQuiz gives a form's sheet or key, the answers of all forms, or the quiz for other programs.
func printQuiz(v *visit) error {
	kept, err := v.quizAsked()
	if err != nil {
		return err
	}
	q := assemble.QuizOf(kept)
	o, err := v.sheetOptions()
	if err != nil {
		return err
	}
	var papers []sheet.Paper
	for _, form := range q.Forms {
		papers = append(papers, sheet.PaperOf(q, form, o.Lang))
	}
	name := inFileName(q.Title)
	var file bytes.Buffer
	what := v.PathValue("what")
	switch what {
	case "quiz.csv":
		err = export.WriteQuiz(&file, q)
	case "quiz.zip":
		err = writeQTI(&file, kept, o.Lang)
	case "letter.pdf":
		var letter followup.Letter
		if letter, err = followup.LetterOf([]bank.Quiz{kept}); err == nil {
			err = letter.Write(&file, []string{o.Lang, otherLanguage(o.Lang)}, o)
		}
	case "answers.pdf":
		err = sheet.WriteKeys(&file, papers, o)
	default:
		form, isSheet := strings.CutSuffix(what, ".pdf")
		form, o.Key = strings.CutSuffix(form, "-key")
		at := slices.IndexFunc(papers, func(p sheet.Paper) bool { return "form-"+p.Form == form })
		if at < 0 || !isSheet {
			return v.missing("fault.nothing")
		}
		err = sheet.WritePDF(&file, papers[at], o)
	}
	if err != nil {
		return err
	}
	return v.sendFile(&file, "inline", name+"-"+what)
}

// sheetOptions are what a form or an address says of the paper.
func (v *visit) sheetOptions() (sheet.Options, error) {
	o := sheet.Options{PaperSize: v.FormValue("paper"), Lang: v.FormValue("lang"), Large: v.FormValue("large") != ""}
	if err := o.Check(); err != nil {
		return o, asTyped(err)
	}
	return o, nil
}

// typesOfFiles are the media types of what can be sent, by the ending of its name.
var typesOfFiles = map[string]string{".csv": "text/csv; charset=utf-8", ".zip": "application/zip", ".pdf": "application/pdf"}

// mostNamed is how many letters of a title a file's name takes.
const mostNamed = 60

// inFileName is a title as a part of a file's name: its letters, digits and points, with strokes between them.
func inFileName(title string) string {
	words := strings.FieldsFunc(strings.ToLower(title), func(r rune) bool {
		return !unicode.In(r, unicode.Letter, unicode.Mark, unicode.Digit) && r != '.'
	})
	name := []rune(strings.Trim(strings.Join(words, "-"), ".-"))
	return cmp.Or(string(name[:min(len(name), mostNamed)]), "quiz")
}

// sendFile answers with a file, to be shown (inline) or kept (attachment) under its name.
func (v *visit) sendFile(file *bytes.Buffer, how, name string) error {
	v.w.Header().Set("Content-Type", typesOfFiles[path.Ext(name)])
	v.w.Header().Set("Content-Disposition", mime.FormatMediaType(how, map[string]string{"filename": name}))
	_, err := file.WriteTo(v.w)
	return err
}

// otherLanguage is the second one of a letter that speaks both.
func otherLanguage(lang string) string {
	if lang == "es" {
		return "en"
	}
	return "es"
}

// writeQTI writes the quiz as a package of the open standard QTI 3.0.
func writeQTI(file *bytes.Buffer, kept bank.Quiz, lang string) error {
	var table bytes.Buffer
	if err := export.WriteQuiz(&table, assemble.QuizOf(kept)); err != nil {
		return err
	}
	rows, err := export.ReadQuiz(&table)
	if err != nil {
		return err
	}
	items := map[string]bank.Item{}
	for _, form := range kept.Forms {
		for _, placed := range form.Items {
			items[placed.Item.ID] = placed.Item
		}
	}
	p, err := qti.OfQuiz(kept.Title, lang, rows, func(id string) (bank.Item, error) { return items[id], nil })
	if err != nil {
		return err
	}
	_, err = qti.Write(file, p, p.Sequence())
	return err
}
