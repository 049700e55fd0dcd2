package intake_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/encoding/unicode"
	"pgregory.net/rapid"

	"evenhand/bank"
	intake "evenhand/import"
)

// dialect writes rows as some CSV program does: any delimiter, quotation marks where
// they are needed or everywhere, any line end, byte-order mark or none, UTF-16.
func dialect(t *rapid.T, rows [][]string) []byte {
	delimiter := rapid.SampledFrom([]string{",", ";", "\t", "|"}).Draw(t, "saved with")
	everywhere := rapid.Bool().Draw(t, "quotes everywhere")
	end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "saved line end")
	var b strings.Builder
	if rapid.IntRange(0, 3).Draw(t, "sep") == 0 {
		b.WriteString("sep=" + delimiter + end)
	}
	for _, row := range rows {
		for i, cell := range row {
			if i > 0 {
				b.WriteString(delimiter)
			}
			if everywhere || strings.ContainsAny(cell, "\"\r\n "+delimiter) {
				cell = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
			}
			b.WriteString(cell)
		}
		b.WriteString(end)
	}
	switch rapid.SampledFrom([]string{"UTF-8", "with BOM", "UTF-16"}).Draw(t, "saved as") {
	case "with BOM":
		return []byte("\ufeff" + b.String())
	case "UTF-16":
		data, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewEncoder().Bytes([]byte(b.String()))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	return []byte(b.String())
}

// untidy draws lists many of whose rows are set aside, for reasons full of delimiters.
var untidy = rapid.Custom(func(t *rapid.T) string {
	questions := []string{
		"47 + 36", "5 - 8", "4:75", "2026-01-02", "98, 99, ?, 101", "Mia has 3 shells; she finds 7 more. How many now?", "one, two; three | four?",
		"write", "write one", "55 + 45 = 110", "12", "=cmd|x", "\"Ben\" has 5 pears,\nand eats 2. How many?", "Total", "¿Cuántas patas; o manos?", "",
	}
	answers := []string{"", "", "", "83", "73", "2026-01-02", "100", "6", "4; 5, 6 | 7", "x\ty"}
	layout := rapid.SampledFrom([]string{
		"q", "Question", "Question,Answer", "Answer,Question,Notes", "q,a", "Pregunta,Respuesta,Tema",
		"Nr,Frage,Antwort", "Question,Answer,line,Reason",
	}).Draw(t, "layout")
	delimiter := rapid.SampledFrom([]string{",", ";", "\t"}).Draw(t, "delimiter")
	names := strings.Split(layout, ",")
	var rows [][]string
	if names[0] != "q" {
		rows = append(rows, names)
	}
	for n := range rapid.IntRange(1, 14).Draw(t, "rows") {
		row := make([]string, len(names))
		for i, name := range names {
			switch name {
			case "q", "Question", "Pregunta", "Frage":
				row[i] = rapid.SampledFrom(questions).Draw(t, "question")
			case "a", "Answer", "Respuesta", "Antwort":
				row[i] = rapid.SampledFrom(answers).Draw(t, "answer")
			case "Nr":
				row[i] = fmt.Sprint(n + 1)
			default:
				row[i] = rapid.SampledFrom([]string{"", "adding", "a; b, c | d", "write one"}).Draw(t, "other")
			}
		}
		if rapid.IntRange(0, 9).Draw(t, "surplus") == 0 {
			row = append(row, "too", "much")
		}
		rows = append(rows, row)
	}
	var b strings.Builder
	for _, row := range rows {
		for i, cell := range row {
			row[i] = quoted(cell, delimiter)
		}
		b.WriteString(strings.Join(row, delimiter) + "\r\n")
	}
	return b.String()
})

// What may be a time is asked about until somebody says so: a file of rows set aside isn't about clocks only because
// nothing else stands in it.
func TestRowsSetAsideAreAskedAgain(t *testing.T) {
	_, first := importText(t, "47 + 36\n0.1458333\n")
	rows := readSetAside(t, t.TempDir(), first)
	var file strings.Builder
	w := csv.NewWriter(&file)
	w.WriteAll(rows)
	if _, again := importText(t, file.String()); again.Count(intake.SetAside) != 1 {
		t.Errorf("%s of\n%s", again.Summary(), file.String())
	}
	rows[1][0] = "3:30"
	file.Reset()
	w.WriteAll(rows)
	if _, again := importText(t, file.String()); again.Count(intake.Added) != 1 {
		t.Errorf("%s of\n%s", again.Summary(), file.String())
	}
}

