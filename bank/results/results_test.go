package results_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenhand/bank"
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

// open opens results in a new folder and closes them when the test ends.
func open(t interface {
	Fatal(...any)
	Cleanup(func())
}, path string) *results.Store {
	s, err := results.Open(path, bank.Options{Timeout: time.Second})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func right(n int) []results.Answer { return slices.Repeat([]results.Answer{{State: results.Right}}, n) }

func TestMarkingAgainKeepsWhatWas(t *testing.T) {
	s, quiz := open(t, filepath.Join(t.TempDir(), "team.bank.marks")), two()
	paper := results.Paper{Class: "2A", Pupil: "P07", Form: "A", Answers: right(2)}
	mark := func(want results.Tally) {
		t.Helper()
		if got, err := s.Mark(quiz, []results.Paper{paper}, "MK", friday); err != nil || got != want {
			t.Fatalf("got %+v, %v; want %+v", got, err, want)
		}
	}
	mark(results.Tally{New: 1})
	mark(results.Tally{Same: 1})
	paper.Answers = []results.Answer{quiz.Forms[0].Items[0].Answered("52"), {State: results.NotReached}}
	mark(results.Tally{Changed: 1})

	history, err := s.History(quiz.ID, "2A", "P07")
	if err != nil || len(history) != 2 || history[0].Revision != 1 || history[1].Revision != 2 {
		t.Fatalf("history %+v, %v", history, err)
	}
	if got := history[1].Answers[0]; got != (results.Answer{State: results.Wrong, Written: "52"}) {
		t.Errorf("got %+v", got)
	}
	if codes, err := s.Pupils("2A"); err != nil || !slices.Equal(codes, []string{"P07"}) {
		t.Errorf("class %v, %v", codes, err)
	}
	quizzes, err := s.Quizzes()
	if err != nil || len(quizzes) != 1 || !reflect.DeepEqual(quizzes[0], quiz) {
		t.Errorf("quizzes %+v, %v", quizzes, err)
	}
}

// Whatever is marked in whatever order, each paper stands as it was marked last and its
// history holds every different marking once.
func TestStoreAgainstModel(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		path := filepath.Join(dir, "marks")
		defer os.Remove(path)
		s, err := results.Open(path, bank.Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		quiz := two()
		state := rapid.SampledFrom([]results.State{results.Right, results.Wrong, results.Absent, results.NotReached})
		model := map[string][][]results.Answer{}
		for range rapid.IntRange(1, 8).Draw(t, "markings") {
			pupil := rapid.SampledFrom([]string{"P01", "P02", "P03"}).Draw(t, "pupil")
			answers := []results.Answer{{State: state.Draw(t, "first")}, {State: state.Draw(t, "second")}}
			past := model[pupil]
			if len(past) == 0 || !slices.Equal(past[len(past)-1], answers) {
				model[pupil] = append(past, answers)
			}
			if _, err := s.Mark(quiz, []results.Paper{{Pupil: pupil, Form: "B", Answers: answers}}, "MK", friday); err != nil {
				t.Fatal(err)
			}
		}
		for pupil, want := range model {
			history, err := s.History(quiz.ID, "", pupil)
			if err != nil {
				t.Fatal(err)
			}
			var got [][]results.Answer
			for _, p := range history {
				got = append(got, p.Answers)
			}
			if !reflect.DeepEqual(got, want) {
				t.Fatalf("%s: got %v, want %v", pupil, got, want)
			}
		}
		papers, err := s.Papers(quiz.ID)
		if err != nil || len(papers) != len(model) {
			t.Fatalf("%d papers, %v; want %d", len(papers), err, len(model))
		}
	})
}

func TestPapersThatDontFit(t *testing.T) {
	s, quiz := open(t, filepath.Join(t.TempDir(), "marks")), two()
	for _, row := range []struct {
		paper results.Paper
		want  string
	}{
		{results.Paper{Pupil: "P07", Form: "C", Answers: right(2)}, `of form "C", but the quiz has A, B`},
		{results.Paper{Pupil: "P07", Form: "A", Answers: right(3)}, "3 answers, but form A has 2 items"},
		{results.Paper{Pupil: "Ada", Form: "A", Answers: right(2)}, "names belong in your own roster"},
		{results.Paper{Class: "2A\x00", Pupil: "P07", Form: "A", Answers: right(2)}, "is no name of a class"},
	} {
		good := results.Paper{Pupil: "P01", Form: "A", Answers: right(2)}
		_, err := s.Mark(quiz, []results.Paper{good, row.paper}, "MK", friday)
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("got %v, want %q", err, row.want)
		}
		if papers, err := s.Papers(quiz.ID); len(papers) != 0 || err != nil {
			t.Errorf("%d papers, %v: all or none", len(papers), err)
		}
	}
}

func TestCodes(t *testing.T) {
	for text, want := range map[string]string{"p7": "P07", "P 07": "P07", "P007": "P07", "ab-12": "AB12", "ñ1": "Ñ01", "P123": "P123"} {
		if got, err := results.ParseCode(text); err != nil || got != want {
			t.Errorf("%q: got %q, %v; want %q", text, got, err, want)
		}
	}
	for _, text := range []string{"", "Ada", "7", "P", "P07b", "Adam 7"} {
		if got, err := results.ParseCode(text); err == nil {
			t.Errorf("%q is the code %q", text, got)
		}
	}
	got, err := results.ParseCodes("P01 - P03, p9;P02")
	if err != nil || !slices.Equal(got, []string{"P01", "P02", "P03", "P09"}) {
		t.Errorf("got %v, %v", got, err)
	}
	for _, text := range []string{"P05-P01", "P01-Q05", "P0-P9999"} {
		if got, err := results.ParseCodes(text); err == nil {
			t.Errorf("%q are the codes %v", text, got)
		}
	}
}

