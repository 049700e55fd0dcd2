package results_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
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
		if _, err := s.Merge(from); err != nil {
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
