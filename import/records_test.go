package intake_test

import (
	"fmt"
	"testing"

	intake "evenhand/import"
)

// Lines are counted as an editor counts them, also after a cell with line ends.
func TestLinesAreTheFilesOwn(t *testing.T) {
	_, r := importText(t, "question,answer,skill\n"+
		"47 + 36,83,\n"+
		"\"Ben has 5 pears\nand eats 2.\r\n\nHow many are left?\",3,facts-within-20\n"+
		"\n   \n,,\n"+
		"27 + 35,61,\n"+
		"8 + 7,15,")
	if want := "line 10, answer: 27 + 35 is 62, the list says 61"; problems(r) != want {
		t.Errorf("got %q, want %q", problems(r), want)
	}
	if out := r.Outcomes[1]; out.First != 3 || out.Last != 6 {
		t.Errorf("the story stands on lines %d to %d, want 3 to 6", out.First, out.Last)
	}
	if r.List.Total != 11 {
		t.Errorf("%d lines in all, want 11", r.List.Total)
	}
}

// One wrong quotation mark costs no other row.
func TestWrongQuotationMarks(t *testing.T) {
	for text, want := range map[string]string{
		"\"27 + 35,62":                     "line 3: a quotation mark opens a cell and is never closed; close it or take it off",
		"How long is 5\" and 2\"?,7":       "",
		"\"Which is \"more\", 5 or 7?\",7": "line 3: this row has 3 cells, the list has 2 columns; put quotation marks around a cell with commas in it",
	} {
		b := newBank(t)
		l := mustOpen(t, "question,answer\n47 + 36,83\n"+text+"\n\"8 + 7\",\"15\"\n81 - 38,43\n")
		r := mustImport(t, b, l, intake.ImportOptions{Skill: "facts-within-20"})
		if problems(r) != want {
			t.Errorf("%s\ngot  %q\nwant %q", text, problems(r), want)
		}
		good := 4
		if want != "" {
			good = 3
		}
		if r.Count(intake.Added) != good {
			t.Errorf("%s: %s, want %d added", text, r.Summary(), good)
		}
	}
}

func TestRaggedRows(t *testing.T) {
	_, r := importText(t, "question,answer,skill\n"+
		"47 + 36,83\n"+
		"27 + 35\n"+
		"98, 99, ?, 101,100\n"+
		"8 + 7,15,facts,see page 4\n"+
		",,facts-within-20\n")
	want := "line 4: this row has 5 cells, the list has 3 columns; put quotation marks around a cell with commas in it\n" +
		"line 6, question: there is no question here"
	if problems(r) != want {
		t.Errorf("got\n%s\nwant\n%s", problems(r), want)
	}
	note := "line 5: this row has 4 cells, the list has 3 columns; what is beyond was not used"
	if got := fmt.Sprint(r.Notes); got != "["+note+"]" {
		t.Errorf("notes %s, want %s", got, note)
	}
}

func TestDelimiters(t *testing.T) {
	for name, text := range map[string]string{
		"commas":     "question,answer\n\"98, 99, ?, 101\",100\n27 + 35,62\n",
		"semicolons": "question;answer\n98, 99, ?, 101;100\n27 + 35;62\n",
		"tabs":       "question\tanswer\n98, 99, ?, 101\t100\n27 + 35\t62\n",
		"bars":       "question|answer\n98, 99, ?, 101|100\n27 + 35|62\n",
		"nothing":    "98, 99, ?, 101\n27 + 35\nmatch 4:00, 7:00, 11:00\n",
	} {
		_, r := importText(t, text)
		if r.List.Delimiter != name || r.Count(intake.SetAside) != 0 {
			t.Errorf("%s: read with %s, %s\n%s", name, r.List.Delimiter, r.Summary(), problems(r))
		}
	}
	l := mustOpen(t, "sep=;\nquestion;answer\n27 + 35;62\n")
	if l.Delimiter != "semicolons" || l.Rows() != 1 {
		t.Errorf("sep=; read with %s, %d rows", l.Delimiter, l.Rows())
	}
}
