package results_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/testdata/formats"
)

// toldMarks is all that a file of marks keeps, each field by its name.
func toldMarks(t *testing.T, s *results.Store) string {
	t.Helper()
	var b strings.Builder
	fatal := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	classes, err := s.Classes()
	fatal(err)
	for _, class := range classes {
		codes, err := s.Pupils(class)
		fatal(err)
		fmt.Fprintf(&b, "class %s: %v\n", class, codes)
	}
	quizzes, err := s.Quizzes()
	fatal(err)
	for _, q := range quizzes {
		fmt.Fprintf(&b, "quiz %s %q week %s\n", q.ID, q.Title, q.Week)
		for _, f := range q.Forms {
			fmt.Fprintf(&b, "form %s make-up %v\n", f.Name, f.MakeUp)
			for _, it := range f.Items {
				fmt.Fprintf(&b, "%s %s %v %q key %q difficulty %s\n", it.ID, it.Skill, it.Codes, it.Asks, it.Key, it.Difficulty)
			}
		}
		papers, err := s.Papers(q.ID)
		fatal(err)
		for _, p := range papers {
			history, err := s.History(q.ID, p.Class, p.Pupil)
			fatal(err)
			for _, was := range history {
				fmt.Fprintln(&b, told(was))
			}
		}
	}
	return b.String()
}

// Marks of the second format say, field by field, what they said when they were made; told-marks.txt
// was compared with what the program's commands show of them. P06 stays forgotten.
func TestFormat2Opens(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/formats/2")); err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile(filepath.Join(dir, "told-marks.txt"))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "team.bank.marks")
	for _, readOnly := range []bool{true, false} {
		s, err := results.Open(path, bank.Options{ReadOnly: readOnly})
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		if got := toldMarks(t, s); got != string(want) {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
		if !readOnly {
			other := filepath.Join(dir, "colleague.marks")
			c, err := results.Open(other, bank.Options{})
			if err != nil {
				t.Fatal(err)
			}
			defer c.Close()
			quizzes, err := s.Quizzes()
			if err != nil || len(quizzes) != 1 {
				t.Fatal(quizzes, err)
			}
			early := time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)
			answers := make([]results.Answer, quizzes[0].Size())
			for i := range answers {
				answers[i].State = results.Right
			}
			if _, err := c.Mark(quizzes[0], []results.Paper{{Class: "2A", Pupil: "P06", Form: "B", Answers: answers}}, "JK", early); err != nil {
				t.Fatal(err)
			}
			m, err := s.Merge(c, results.MergeOptions{})
			if err != nil || fmt.Sprint(m.Forgotten) != "[P06]" {
				t.Errorf("forgotten %v, %v", m.Forgotten, err)
			}
			c.Close()
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// Each field that is kept as JSON has a name of its own there.
func TestWhatIsKeptIsNamed(t *testing.T) {
	if unnamed := formats.Unnamed(results.Quiz{}, results.Paper{}); len(unnamed) > 0 {
		t.Errorf("kept under the names of the program: %v", unnamed)
	}
}
