package followup

import (
	"fmt"
	"io"
	"strings"

	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/evidence/report"
)

// TeacherFile is the file of the teacher's page, and teacherHTML the same for a browser.
const (
	TeacherFile = "teacher.pdf"
	teacherHTML = "teacher.html"
)

// Private says that a file of a set has pupils' codes: only its owner may read it.
func Private(name string) bool { return name == TeacherFile || name == teacherHTML }

// both is a text in English and Spanish.
type both struct{ en, es string }

func (t both) in(lang string) string {
	if lang == "es" {
		return t.es
	}
	return t.en
}

var (
	practiceTitle  = both{"Practice %s", "Práctica %s"}
	recheckTitle   = both{"Three to show it %s", "Tres para mostrarlo %s"}
	mixedTitle     = both{"Practice", "Práctica"}
	extensionTitle = both{"More to think about", "Para pensar más"}
	ownProblem     = both{
		"Write a problem of your own that is like one of these. Solve it. Then trade with a partner.",
		"Inventa un problema parecido a uno de estos. Resuélvelo. Luego intercámbialo con alguien de tu clase."}
)

// paper is the sheet as it is printed in a language.
func (s Sheet) paper(lang string) sheet.Paper {
	p := paperOf(s.Items, lang)
	p.Example = s.Example
	switch s.Kind {
	case Mixed:
		p.Title = mixedTitle.in(lang)
	case Extension:
		p.Title, p.Closing = extensionTitle.in(lang), ownProblem.in(lang)
	default:
		p.Title = fmt.Sprintf(practiceTitle.in(lang), s.number())
	}
	return p
}

// recheck is the three items of Wednesday.
func (s Sheet) recheck(lang string) sheet.Paper {
	p := paperOf(s.Recheck, lang)
	p.Title = strings.TrimSpace(fmt.Sprintf(recheckTitle.in(lang), s.number()))
	return p
}

// number is the number of a group; empty for other sheets.
func (s Sheet) number() string {
	number, _ := strings.CutPrefix(s.Name, "group-")
	if s.Kind != ForGroup {
		return ""
	}
	return number
}

func paperOf(items []bank.Item, lang string) (p sheet.Paper) {
	for i, item := range items {
		p.Questions = append(p.Questions, sheet.QuestionOf(item, i+1, lang))
	}
	return p
}

// Also is what is written beside the sheets.
type Also struct {
	Aloud  bool // what to read aloud
	HTML   bool // pages for a browser
	Strips bool // rechecks as strips to cut apart
	Class  bool // a copy of each sheet for each of its pupils in one file to print, and the rechecks likewise
}

// The files of the whole class: what is worked on on Monday, and the rechecks of Wednesday.
const (
	mondayFile    = "all-monday.pdf"
	wednesdayFile = "all-wednesday.pdf"
)

// Write writes the files of a set: each sheet and its recheck, and the teacher's page.
func (s Set) Write(write func(name string, write func(io.Writer) error) error, o sheet.Options, also Also) error {
	for _, one := range s.Sheets {
		if err := writePaper(write, one.Name, s.dated(one.paper(o.Lang)), o, also); err != nil {
			return err
		}
		if len(one.Recheck) == 0 {
			continue
		}
		recheck, as := s.dated(one.recheck(o.Lang)), o
		if also.Strips {
			strips := o
			strips.Layout = sheet.Strips
			if _, err := sheet.PageCount(recheck, strips); err == nil { // tall items don't fit on strips
				as = strips
			}
		}
		if err := writePaper(write, one.Name+"-recheck", recheck, as, also); err != nil {
			return err
		}
	}
	if also.Class {
		if err := s.writeClass(write, o); err != nil {
			return err
		}
	}
	page, as := s.teacherPage(o.Lang), teacherOptions(o)
	err := write(TeacherFile, func(w io.Writer) error { return sheet.WriteText(w, page, as) })
	if err == nil && also.HTML {
		err = write(teacherHTML, func(w io.Writer) error { return sheet.WriteTextHTML(w, page, as) })
	}
	return err
}

// writeClass writes a copy of each sheet for each of its pupils, sheet by sheet, and the same of the rechecks.
func (s Set) writeClass(write func(string, func(io.Writer) error) error, o sheet.Options) error {
	var monday, wednesday []sheet.Paper
	for _, one := range s.Sheets {
		for range one.Pupils {
			monday = append(monday, s.dated(one.paper(o.Lang)))
			if len(one.Recheck) > 0 {
				wednesday = append(wednesday, s.dated(one.recheck(o.Lang)))
			}
		}
	}
	for _, file := range []struct {
		name   string
		papers []sheet.Paper
	}{{mondayFile, monday}, {wednesdayFile, wednesday}} {
		if len(file.papers) == 0 {
			continue
		}
		if err := write(file.name, func(w io.Writer) error { return sheet.WriteSet(w, file.papers, o) }); err != nil {
			return err
		}
	}
	return nil
}

func (s Set) dated(p sheet.Paper) sheet.Paper {
	p.Week = s.Week
	return p
}

func writePaper(write func(string, func(io.Writer) error) error, name string, p sheet.Paper, o sheet.Options, also Also) error {
	err := write(name+".pdf", func(w io.Writer) error { return sheet.WritePDF(w, p, o) })
	if err == nil && also.Aloud {
		err = write(name+"-aloud.pdf", func(w io.Writer) error { return sheet.WriteScript(w, p, o) })
	}
	if err == nil && also.HTML {
		err = write(name+".html", func(w io.Writer) error { return sheet.WriteHTML(w, p, o) })
	}
	return err
}

