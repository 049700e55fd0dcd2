package results_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
)

// mergedMarks is a copy of the first marks into which the others were merged in turn, and all
// that it holds.
func mergedMarks(t *rapid.T, dir, name string, paths ...string) (path, kept string) {
	path = filepath.Join(dir, name)
	copied(t, paths[0], path)
	for _, other := range paths[1:] {
		s, from := opened(t, path, false), opened(t, other, true)
		if _, err := s.Merge(from, results.MergeOptions{}); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Check(); err != nil {
			t.Fatal(err)
		}
		closed(t, s, from)
	}
	raw, err := bank.OpenStore(path, bank.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer raw.Close()
	err = raw.View(context.Background(), func(r store.Reader) error {
		for _, bucket := range []string{"about", "classes", "quizzes", "papers", "earlier"} {
			for e, err := range r.Scan(bucket, store.Range{}) {
				if err != nil {
					return err
				}
				kept += fmt.Sprintf("%s %q: %q\n", bucket, e.Key, e.Value)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return path, kept
}

func copied(t *rapid.T, from, to string) {
	data, err := os.ReadFile(from)
	if err == nil {
		err = os.WriteFile(to, data, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func opened(t *rapid.T, path string, readOnly bool) *results.Store {
	s, err := results.Open(path, bank.Options{ReadOnly: readOnly})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func closed(t *rapid.T, stores ...*results.Store) {
	for _, s := range stores {
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// The order of two marks, doing it again, and the order of three make no difference, also
// where the same papers were marked at the same time.
func TestMergeLaws(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		var p []string
		for i, who := range []string{"MK", "JK", "SV"} {
			path := filepath.Join(dir, who)
			os.Remove(path)
			if from := rapid.IntRange(-1, i-1).Draw(t, "copy of"); from >= 0 {
				copied(t, p[from], path)
			}
			s := opened(t, path, false)
			at := time.Date(2026, 11, 27, 12, 0, 0, 0, time.UTC)
			for range rapid.IntRange(0, 6).Draw(t, "markings") {
				at = at.Add(time.Duration(rapid.IntRange(-1, 2).Draw(t, "later")) * time.Second)
				title := rapid.SampledFrom([]string{"Friday check", "Friday quiz"}).Draw(t, "title")
				item := results.Item{ID: rapid.SampledFrom([]string{"01A", "01B"}).Draw(t, "item"), Asks: "7 + 8 = ?", Key: "15"}
				quiz := results.NewQuiz(title, "2026-W48", []results.Form{{Name: "A", Items: []results.Item{item}}})
				paper := results.Paper{Class: rapid.SampledFrom([]string{"", "2A"}).Draw(t, "class"), Pupil: rapid.SampledFrom([]string{"P01", "P02"}).Draw(t, "pupil"),
					Form: "A", Answers: []results.Answer{item.Answered(rapid.SampledFrom([]string{"15", "14", "16"}).Draw(t, "answer"))}}
				if _, err := s.Mark(quiz, []results.Paper{paper}, who, at); err != nil {
					t.Fatal(err)
				}
			}
			closed(t, s)
			p = append(p, path)
		}
		same := func(law, one, other string) {
			if one != other {
				t.Errorf("%s:\n%s\n%s", law, one, other)
			}
		}
		ab, abKept := mergedMarks(t, dir, "ab", p[0], p[1])
		ba, baKept := mergedMarks(t, dir, "ba", p[1], p[0])
		same("either order", abKept, baKept)
		_, again := mergedMarks(t, dir, "abba", p[0], p[1], p[1], p[0])
		same("again", abKept, again)
		_, abc := mergedMarks(t, dir, "abc", ab, p[2])
		bc, _ := mergedMarks(t, dir, "bc", p[1], p[2])
		_, other := mergedMarks(t, dir, "a(bc)", p[0], bc)
		same("three", abc, other)
		_, other = mergedMarks(t, dir, "cba", p[2], ba)
		same("three, the last first", abc, other)
	})
}

// Who was forgotten stays so when a colleague's marks are merged, is named, and comes back only when
// that is asked for; a later pupil of the same code comes in; nothing is removed in the other direction.
func TestMergeKeepsForgottenOut(t *testing.T) {
	path := marked(t)
	colleague := filepath.Join(t.TempDir(), "colleague.marks")
	data, err := os.ReadFile(path)
	if err == nil {
		err = os.WriteFile(colleague, data, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
	forgot := friday.Add(time.Hour)
	if _, err := results.Forget(path, "P07", forgot, bank.Options{}); err != nil {
		t.Fatal(err)
	}
	merged := func(into, from string, o results.MergeOptions) (m results.Merged, held []results.Forgotten) {
		t.Helper()
		s, err := results.Open(into, bank.Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		other, err := results.Open(from, bank.Options{ReadOnly: true})
		if err != nil {
			t.Fatal(err)
		}
		defer other.Close()
		if m, err = s.Merge(other, o); err != nil {
			t.Fatal(err)
		}
		if held, err = s.Of("P07"); err != nil {
			t.Fatal(err)
		}
		return m, held
	}
	m, held := merged(path, colleague, results.MergeOptions{})
	if !slices.Equal(m.Forgotten, []string{"P07"}) || len(held) != 0 || m.Papers != 0 {
		t.Errorf("told %+v, held %+v", m, held)
	}
	m, held = merged(colleague, path, results.MergeOptions{})
	if !slices.Equal(m.ForgottenThere, []string{"P07"}) || len(held) != 1 {
		t.Errorf("the other way: told %+v, held %+v", m, held)
	}
	m, held = merged(path, colleague, results.MergeOptions{Forgotten: true})
	if len(m.Forgotten) != 0 || len(held) != 1 || held[0].Papers != 1 || held[0].Earlier != 1 {
		t.Errorf("asked for: told %+v, held %+v", m, held)
	}
	if m, _ = merged(colleague, path, results.MergeOptions{}); len(m.ForgottenThere) != 0 {
		t.Errorf("brought back: told %+v", m)
	}

	// Next year's P07 has papers marked after it.
	if _, err := results.Forget(path, "P07", forgot, bank.Options{}); err != nil {
		t.Fatal(err)
	}
	next := filepath.Join(t.TempDir(), "next.marks")
	s, err := results.Open(next, bank.Options{})
	if err != nil {
		t.Fatal(err)
	}
	item := results.Item{ID: "01A", Asks: "7 + 8 = ?", Key: "15"}
	quiz := results.NewQuiz("Friday check", "2027-W48", []results.Form{{Name: "A", Items: []results.Item{item}}})
	paper := results.Paper{Class: "2A", Pupil: "P07", Form: "A", Answers: []results.Answer{item.Answered("15")}}
	if _, err := s.Mark(quiz, []results.Paper{paper}, "MK", forgot.AddDate(1, 0, 0)); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if m, held = merged(path, next, results.MergeOptions{}); len(m.Forgotten) != 0 || len(held) != 1 || held[0].Papers != 1 {
		t.Errorf("another pupil: told %+v, held %+v", m, held)
	}
}