// What is read as codes is codes, and reads as the same codes again.
func FuzzParseCodes(f *testing.F) {
	for _, text := range []string{"P01-P24", "p1,p2;P03", "P05-P01", "Ñ1–Ñ3", "P00000", "-", "P1-9"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		codes, err := results.ParseCodes(text)
		if err != nil {
			return
		}
		again, err := results.ParseCodes(strings.Join(codes, " "))
		if err != nil || !slices.Equal(again, codes) {
			t.Errorf("%q reads as %q, and these as %q, %v", text, codes, again, err)
		}
	})
}

func TestJudge(t *testing.T) {
	quiz := quizOf("2026-W48", []string{"read 3:30", "say 3:30", "27 + 35 = ?"})
	byHand := results.Item{Asks: "How many legs has a spider?", Key: "Eight"}
	letter := results.Item{Asks: "Which is round?\nA) ball\nB) box\nC) book", Key: "A"}
	word := results.Item{Asks: letter.Asks, Key: "ball"}
	for _, row := range []struct {
		item    results.Item
		written string
		want    results.State
	}{
		{quiz.Forms[0].Items[0], "3:30", results.Right}, {quiz.Forms[0].Items[0], "03:30", results.Right},
		{quiz.Forms[0].Items[0], "half past 3", results.Right}, {quiz.Forms[0].Items[0], "3:06", results.Wrong},
		{quiz.Forms[0].Items[2], " 62 ", results.Right}, {quiz.Forms[0].Items[2], "512", results.Wrong},
		{byHand, "eight.", results.Right}, {byHand, "8", results.Wrong},
		{letter, "A", results.Right}, {letter, "a)", results.Right}, {letter, "ball", results.Right},
		{letter, "A) Ball.", results.Right}, {letter, "box", results.Wrong}, {letter, "B", results.Wrong},
		{letter, "B) ball", results.Wrong},
		{word, "ball", results.Right}, {word, "A", results.Right}, {word, "C", results.Wrong}, {word, "D", results.Wrong}, {word, "", results.Wrong},
	} {
		if got := row.item.Answered(row.written); got.State != row.want {
			t.Errorf("%s: %q is %s, want %s", row.item.Asks, row.written, got.State, row.want)
		}
	}
}

func TestQuizID(t *testing.T) {
	a, b := two(), two()
	b.Title = "Another name"
	if a.ID != results.NewQuiz(b.Title, b.Week, b.Forms).ID {
		t.Error("the title makes another quiz")
	}
	b.Forms[1].Items[0].Key = "85"
	for _, other := range []results.Quiz{results.NewQuiz(a.Title, "2026-W49", a.Forms), results.NewQuiz(b.Title, b.Week, b.Forms)} {
		if other.ID == a.ID {
			t.Errorf("%+v has the ID of another quiz", other)
		}
	}
}

// Marks whose bank was renamed are pointed at where marks are looked for, and nowhere else.
func TestMarksOfARenamedBank(t *testing.T) {
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	if err := os.WriteFile(in("b.bank.marks"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := results.Open(in("new.bank.marks"), bank.Options{ReadOnly: true})
	if want := in("b.bank.marks") + " holds marks of a bank that is not there"; !errors.Is(err, results.ErrNone) || !strings.Contains(err.Error(), want) {
		t.Errorf("%v, want %s", err, want)
	}
	if err := os.WriteFile(in("b.bank"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := results.Open(in("new.bank.marks"), bank.Options{ReadOnly: true}); err != results.ErrNone {
		t.Errorf("beside another bank and its marks: %v", err)
	}
}

func TestFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank.marks")
	if _, err := results.Open(path, bank.Options{ReadOnly: true}); err != results.ErrNone {
		t.Errorf("without a file: %v", err)
	}
	s := open(t, path)
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v; want only the owner to read", info.Mode(), err)
	}
	if _, err := results.Open(path, bank.Options{Timeout: 50 * time.Millisecond}); err == nil || !strings.Contains(err.Error(), "in use") {
		t.Errorf("while it is open: %v", err)
	}
	if _, err := s.Mark(two(), []results.Paper{{Pupil: "P01", Form: "A", Answers: right(2)}}, "MK", friday); err != nil {
		t.Fatal(err)
	}
	s.Close()
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	// bbolt would take the program down on a file that is cut short.
	for _, size := range []int{0, 100, 5000, len(whole) / 2} {
		if err := os.WriteFile(path, whole[:size], 0o600); err != nil {
			t.Fatal(err)
		}
		if s, err := results.Open(path, bank.Options{}); err == nil {
			s.Close()
			t.Errorf("cut to %d bytes it opens", size)
		}
	}
	b, err := bank.Create(path + "2")
	if err != nil {
		t.Fatal(err)
	}
	b.Close()
	if _, err := results.Open(path+"2", bank.Options{}); err == nil || !strings.Contains(err.Error(), "holds no results") {
		t.Errorf("a bank as results: %v", err)
	}
}