// For any list: of the rows set aside, those that are mended in any program come in when
// the file is imported again, the others are set aside again, and nothing else comes in.
func TestMendedRowsComeIn(t *testing.T) {
	folder := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(untidy, untidy, lists).Draw(t, "list")
		l, err := intake.Open("week.csv", []byte(text), intake.Options{})
		if err != nil {
			return // an empty list, or one without questions
		}
		path := filepath.Join(folder, "bank")
		os.Remove(path)
		b, err := bank.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		bring := func(l *intake.List) *intake.Report {
			r, err := intake.Import(b, l, intake.ImportOptions{By: "M.O.", At: monday})
			if err != nil {
				t.Fatal(err)
			}
			return r
		}
		first := bring(l)
		if first.Count(intake.SetAside) == 0 {
			return
		}
		before := count(t, b)
		rows := readSetAside(t, folder, first)
		mend := rapid.SliceOfN(rapid.Bool(), len(rows)-1, len(rows)-1).Draw(t, "mended")
		question, answer := columnsOf(t, rows)
		mended := 0
		for i, row := range rows[1:] {
			if !mend[i] {
				continue
			}
			mended++
			row[question], row[answer] = fmt.Sprintf("%d + 700", 100+i), fmt.Sprint(800+i)
			for j, heading := range rows[0] {
				if strings.HasPrefix(heading, "extra ") {
					row[j] = ""
				}
				if strings.Contains(row[len(row)-1], "never closed") && j < len(row)-3 {
					row[j] = strings.TrimPrefix(row[j], `"`)
				}
			}
		}
		saved := dialect(t, rows)
		again, err := intake.Open("week.csv.set-aside.csv", saved, intake.Options{})
		if err != nil {
			t.Fatalf("%v\n%s", err, saved)
		}
		second := bring(again)
		if second.Count(intake.Added) != mended || second.Count(intake.SetAside) != len(mend)-mended || count(t, b) != before+mended {
			t.Fatalf("%d of %d rows were mended, then %s, and %d items more\n%s\n%s", mended, len(mend), second.Summary(), count(t, b)-before, problems(second), saved)
		}
		for i, out := range second.Outcomes {
			if (out.Fate == intake.SetAside) == mend[i] {
				t.Fatalf("row %d, mended: %v, is %s", i, mend[i], out.Fate)
			}
			if out.Fate == intake.Added {
				it, err := b.Get(out.ID)
				if err != nil || it.Key != fmt.Sprint(800+i) || it.Origin.File != "week.csv" || it.Origin.Row != first.Problems()[i].Line {
					t.Fatalf("row %d came in as %+v", i, it)
				}
			}
		}
	})
}

// readSetAside writes the rows set aside and reads the file as any program would.
func readSetAside(t rapid.TB, folder string, r *intake.Report) [][]string {
	path := filepath.Join(folder, "week.csv.set-aside.csv")
	os.Remove(path)
	if _, err := r.WriteSetAside(path); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil || !intake.IsSetAside(data) {
		t.Fatalf("%v\n%s", err, data)
	}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), "\ufeff"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// columnsOf finds where to write a question and an answer.
func columnsOf(t *rapid.T, rows [][]string) (question, answer int) {
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.WriteAll(rows)
	l, err := intake.Open("week.csv.set-aside.csv", []byte(b.String()), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	at := func(meanings ...intake.Meaning) int {
		for _, m := range meanings {
			if i := slices.IndexFunc(l.Columns, func(c intake.Column) bool { return c.Meaning == m }); i >= 0 {
				return i
			}
		}
		t.Fatalf("no column %v in %v", meanings, rows[0])
		return -1
	}
	return at(intake.Question, intake.QuestionEs), at(intake.Answer)
}

// A file that somebody may be mending is never replaced; the same rows need no second one.
func TestSetAsideFilesAreNeverReplaced(t *testing.T) {
	path := filepath.Join(t.TempDir(), "week.csv.set-aside.csv")
	write := func(text, want string) {
		t.Helper()
		_, r := importText(t, text)
		if got, err := r.WriteSetAside(path); err != nil || filepath.Base(got) != want {
			t.Errorf("written to %s, %v, want %s", got, err, want)
		}
	}
	write("question,answer\n47 + 36,73\n", "week.csv.set-aside.csv")
	write("question,answer\n47 + 36,73\n", "week.csv.set-aside.csv")
	if err := os.WriteFile(path, []byte("mended"), 0o600); err != nil {
		t.Fatal(err)
	}
	write("question,answer\n47 + 36,73\n", "week.csv.set-aside-2.csv")
	write("question,answer\n47 + 36,73\n", "week.csv.set-aside-2.csv")
	write("question,answer\n47 + 36,72\n", "week.csv.set-aside-3.csv")
	if data, err := os.ReadFile(path); err != nil || string(data) != "mended" {
		t.Errorf("the mended file now reads %q, %v", data, err)
	}
}

// Files of the first edition have no answer column where the list had none; a colleague
// adds one beside the question or at the far right.
func TestOlderSetAsideFiles(t *testing.T) {
	for _, text := range []string{
		"question,Answer,line,column,reason\r\nMia has 3 shells. How many?,3,2,answer,\"there is no answer; write one\"\r\n",
		"question,line,column,reason,Answer\r\nMia has 3 shells. How many?,2,answer,\"there is no answer; write one\",3\r\n",
		"question;line;column;reason;key\r\nMia has 3 shells. How many?;2;answer;\"there is no answer; write one\";3\r\n",
	} {
		b, r := importText(t, "\ufeff"+text)
		if all := items(t, b, r); len(all) != 1 || all[0].Key != "3" {
			t.Errorf("%s: %s %v", text, r.Summary(), problems(r))
		}
	}
}
