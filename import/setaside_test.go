package intake_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	intake "evenhand/import"
)

// setAside writes the rows set aside and reads the file as any program would.
func setAside(t *testing.T, r *intake.Report) (path string, rows [][]string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "mend.csv")
	if _, err := r.WriteSetAside(path); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err = csv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), "\ufeff"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return path, rows
}

func TestSetAsideRowsKeepTheirCells(t *testing.T) {
	_, r := importText(t, "Title;;\nLösung;Aufgabe;Thema\n73;47 + 36;=cmd\n62;27 + 35;x\n-3;5 - 8;\"two\nlines\"\n;How many?;a;b\n")
	_, rows := setAside(t, r)
	want := [][]string{
		{"Lösung", "Aufgabe", "Thema", "extra 4", "line", "column", "reason"},
		{"73", "47 + 36", "'=cmd", "", "3", "answer", "47 + 36 is 83, the list says 73"},
		{"'-3", "5 - 8", "two\nlines", "", "5", "question", "5 - 8 is less than 0; quizzes for these grades stay with 0 and more"},
		{"", "How many?", "a", "b", "7", "", "this row has 4 cells, the list has 3 columns; put quotation marks around a cell with semicolons in it"},
	}
	if !reflect.DeepEqual(rows, want) {
		t.Errorf("got\n%q\nwant\n%q", rows, want)
	}
}

// A mended file comes in, whatever the headings of the first list were; what is still
// wrong is set aside again, without the columns of the first time.
func TestSetAsideRowsCanBeMendedAndImported(t *testing.T) {
	for _, text := range []string{
		"question,answer\n47 + 36,73\n27 + 35,61\n",
		"47 + 36,73\n27 + 35,61\n8 + 7,15\n6 + 7,13\n",
		"Rechnung;Wert\n8 + 7;15\n6 + 7;13\n47 + 36;73\n27 + 35;61\n",
		"Ergebnis\tÜbung\n15\t8 + 7\n73\t47 + 36\n61\t27 + 35\n",
		"Pregunta,Respuesta\n47 + 36,73\n27 + 35,61\n",
	} {
		b, first := importText(t, text)
		path, _ := setAside(t, first)
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		mended := mustOpen(t, strings.Replace(string(data), "73", "83", 1))
		second := mustImport(t, b, mended, intake.ImportOptions{})
		if want := "2 rows: 1 added, 0 already here, 1 set aside"; second.Summary() != want {
			t.Errorf("%q: %s, want %s\n%s", text, second.Summary(), want, problems(second))
			continue
		}
		_, rows := setAside(t, second)
		if header := strings.Join(rows[0], ","); strings.Count(header, "line") != 1 || strings.Count(header, "reason") != 1 {
			t.Errorf("%q: the second file has the columns %s", text, header)
		}
	}
}

func TestNothingSetAsideWritesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mend.csv")
	if err := os.WriteFile(path, []byte("of an earlier import"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, r := importText(t, "47 + 36,83\n")
	if _, err := r.WriteSetAside(path); err != nil {
		t.Fatal(err)
	}
	if data, _ := os.ReadFile(path); string(data) != "of an earlier import" {
		t.Errorf("the file of an earlier import now reads %q", data)
	}
}

// A file that can't be written leaves neither a part of it nor a temporary file.
func TestSetAsideIsWholeOrNotThere(t *testing.T) {
	_, r := importText(t, "47 + 36,73\n")
	folder := t.TempDir()
	if _, err := r.WriteSetAside(filepath.Join(folder, "none", "mend.csv")); err == nil || !strings.Contains(err.Error(), "could not be written") {
		t.Errorf("into no folder: %v", err)
	}
	taken := filepath.Join(folder, "taken")
	if err := os.MkdirAll(filepath.Join(taken, "x"), 0o700); err != nil {
		t.Fatal(err)
	}
	if _, err := r.WriteSetAside(taken); err == nil {
		t.Error("a folder was replaced by the file")
	}
	if left, _ := os.ReadDir(folder); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

func TestSetAsidePath(t *testing.T) {
	for list, want := range map[string]string{"a/clocks.txt": "a/clocks.txt.set-aside.csv", "list": "list.set-aside.csv", "b.v2.csv": "b.v2.csv.set-aside.csv",
		"b.csv.set-aside.csv": "b.csv.set-aside.csv", "b.csv.set-aside-3.csv": "b.csv.set-aside.csv"} {
		if got := intake.SetAsidePath(list); got != want {
			t.Errorf("%s: got %s, want %s", list, got, want)
		}
	}
}