// teacherOptions are the paper of the teacher's page, in usual print.
func teacherOptions(o sheet.Options) sheet.Options {
	return sheet.Options{PaperSize: o.PaperSize, Lang: o.Lang, Font: o.Font}
}

// What the teacher's page says.
var (
	teacherTitle = both{"%s, %s, after %s", "%s, %s, después de %s"}
	recheckNote  = both{
		"A recheck is three items near the quiz, for Wednesday. " +
			"Where the same slip shows again, sit with the child over one item; three items prove nothing.",
		"Una comprobación son tres ejercicios parecidos a los de la prueba, para el miércoles. " +
			"Si se ve el mismo error otra vez, siéntese con el niño con un solo ejercicio; tres no prueban nada."}
	sheetsNote = both{
		"No sheet names a pupil or says why it was given. None of the items stood in the quiz.",
		"Ninguna hoja nombra a un alumno ni dice por qué se dio. Ninguno de los ejercicios estuvo en la prueba."}
	aimedNote = both{
		"The items are aimed at the class as its papers show it: %s (by %d answers of %d pupils).",
		"Los ejercicios se eligieron para el grupo como lo muestran sus pruebas: %s (por %d respuestas de %d alumnos)."}
	pupilsLine  = both{"Pupils: %s", "Alumnos: %s"}
	whyLine     = both{"Why: %s.", "Por qué: %s."}
	beginLine   = both{"To begin: %s.", "Para empezar: %s."}
	answersTo   = both{"Answers to %s", "Respuestas de %s"}
	sheetNumber = both{"Sheet %s: %s", "Hoja %s: %s"}
	noSheet     = both{"No sheet", "Sin hoja"}
	absentNote  = both{
		"Pupils: %s: too few answers to tell; work with them as you know them.",
		"Alumnos: %s: muy pocas respuestas para saber; trabaje con ellos según los conoce."}
)

// kindsSaid are the sheets that are for no group.
var kindsSaid = map[Kind]struct{ name, title, why both }{
	Mixed: {both{"Mixed", "Mixta"}, both{"what was missed most", "lo que más se falló"},
		both{"answers were missed without one pattern", "hubo errores sin un mismo patrón"}},
	Extension: {both{"Extension", "Ampliación"}, both{"more to think about", "para pensar más"},
		both{"three in four answers right or more", "tres de cada cuatro respuestas correctas o más"}},
}

// teacherPage says who could work on which sheet, why, and what is right.
func (s Set) teacherPage(lang string) sheet.Text {
	about := both{s.About, s.aboutSpanish}.in(lang)
	t := sheet.Text{
		Title: fmt.Sprintf(teacherTitle.in(lang), strings.TrimSpace(fmt.Sprintf(practiceTitle.in(lang), s.Class)), s.Week, about),
		Notes: []string{report.CautionIn(lang), sheetsNote.in(lang), recheckNote.in(lang)},
	}
	if s.Level != nil {
		t.Notes = append(t.Notes, fmt.Sprintf(aimedNote.in(lang), s.Level.WordsIn(lang), s.Level.Answers, s.Level.Pupils))
	}
	for _, one := range s.Sheets {
		told := one.in(lang)
		part := sheet.TextPart{Heading: one.heading(lang), Lines: []string{fmt.Sprintf(pupilsLine.in(lang), one.codes(lang))}}
		if told.Why != "" {
			part.Lines = append(part.Lines, fmt.Sprintf(whyLine.in(lang), told.Why))
		}
		if told.Next != "" {
			part.Lines = append(part.Lines, fmt.Sprintf(beginLine.in(lang), told.Next))
		}
		part.Answers = []sheet.Paper{answersOf(one.Name, one.paper(lang), lang)}
		if len(one.Recheck) > 0 {
			part.Answers = append(part.Answers, answersOf(one.Name+"-recheck", one.recheck(lang), lang))
		}
		t.Parts = append(t.Parts, part)
	}
	if len(s.Absent) > 0 {
		line := fmt.Sprintf(absentNote.in(lang), strings.Join(s.Absent, ", "))
		t.Parts = append(t.Parts, sheet.TextPart{Heading: noSheet.in(lang), Lines: []string{line}})
	}
	return t
}

func answersOf(file string, p sheet.Paper, lang string) sheet.Paper {
	p.Title = fmt.Sprintf(answersTo.in(lang), file)
	return p
}

// in is what is said of a sheet in a language.
func (s Sheet) in(lang string) report.Told {
	if said, ok := kindsSaid[s.Kind]; ok {
		return report.Told{Title: said.title.in(lang), Why: said.why.in(lang)}
	}
	return s.group.In(lang)
}

// heading names a sheet for the teacher.
func (s Sheet) heading(lang string) string {
	if said, ok := kindsSaid[s.Kind]; ok {
		return said.name.in(lang) + ": " + said.title.in(lang)
	}
	return fmt.Sprintf(sheetNumber.in(lang), s.number(), s.in(lang).Title)
}

// codes are the pupils with what was counted.
func (s Sheet) codes(lang string) string {
	var list []string
	for _, p := range s.Pupils {
		list = append(list, fmt.Sprintf("%s (%s)", p.Code, both{p.Count, p.countSpanish}.in(lang)))
	}
	return strings.Join(list, ", ")
}
