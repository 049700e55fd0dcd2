package assemble_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/bank/results"
)

// A quiz that the bank keeps is the quiz that its files tell, for marks too.
func TestGivenQuizIsTheQuizOfItsFiles(t *testing.T) {
	b := newBank(t)
	addMade(t, b, "add-two-digit", 20, 1)
	addMade(t, b, "compare-two-digit", 20, 2)
	plan := mustPlan(t, "title = 'Friday check'\nforms = 2\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n[[row]]\nskill = 'compare-two-digit'\ncount = 2\n")
	quiz, err := assemble.Assemble(t.Context(), b, plan, assemble.Options{Seed: 1, Week: "2026-W48"})
	if err != nil {
		t.Fatal(err)
	}
	given := quiz.Given("MK", time.Date(2026, time.November, 26, 16, 0, 0, 0, time.UTC))
	if err := b.KeepQuiz(given); err != nil {
		t.Fatal(err)
	}
	kept, err := b.Quiz("2026-W48")
	if err != nil {
		t.Fatal(err)
	}
	for f, form := range assemble.QuizOf(kept).Forms {
		for i, placed := range form.Items { // nobody has marked anything
			if placed.Basis != bank.GuessBasis || quiz.Forms[f].Items[i].Basis != bank.GuessBasis {
				t.Errorf("%s%d rests on %q, kept as %q", form.Name, placed.Number, quiz.Forms[f].Items[i].Basis, placed.Basis)
			}
		}
	}
	folder := t.TempDir()
	write := func(quiz assemble.Quiz) []byte {
		var csv, json bytes.Buffer
		if err := export.WriteQuiz(&csv, quiz); err != nil {
			t.Fatal(err)
		}
		if err := export.WriteQuizJSON(&json, quiz); err != nil {
			t.Fatal(err)
		}
		for ending, text := range map[string][]byte{"quiz.csv": csv.Bytes(), "quiz.json": json.Bytes()} {
			if err := os.WriteFile(filepath.Join(folder, ending), text, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		return append(csv.Bytes(), json.Bytes()...)
	}
	if before, after := write(quiz), write(assemble.QuizOf(kept)); !bytes.Equal(before, after) {
		t.Errorf("kept and read back it is\n%s\nbefore it was\n%s", after, before)
	}
	fromFiles, err := export.Given(folder, "")
	if err != nil {
		t.Fatal(err)
	}
	if marked := results.QuizOf(kept); marked.ID != fromFiles.ID || marked.ID != kept.ID {
		t.Errorf("by the bank it is %s, by its files %s, kept as %s", marked.ID, fromFiles.ID, kept.ID)
	}
}
