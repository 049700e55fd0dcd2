package followup

import (
	"fmt"
	"io"
	"strings"

	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/evidence/report"
)

// TeacherFile is the file of the teacher's page. It has pupils' codes: only its owner may read it.
const TeacherFile = "teacher.pdf"

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
}

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
	return write(TeacherFile, func(w io.Writer) error { return sheet.WriteText(w, s.teacherPage(), teacherOptions(o)) })
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

// teacherOptions are the paper of the teacher's page, which is in English, as what reports say is.
func teacherOptions(o sheet.Options) sheet.Options {
	return sheet.Options{PaperSize: o.PaperSize, Font: o.Font}
}

// What the teacher's page says of rechecks and of pupils with too few answers.
const (
	recheckNote = "A recheck is three items near the quiz, for Wednesday. " +
		"Where the same slip shows again, sit with the child over one item; three items prove nothing."
	absentNote = "too few answers to tell; work with them as you know them"
	sheetsNote = "No sheet names a pupil or says why it was given. None of the items stood in the quiz."
)

// teacherPage says who could work on which sheet, why, and what is right.
func (s Set) teacherPage() sheet.Text {
	t := sheet.Text{
		Title: fmt.Sprintf("%s, %s, after %s", strings.TrimSpace("Practice "+s.Class), s.Week, s.About),
		Notes: []string{report.Caution, sheetsNote, recheckNote},
	}
	for _, one := range s.Sheets {
		part := sheet.TextPart{Heading: one.heading(), Lines: []string{"Pupils: " + one.codes()}}
		if one.Why != "" {
			part.Lines = append(part.Lines, "Why: "+one.Why+".")
		}
		if one.Begin != "" {
			part.Lines = append(part.Lines, "To begin: "+one.Begin+".")
		}
		part.Answers = []sheet.Paper{s.answers(one.Name, one.paper("en"))}
		if len(one.Recheck) > 0 {
			part.Answers = append(part.Answers, s.answers(one.Name+"-recheck", one.recheck("en")))
		}
		t.Parts = append(t.Parts, part)
	}
	if len(s.Absent) > 0 {
		t.Parts = append(t.Parts, sheet.TextPart{Heading: "No sheet", Lines: []string{"Pupils: " + strings.Join(s.Absent, ", ") + ": " + absentNote + "."}})
	}
	return t
}

func (s Set) answers(file string, p sheet.Paper) sheet.Paper {
	p.Title = "Answers to " + file
	return p
}

// heading names a sheet for the teacher.
func (s Sheet) heading() string {
	if s.Kind == ForGroup {
		return fmt.Sprintf("Sheet %s: %s", s.number(), s.Work)
	}
	return strings.ToUpper(s.Name[:1]) + s.Name[1:] + ": " + s.Work
}

// codes are the pupils with what was counted: once where it is the same for all.
func (s Sheet) codes() string {
	var list []string
	for _, p := range s.Pupils {
		list = append(list, fmt.Sprintf("%s (%s)", p.Code, p.Count))
	}
	return strings.Join(list, ", ")
}
