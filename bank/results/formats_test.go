package results_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/standards/task"
)

// told is everything that is kept of a marking.
func told(p results.Paper) string {
	text := fmt.Sprintf("%s %s %s form %s revision %d by %s at %s:", p.Quiz, p.Class, p.Pupil, p.Form, p.Revision, p.By, p.At.Format(time.RFC3339))
	for _, a := range p.Answers {
		text += fmt.Sprintf(" [%s %s]", a.State, a.Written)
	}
	return text
}

// What the program of commit 8c40245 said of its own marks (mark --history, report --csv answers),
// typed off.
const (
	format1Quiz = "QUIZ Friday check, week 48, 2026-W48, A: " +
		"01M89PY9E8MM49PF1Y1BP0RJW7 add-two-digit [2.NBT.B.5] 73 + 18 = ? 91 -1.056; " +
		"01M89PY9E8MM49PF1Y0X3VRHGM add-two-digit [2.NBT.B.5] 36 + 29 = ? 65 -1.056; " +
		"01M89PY9E8MM49PF1Y155V33XP add-two-digit [2.NBT.B.5] 34 + 48 = ? 82 -1.056; " +
		"01M89PY9E80Q51GK93EDEJK98G clock-half-hour [1.MD.B.3] say 7:30 half past 7 -1.400; " +
		"01M89PY9E80Q51GK93E5CAJXB6 clock-half-hour [1.MD.B.3] read 12:30 12:30 -1.400; "
	format1Papers = `QUIZ 2A P01 form A revision 1 by MK at 2026-11-25T15:59:42Z: [right 91] [right 65] [right 82] [right half past 7] [right 12:30]
QUIZ 2A P02 form B revision 1 by MK at 2026-11-25T15:59:42Z: [right ] [wrong ] [right ] [wrong ] [right ]
QUIZ 2A P03 form A revision 2 by Ms. Reyes at 2026-11-25T15:59:42Z: [wrong 52] [right 65] [right 82] [right half past 7] [right 12:30]
QUIZ 2A P04 form B revision 1 by MK at 2026-11-25T15:59:42Z: [absent ] [absent ] [absent ] [absent ] [absent ]
QUIZ 2A P05 form A revision 1 by MK at 2026-11-25T15:59:42Z: [right 91] [right 65] [right 82] [wrong 12:00] [not reached ]`
	format1History = `QUIZ 2A P03 form A revision 1 by MK at 2026-11-25T15:59:42Z: [wrong 512] [right 65] [right 82] [right half past 7] [right 12:30]
QUIZ 2A P03 form A revision 2 by Ms. Reyes at 2026-11-25T15:59:42Z: [wrong 52] [right 65] [right 82] [right half past 7] [right 12:30]`
)

// Marks of the first format open, to read and to change, and say what they said then.
func TestFormat1Opens(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/formats/1")); err != nil {
		t.Fatal(err)
	}
	for _, readOnly := range []bool{true, false} {
		s, err := results.Open(filepath.Join(dir, "team.bank.marks"), bank.Options{ReadOnly: readOnly})
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		quizzes, err := s.Quizzes()
		if err != nil || len(quizzes) != 1 {
			t.Fatalf("%d quizzes, %v", len(quizzes), err)
		}
		quiz := quizzes[0]
		got := fmt.Sprintf("QUIZ %s, %s, %s: ", quiz.Title, quiz.Week, quiz.Forms[0].Name)
		for _, it := range quiz.Forms[0].Items {
			got += fmt.Sprintf("%s %s %v %s %s %s; ", it.ID, it.Skill, it.Codes, it.Asks, it.Key, it.Difficulty)
		}
		if got != format1Quiz || len(quiz.Forms) != 2 || quiz.Size() != 5 {
			t.Errorf("got  %s\nwant %s", got, format1Quiz)
		}
		papers, err := s.Papers(quiz.ID)
		if err != nil {
			t.Fatal(err)
		}
		same(t, papers, quiz.ID, format1Papers)
		history, err := s.History(quiz.ID, "2A", "P03")
		if err != nil {
			t.Fatal(err)
		}
		same(t, history, quiz.ID, format1History)
		if codes, err := s.Pupils("2A"); err != nil || !slices.Equal(codes, []string{"P01", "P02", "P03", "P04", "P05", "P06"}) {
			t.Errorf("the class is %v, %v", codes, err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

func same(t *testing.T, papers []results.Paper, quiz, want string) {
	t.Helper()
	var lines []string
	for _, p := range papers {
		lines = append(lines, strings.Replace(told(p), quiz, "QUIZ", 1))
	}
	if got := strings.Join(lines, "\n"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// A quiz's ID is the first 64 bits of the SHA-256 of a text that was typed by hand and
// summed by sha256sum of GNU coreutils; the quiz of the first format has the ID that it had then.
func TestAQuizKeepsItsID(t *testing.T) {
	quiz := results.NewQuiz("Friday check", "2026-W48", []results.Form{
		{Name: "A", Items: []results.Item{
			{ID: "01M89PY9E8R9MNDJT19V1602WB", Skill: "add-two-digit", Codes: []task.Code{"2.NBT.B.5"}, Asks: "47 + 38 = ?", Key: "85", Difficulty: -1056},
			{ID: "01M89PY9E8MM49PF1Y0ZRCY9HN", Asks: "7 < 9?", Key: "<"},
		}},
		{Name: "B", Items: []results.Item{
			{ID: "01M89PY9E80Q51GK93EDEJK98G", Skill: "clock-half-hour", Codes: []task.Code{"1.MD.B.3"}, Asks: "say 7:30", Key: "half past 7", Difficulty: -1400},
		}},
	})
	if want := "6f58a899ba7a0f6e"; quiz.ID != want {
		t.Errorf("the ID is %s, want %s", quiz.ID, want)
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/formats/1")); err != nil {
		t.Fatal(err)
	}
	s, err := results.Open(filepath.Join(dir, "team.bank.marks"), bank.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	quizzes, err := s.Quizzes()
	if err != nil || len(quizzes) != 1 {
		t.Fatal(quizzes, err)
	}
	if q := quizzes[0]; results.NewQuiz(q.Title, q.Week, q.Forms).ID != q.ID || q.ID != "2e1204ceb737978e" {
		t.Errorf("the quiz of format 1 is %s, its content gives %s", q.ID, results.NewQuiz(q.Title, q.Week, q.Forms).ID)
	}
}
