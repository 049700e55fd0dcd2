package export_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/assemble/export"
)

// A quiz.csv that a spreadsheet saved in its own way is the quiz that was given; one with
// another key, task or place is not.
func TestGiven(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS("../../testdata/formats/1/friday")); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "quiz.csv")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	given, err := export.Given(folder, "")
	if err != nil || given.Week == "" || len(given.Forms) != 2 {
		t.Fatalf("%+v, %v", given, err)
	}
	for _, row := range []struct{ name, text, refused string }{
		{"semicolons", strings.ReplaceAll(string(text), ",", ";"), ""},
		{"another key", strings.Replace(string(text), ",12:30,", ",12:45,", 1), "was changed by hand: key at"},
		{"a row less", strings.Join(strings.SplitAfter(string(text), "\n")[:3], ""), "missing"},
	} {
		if err := os.WriteFile(path, []byte(row.text), 0o600); err != nil {
			t.Fatal(err)
		}
		quiz, err := export.Given(path, "")
		if row.refused == "" && (err != nil || quiz.ID != given.ID) || row.refused != "" && (err == nil || !strings.Contains(err.Error(), row.refused)) {
			t.Errorf("%s: %s, %v", row.name, quiz.ID, err)
		}
	}
}
