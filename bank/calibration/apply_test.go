package calibration_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
)

var friday = time.Date(2026, 11, 27, 14, 30, 0, 0, time.UTC)

// quizOf is a quiz of one form for each list of tasks.
func quizOf(week string, forms ...[]string) results.Quiz {
	var list []results.Form
	for i, tasks := range forms {
		form := results.Form{Name: string(rune('A' + i))}
		for k, text := range tasks {
			asked := task.MustParse(text)
			form.Items = append(form.Items, results.Item{
				ID: fmt.Sprintf("%s-%d-%d", week, i, k), Skill: standards.SkillOf(asked), Codes: asked.Codes(), Asks: asked.String(), Key: asked.Key(),
				Difficulty: standards.Predict(standards.SkillOf(asked), asked.Traits()),
			})
		}
		list = append(list, form)
	}
	return results.NewQuiz("Friday check", week, list)
}

func two() results.Quiz {
	return quizOf("2026-W48", []string{"27 + 35 = ?", "read 3:30"}, []string{"48 + 36 = ?", "read 4:30"})
}

func learnFrom(t *testing.T, b *bank.Bank, quiz results.Quiz, papers []results.Paper) calibration.Applied {
	t.Helper()
	learnt, err := calibration.Learn([]results.Quiz{quiz}, papers, nil)
	if err != nil {
		t.Fatal(err)
	}
	changes, err := learnt.Changes(b)
	if err != nil {
		t.Fatal(err)
	}
	done, err := learnt.Apply(b, changes, "MK", "calibrated", friday)
	if err != nil {
		t.Fatal(err)
	}
	return done
}

// Nothing about a pupil is in a bank or its backup, whatever is marked and learnt.
func TestBankHoldsNoPupil(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "team.bank")
	b, err := bank.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	quiz := two()
	var items []bank.Item
	for _, form := range quiz.Forms {
		for _, item := range form.Items {
			items = append(items, bank.NewItem(task.MustParse(item.Asks), "", bank.Origin{Kind: "written"}))
		}
	}
	added, err := b.Add(items, "MK", friday)
	if err != nil {
		t.Fatal(err)
	}
	for i := range added {
		quiz.Forms[i/2].Items[i%2].ID = added[i].ID
	}
	s := marksOf(t, path)
	var papers []results.Paper
	for i := range 40 {
		p := results.Paper{Quiz: quiz.ID, Class: "Larkspur", Pupil: fmt.Sprintf("QZ%02d", i+50), Form: "A", Answers: []results.Answer{
			quiz.Forms[0].Items[0].Answered("512"), {State: results.Right}}}
		papers = append(papers, p)
	}
	if _, err := s.Mark(quiz, papers, "MK", friday); err != nil {
		t.Fatal(err)
	}
	if done := learnFrom(t, b, quiz, papers); done.Measured != 2 {
		t.Fatalf("%+v; two items were answered often enough", done)
	}
	var backup bytes.Buffer
	if _, err := b.Backup(&backup); err != nil {
		t.Fatal(err)
	}
	b.Close()
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	marked, err := os.ReadFile(results.Path(path))
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"QZ5", "QZ6", "Larkspur", "512"} {
		if bytes.Contains(whole, []byte(word)) || bytes.Contains(backup.Bytes(), []byte(word)) {
			t.Errorf("the bank or its backup holds %q", word)
		}
		if !bytes.Contains(marked, []byte(word)) {
			t.Errorf("the results don't hold %q: this test looks for nothing", word)
		}
	}
}

func marksOf(t *testing.T, path string) *results.Store {
	t.Helper()
	s, err := results.Open(results.Path(path), bank.Options{Timeout: time.Second})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// Answers to an item whose key has changed since say nothing of it as it stands.
func TestAnswersToAnotherKeyDoNotCount(t *testing.T) {
	for key, want := range map[string]int{"four": 1, "three": 0} {
		b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		const asks = "How many corners has a square?"
		items := []bank.Item{bank.NewHandItem(asks, "four", "add-tens", "en", bank.Origin{Kind: "written"})}
		added, err := b.Add(items, "MK", friday)
		if err != nil {
			t.Fatal(err)
		}
		quiz := results.NewQuiz("Friday check", "2026-W48", []results.Form{{Name: "A", Items: []results.Item{
			{ID: added[0].ID, Skill: "add-tens", Asks: asks, Key: key}}}})
		var papers []results.Paper
		for i := range 40 {
			state := []results.State{results.Right, results.Wrong}[i%2]
			papers = append(papers, results.Paper{Quiz: quiz.ID, Pupil: fmt.Sprintf("P%02d", i), Form: "A",
				Answers: []results.Answer{{State: state}}})
		}
		if done := learnFrom(t, b, quiz, papers); done.Measured != want {
			t.Errorf("with the key %q in the quiz and four in the bank, %d items are measured, want %d", key, done.Measured, want)
		}
	}
}
