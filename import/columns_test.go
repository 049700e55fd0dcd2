package intake_test

import (
	"strings"
	"testing"

	intake "evenhand/import"
)

// Headings as teachers write them, in several orders and two languages.
func TestHeadings(t *testing.T) {
	for text, want := range map[string]string{
		"Question,Answer,Skill\n47+36,83,add":                             "question answer skill",
		"KEY;Topic;Stem;How hard;By;Notes\n83;adding;47+36;2;M.O.;":       "answer skill question difficulty by notes",
		"Solution\tProblem\tTeacher\tComments\n83\t47+36\tT.L.\t":         "answer question by notes",
		"#,Number sentence,Correct answer,CCSS\n1,47+36,83,2.NBT.5":       "number question answer standards",
		"Item,Task,Result,Grade level\n1,47+36,83,2":                      "number question answer grade",
		"Item,Ans.\n47+36,83":                                             "question answer",
		"Item no.,Exercise,Right answer,Level\n1,47+36,83,easy":           "number question answer difficulty",
		"Pregunta;Respuesta;Tema;Nivel;Maestra\n47+36;83;suma;fácil;M.O.": "question-es answer skill difficulty by",
		"Question,Pregunta,Answer\nHow many?,¿Cuántos?,3":                 "question question-es answer",
		"Topic,Skill,Question,Answer\nx,add-tens,47+30,77":                "- skill question answer",
		"Question,Answer,Look,Standard code\n47+36,83,column,2.NBT.5":     "question answer look standards",
		"Sum,Answer,line,column,reason\n47+36,83,4,answer,wrong":          "question answer mending mending mending",
		"Foo,Bar,Baz\n47+36,83,sentence\n27+35,62,column":                 "question answer look",
		"Rechnung;Wert\n47+36;83\n27+35;62":                               "question answer",
	} {
		l := mustOpen(t, text)
		if got := meanings(l); got != want {
			t.Errorf("%s\ngot  %s\nwant %s", text, got, want)
		}
		if first := l.Lines[0]; first.Kind != intake.HeadingLine {
			t.Errorf("%s: the first line is a %s", text, first.Kind)
		}
	}
}

func TestNoHeading(t *testing.T) {
	for text, want := range map[string]string{
		"47+36,83\n27+35,62": "question answer",
		"83,47+36\n62,27+35": "answer question",
		"1,47+36,83,add-two-digit\n2,27+35,62,add-two-digit":  "- question answer skill",
		"3:30,read 3:30\n4:00,draw 4:00":                      "answer question",
		"How many legs has a dog?,4\nHow many has a hen?,2":   "question answer",
		"2.NBT.5,27+35,62,column\n2.NBT.5,47+36,83,column":    "standards question answer look",
		"Name two shapes,any\n47+36,83\n27+35,62":             "question answer",
		"Name it,square\nHow many?,four":                      "question answer",
		"47+36\n27+35":                                        "question",
		"Our list\n\n47+36,83,T.L.\n27+35,62,\n81-38,43,T.L.": "question answer -",
	} {
		l := mustOpen(t, text)
		if got := meanings(l); got != want {
			t.Errorf("%s\ngot  %s\nwant %s", text, got, want)
		}
		for _, line := range l.Lines {
			if line.Kind == intake.HeadingLine {
				t.Errorf("%s: line %d is taken for a heading", text, line.First)
			}
		}
	}
}

func TestTitlesRepeatedHeadingsAndTotals(t *testing.T) {
	_, r := importText(t, "Alder Hill School,,\nGrade 2 questions with answers,,\n\nQuestion,Answer,Topic\n47 + 36,83,\n"+
		"Subtotal,1,\nQuestion,Answer,Topic\n27 + 35,62,\nTotal:,2,\nTotal of 5 and 8?,13,facts-within-20\nAverage,,1.5\n")
	var kinds []string
	for _, line := range r.List.Lines {
		kinds = append(kinds, string(line.Kind))
	}
	want := "title title heading row total heading row total row total"
	if got := strings.Join(kinds, " "); got != want {
		t.Errorf("lines are %s, want %s", got, want)
	}
	if got := r.Summary(); got != "3 rows: 3 added, 0 already here, 0 set aside" {
		t.Errorf("%s\n%s", got, problems(r))
	}
	if skipped := r.List.Skipped(); len(skipped) != 7 || skipped[3].Text != "Subtotal 1" {
		t.Errorf("skipped %v", skipped)
	}
}

func TestColumnsNamedByThePerson(t *testing.T) {
	const text = "Question,Text,Value\nq1,47 + 36,83\nq2,27 + 35,62\n"
	for _, wish := range []string{"Text", " text", "2", "b"} {
		l, err := intake.Open("list.csv", []byte(text), intake.Options{Columns: map[string]string{"question": wish}})
		if err != nil || meanings(l) != "- question answer" {
			t.Errorf("question=%q: %v, %v", wish, err, l)
		}
	}
	for _, c := range []struct{ meaning, wish, want string }{
		{"question", "Frage", `list.csv: no column "Frage" for the question; the headings are "Question", "Text", "Value"; a number from 1 to 3 will do too`},
		{"question", "4", `list.csv: no column "4" for the question; the headings are`},
		{"qestion", "Text", `no column can be the "qestion"; did you mean "question"? (it can be one of question,`},
	} {
		_, err := intake.Open("list.csv", []byte(text), intake.Options{Columns: map[string]string{c.meaning: c.wish}})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s=%s: got %v, want %s", c.meaning, c.wish, err, c.want)
		}
	}
	_, err := intake.Open("list.csv", []byte(text), intake.Options{Columns: map[string]string{"question": "2", "answer": "B"}})
	if err == nil || !strings.Contains(err.Error(), `column "2" can't be both the answer and the question`) {
		t.Errorf("one column for two meanings: %v", err)
	}
}

// A heading that a person names is found below titles, and above all others.
func TestNamedHeadingIsFound(t *testing.T) {
	l, err := intake.Open("list.csv", []byte("Zahlen\nListe für Freitag\nRechenaufgabe,Wert\n47 + 36,83\n"),
		intake.Options{Columns: map[string]string{"question": "rechenaufgabe"}})
	if err != nil || l.Rows() != 1 || len(l.Skipped()) != 3 {
		t.Fatalf("%v, %+v", err, l)
	}
}

func TestColumnSaysHowItWasUnderstood(t *testing.T) {
	l := mustOpen(t, "Nr,Aufgabe,Wert\n1,47 + 36,83\n2,27 + 35,62\n")
	for i, want := range []string{
		`A "Nr": number (headed so)`,
		`B "Aufgabe": question (headed so)`,
		`C "Wert": answer (its cells answer the questions, 2 of 2)`,
	} {
		if got := l.Columns[i].String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func TestFilesThatAreNoLists(t *testing.T) {
	for data, want := range map[string]string{
		"":                             "the list is empty",
		"\n \n;;\n":                    "the list is empty",
		"%PDF-1.7 x":                   "this is a PDF, not a list",
		"\xd0\xcf\x11\xe0\xa1\xb1\x1a": "this is an old workbook",
		"\x7fELF\x02\x01\x01\xff\xfe\x9c47 + 36,83\n": "this is no text",
		"PK\x03\x04 broken":                           "this workbook is torn",
		"12\n7\n":                                     "no column looks like the questions; say which it is, as in --column question=1",
	} {
		_, err := intake.Open("list.csv", []byte(data), intake.Options{})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want %s", data, err, want)
		}
	}
}
