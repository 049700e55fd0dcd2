package results_test

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
)

// marked is a file of results of 24 pupils, of whom one was marked twice, closed.
func marked(t testing.TB) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "team.bank.marks")
	s, err := results.Open(path, bank.Options{})
	if err != nil {
		t.Fatal(err)
	}
	quiz := two()
	var papers []results.Paper
	for i := range 24 {
		papers = append(papers, results.Paper{Class: "2A", Pupil: fmt.Sprintf("P%02d", i+1), Form: "A", Answers: right(2)})
	}
	again := papers[6]
	again.Answers = []results.Answer{quiz.Forms[0].Items[0].Answered("512"), {State: results.NotReached}}
	for _, some := range [][]results.Paper{papers, {again}} {
		if _, err := s.Mark(quiz, some, "MK", friday); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// all is everything that a file of results says.
func all(path string) (text string, err error) {
	s, err := results.Open(path, bank.Options{ReadOnly: true})
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	quizzes, err := s.Quizzes()
	if err != nil {
		return "", err
	}
	for _, quiz := range quizzes {
		papers, err := s.Papers(quiz.ID)
		if err != nil {
			return "", err
		}
		text += fmt.Sprintf("%+v\n", quiz)
		for _, p := range papers {
			history, err := s.History(quiz.ID, p.Class, p.Pupil)
			if err != nil {
				return "", err
			}
			text += fmt.Sprintf("%+v\n", history)
		}
	}
	codes, err := s.Pupils("2A")
	return text + fmt.Sprint(codes), err
}

// Whatever bit of the file is turned over, nobody is told anything else than what was marked: it is said, or
// refused in one sentence that names the file and the remedy. Where a beginning of the file is lost the one
// before stands, and the check says so.
func TestNoBitIsTurnedUnseen(t *testing.T) {
	path := marked(t)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want, err := all(path)
	if err != nil || strings.Count(want, "P07") < 3 {
		t.Fatalf("%v\n%s", err, want)
	}
	draw, refused := rand.New(rand.NewPCG(4, 4)), 0
	flips := 1500
	if testing.Short() {
		flips = 400
	}
	for range flips {
		at, bit := draw.IntN(len(whole)), byte(1)<<draw.IntN(8)
		spoilt := bytes.Clone(whole)
		spoilt[at] ^= bit
		if err := os.WriteFile(path, spoilt, 0o600); err != nil {
			t.Fatal(err)
		}
		got, err := all(path)
		switch {
		case err != nil:
			refused++
			if said := err.Error(); !strings.HasPrefix(said, path) || strings.Contains(said, "runtime") || strings.Contains(said, "assert") {
				t.Errorf("byte %d, bit %d: %v", at, bit, err)
			}
		case got != want && at < 2*os.Getpagesize() && results.ProveFile(path) != nil:
		case got != want:
			t.Errorf("byte %d, bit %d: another file, unseen:\n%s", at, bit, got)
		}
	}
	if refused < flips/100 {
		t.Errorf("only %d of %d were refused: this test looks at nothing", refused, flips)
	}
}

// A record that is lost, changed, or put back as it was before is seen.
func TestCheckSeesWhatDisagrees(t *testing.T) {
	for name, spoil := range map[string]func(b *bbolt.Bucket, k, v []byte) error{
		"lost":    func(b *bbolt.Bucket, k, _ []byte) error { return b.Delete(k) },
		"changed": func(b *bbolt.Bucket, k, v []byte) error { v[len(v)/2] ^= 1; return b.Put(k, v) },
		"twice":   func(b *bbolt.Bucket, k, v []byte) error { return b.Put(append(bytes.Clone(k), 'x'), v) },
	} {
		for _, part := range []string{"classes", "quizzes", "papers", "earlier"} {
			path := marked(t)
			db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
			if err != nil {
				t.Fatal(err)
			}
			err = db.Update(func(tx *bbolt.Tx) error {
				b := tx.Bucket([]byte(part))
				k, v := b.Cursor().First()
				return spoil(b, bytes.Clone(k), bytes.Clone(v))
			})
			if err := errors.Join(err, db.Close()); err != nil {
				t.Fatal(err)
			}
			found := store.Damaged{}
			if err := results.ProveFile(path); !errors.As(err, &found) || !strings.Contains(err.Error(), "evenhand restore") {
				t.Errorf("a record of %s %s: %v", part, name, err)
			}
		}
	}
}

// Marks of a newer program, or with no number of a format, are left alone.
func TestANewerFormatIsRefused(t *testing.T) {
	for number, want := range map[string]string{"3": "was written by a newer evenhand (format 3", "x": "is damaged", "0": "is damaged"} {
		path := marked(t)
		db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
		if err != nil {
			t.Fatal(err)
		}
		err = db.Update(func(tx *bbolt.Tx) error { return tx.Bucket([]byte("about")).Put([]byte("schema"), []byte(number)) })
		if err := errors.Join(err, db.Close()); err != nil {
			t.Fatal(err)
		}
		if _, err := results.Open(path, bank.Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("format %s: %v, want %q", number, err, want)
		}
	}
}

// Many who mark the first papers at once all get them in.
func TestFirstMarksAtOnce(t *testing.T) {
	for range 20 {
		path := filepath.Join(t.TempDir(), "team.bank.marks")
		quiz := two()
		var all sync.WaitGroup
		for i := range 5 {
			all.Go(func() {
				s, err := results.Open(path, bank.Options{Timeout: 20 * time.Second})
				if err != nil {
					t.Error(err)
					return
				}
				defer s.Close()
				if _, err := s.Mark(quiz, []results.Paper{{Pupil: fmt.Sprintf("P%02d", i+1), Form: "A", Answers: right(2)}}, "MK", friday); err != nil {
					t.Error(err)
				}
			})
		}
		all.Wait()
		s := open(t, path)
		if papers, err := s.Papers(quiz.ID); len(papers) != 5 || err != nil {
			t.Errorf("%d papers, %v", len(papers), err)
		}
		s.Close()
	}
}

// A pupil is forgotten in full: no byte of the file tells of the pupil, and the others stay.
func TestForget(t *testing.T) {
	path := marked(t)
	held, err := results.Forget(path, "P07", friday, bank.Options{})
	if err != nil || len(held) != 1 || held[0] != (results.Forgotten{Class: "2A", Papers: 1, Earlier: 1}) {
		t.Fatalf("%+v, %v", held, err)
	}
	left, err := os.ReadFile(path)
	if err != nil || bytes.Contains(left, []byte("P07")) || bytes.Contains(left, []byte("512")) {
		t.Errorf("the file still tells of the pupil, %v", err)
	}
	text, err := all(path)
	if err != nil || strings.Count(text, "Pupil:P") != 23 || results.ProveFile(path) != nil {
		t.Errorf("%v, %v:\n%s", err, results.ProveFile(path), text)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if held, err := results.Forget(path, "P07", friday, bank.Options{}); len(held) != 0 || err != nil {
		t.Errorf("%+v, %v", held, err)
	}
}

// A file of any bytes is opened or refused; nothing crashes, and what opens can be read.
func FuzzOpen(f *testing.F) {
	whole, err := os.ReadFile(marked(f))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(0, []byte{}, len(whole))
	f.Add(4096*3, []byte("\xff\xff\xff\xff"), len(whole))
	f.Add(100, []byte("evenhand"), 5000)
	f.Fuzz(func(t *testing.T, at int, junk []byte, length int) {
		spoilt := bytes.Clone(whole[:max(0, min(length, len(whole)))])
		if at >= 0 && at < len(spoilt) {
			copy(spoilt[at:], junk)
		}
		path := filepath.Join(t.TempDir(), "marks")
		if err := os.WriteFile(path, spoilt, 0o600); err != nil {
			t.Fatal(err)
		}
		if text, err := all(path); err == nil && text == "" {
			t.Error("it opens and says nothing")
		}
	})
}
