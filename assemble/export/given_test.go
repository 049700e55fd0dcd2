package export_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"regexp"
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

// An item by hand is asked by its question. Up to the second format of the bank quiz.json told the question as its task.
func TestGivenWithAnItemByHand(t *testing.T) {
	var rows, quiz bytes.Buffer
	if err := errors.Join(export.WriteQuiz(&rows, friday()), export.WriteQuizJSON(&quiz, friday())); err != nil {
		t.Fatal(err)
	}
	earlier := strings.Replace(quiz.String(), `"task": "",`, `"task": "= 12, what goes before it?\n\"6 + 6\" or \"6 + 7\"",`, 1)
	var plain map[string]any
	if err := json.Unmarshal([]byte(earlier), &plain); err != nil || earlier == quiz.String() {
		t.Fatal(err, earlier)
	}
	var ids []string
	for _, text := range []string{quiz.String(), earlier, regexp.MustCompile(`(?m)^ *"(question|revision)": .*\n`).ReplaceAllString(earlier, "")} {
		folder := t.TempDir()
		for name, text := range map[string]string{"quiz.csv": rows.String(), "quiz.json": text} {
			if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		given, err := export.Given(folder, "")
		if err != nil {
			t.Fatal(err)
		}
		ids = append(ids, given.ID)
	}
	if ids[0] != ids[1] || ids[0] != ids[2] {
		t.Errorf("one quiz has IDs %s", ids)
	}
}
