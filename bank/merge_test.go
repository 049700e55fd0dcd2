package bank_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenhand/bank"
	"evenhand/bank/store"
	"evenhand/standards"
)

// kept is all that a bank's file holds, but for the indexes that Check proves right and in
// which sets have numbers of their own.
func kept(t failer, path string) string {
	t.Helper()
	var all strings.Builder
	s, err := bank.OpenStore(path, bank.Options{ReadOnly: true})
	must(t, err)
	must(t, s.View(context.Background(), func(r store.Reader) error {
		for _, bucket := range []string{
			"about", "items", "revisions", "uses", "fingerprints", "doubles", "joined", "places", "taken back", "plans", "quizzes",
			"lists", "list rows",
		} {
			for e, err := range r.Scan(bucket, store.Range{}) {
				if err != nil {
					return err
				}
				fmt.Fprintf(&all, "%s %q: %q\n", bucket, e.Key, e.Value)
			}
		}
		return nil
	}))
	must(t, s.Close())
	return all.String()
}

// mergedInto is a copy of the first bank into which the others were merged in turn.
func mergedInto(t failer, dir, name string, paths ...string) string {
	t.Helper()
	path := filepath.Join(dir, name)
	copyFile(t, paths[0], path)
	for _, other := range paths[1:] {
		before, err := os.ReadFile(other)
		must(t, err)
		mustMerge(t, path, other, bank.MergeOptions{})
		after, err := os.ReadFile(other)
		must(t, err)
		if !bytes.Equal(before, after) {
			t.Fatalf("the other bank was written")
		}
	}
	return path
}

func copyFile(t failer, from, to string) {
	t.Helper()
	data, err := os.ReadFile(from)
	must(t, err)
	must(t, os.WriteFile(to, data, 0o600))
}

func mustMerge(t failer, path, other string, o bank.MergeOptions) bank.Merged {
	t.Helper()
	b, err := bank.Open(path, bank.Options{})
	must(t, err)
	from, err := bank.Open(other, bank.Options{ReadOnly: true})
	must(t, err)
	m, err := b.Merge(from, o)
	must(t, err)
	report, err := b.Check()
	must(t, err)
	if !report.Whole() {
		t.Fatalf("after the merge: %v", report.Problems)
	}
	must(t, from.Close())
	must(t, b.Close())
	return m
}

// life is a bank to which things happen at random.
type life struct {
	bank  *bank.Bank
	who   string
	clock time.Time
	only  []string // what may happen
}

// What may happen to a bank, and to the one item of a bank, whose histories meet more often then.
var (
	anything = []string{
		"add", "add", "revise", "revise", "note", "retire", "use", "back", "plan", "quiz", "measure", "learn", "review", "list",
		"list back",
	}
	changes = []string{"note", "note", "revise", "measure", "retire", "learn"}
)

func (l *life) live(t *rapid.T, label string) {
	ids := []string{}
	for it, err := range l.bank.Find(bank.Query{}) {
		must(t, err)
		ids = append(ids, it.ID)
	}
	// Two changes may fall into one second, but a clock does not go back.
	l.clock = l.clock.Add(time.Duration(rapid.IntRange(0, 2).Draw(t, label+" later")) * time.Second)
	what := rapid.SampledFrom(l.only).Draw(t, label)
	if len(ids) == 0 {
		what = "add"
	}
	id := func() string { return rapid.SampledFrom(ids).Draw(t, "id") }
	switch what {
	case "add":
		l.clock = l.clock.Add(time.Millisecond) // IDs in the order of their adding
		_, err := l.bank.Add([]bank.Item{fewTasks(t)}, l.who, l.clock)
		must(t, err)
	case "revise":
		next := fewTasks(t)
		_, err := l.bank.Revise(id(), l.who, "another task", l.clock, func(it *bank.Item) error {
			it.Task, it.Look, it.Wording = next.Task, next.Look, nil
			return nil
		})
		if err != nil && !strings.Contains(err.Error(), "asks the same already") {
			t.Fatal(err)
		}
	case "note":
		_, err := l.bank.Revise(id(), l.who, "a note", l.clock, func(it *bank.Item) error {
			it.Notes, it.Standing = rapid.SampledFrom([]string{"", "good", "poor"}).Draw(t, "notes"), bank.Ready
			return nil
		})
		if own := new(bank.OwnDraftError); !errors.As(err, &own) { // it waits for a colleague
			must(t, err)
		}
	case "retire":
		_, err := l.bank.Retire(id(), l.who, "worn out", l.clock)
		must(t, err)
	case "measure":
		_, err := l.bank.Revise(id(), l.who, "calibrated", l.clock, func(it *bank.Item) error {
			it.Measured = &bank.Measured{Difficulty: standards.Difficulty(rapid.IntRange(-9, 9).Draw(t, "difficulty")), Answers: 30}
			return nil
		})
		must(t, err)
	case "use", "back":
		quiz := rapid.SampledFrom([]string{"Friday check", "Monday start"}).Draw(t, "quiz")
		if what == "back" {
			_, err := l.bank.TakeBack(quiz, "2026-W48")
			must(t, err)
			return
		}
		must(t, l.bank.RecordUse([]string{id()}, bank.Use{Quiz: quiz, Week: "2026-W48", At: l.clock}))
	case "quiz":
		it, err := l.bank.Get(id())
		must(t, err)
		must(t, l.bank.KeepQuiz(bank.Quiz{ID: "q" + it.ID, Title: "Friday check", Week: "2026-W48", By: l.who, At: l.clock,
			Forms: []bank.QuizForm{{Name: "A", Items: []bank.QuizItem{{Item: it}}}}}))
	case "plan":
		text := rapid.SampledFrom([]string{"forms = 1", "forms = 2", "forms = 3"}).Draw(t, "text")
		_, err := l.bank.SavePlan(bank.Plan{Name: rapid.SampledFrom([]string{"friday", "monday"}).Draw(t, "name"), Text: text, By: l.who, At: l.clock})
		must(t, err)
	case "list":
		rows := make([]bank.ListRow, rapid.SampledFrom([]int{1, 2, 2001}).Draw(t, "rows"))
		must(t, l.bank.KeepList(bank.List{Name: rapid.SampledFrom([]string{"a.csv", "b.csv"}).Draw(t, "name"), By: l.who, At: l.clock}, slices.Values(rows)))
	case "list back":
		must(t, l.bank.TakeListBack("a.csv", l.who, l.clock))
	case "review":
		must(t, l.bank.SetReview(bank.Review{Anyone: rapid.Bool().Draw(t, "anyone"), By: l.who, At: l.clock}))
	case "learn":
		before, err := l.bank.Table()
		must(t, err)
		must(t, l.bank.KeepTable(bank.Table{Number: before.Number + 1, At: l.clock, By: l.who, Papers: rapid.IntRange(1, 9).Draw(t, "papers")}))
	}
}

// fewTasks is so few that banks often have the same.
func fewTasks(t *rapid.T) bank.Item {
	return written(fmt.Sprintf("%d + 5 = ?", rapid.IntRange(1, 6).Draw(t, "n")))
}

// lives makes three banks: some are copies of one that has lived a while, perhaps of one another or of a
// bank of an earlier format or catalogue, and then all go their ways; they may meet and part again.
func lives(t *rapid.T, dir string) []string {
	whose, only := []string{"MK", "JK", "SV"}, anything
	if rapid.Bool().Draw(t, "one item") {
		only = changes
	}
	var paths []string
	for i, who := range whose {
		path := filepath.Join(dir, who+".bank")
		os.Remove(path)
		from := rapid.IntRange(-1, i-1).Draw(t, "copy of")
		format := rapid.IntRange(0, 11).Draw(t, "format")
		switch {
		case from >= 0:
			copyFile(t, paths[from], path)
		case format == 1 || format == 2:
			copyFile(t, fmt.Sprintf("../testdata/formats/%d/team.bank", format), path)
		default:
			b, err := bank.Create(path)
			must(t, err)
			must(t, b.Close())
		}
		if rapid.IntRange(0, 3).Draw(t, "catalogue") == 0 {
			asOfTheFirstCatalogue(t, path)
		}
		liveOn(t, path, who, only, 8)
		paths = append(paths, path)
	}
	for range rapid.IntRange(0, 2).Draw(t, "meetings") {
		i := rapid.IntRange(0, 2).Draw(t, "host")
		mustMerge(t, paths[i], paths[(i+rapid.IntRange(1, 2).Draw(t, "guest"))%3], bank.MergeOptions{})
		liveOn(t, paths[i], whose[i], only, 3)
	}
	return paths
}

// liveOn lets things happen to a bank, on a computer whose clock may differ.
func liveOn(t *rapid.T, path, who string, only []string, most int) {
	l := &life{who: who, only: only, clock: monday.Add(time.Duration(rapid.IntRange(0, 3).Draw(t, "clock")) * time.Second)}
	b, err := bank.Open(path, bank.Options{})
	must(t, err)
	l.bank = b
	// A clock that started behind the copied bank's would put IDs out of their order.
	for it, err := range b.Find(bank.Query{}) {
		must(t, err)
		if history, err := b.History(it.ID); err == nil && history[0].At.After(l.clock) {
			l.clock = history[0].At
		}
	}
	for range rapid.IntRange(0, most).Draw(t, "steps") {
		l.live(t, who)
	}
	must(t, b.Close())
}

// The laws of merging: the order of two banks, doing it again, and the order of three make no
// difference to any byte that is kept.
func TestMergeLaws(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		p := lives(t, dir)
		same := func(law, one, other string) {
			t.Helper()
			a, b := strings.Split(kept(t, one), "\n"), strings.Split(kept(t, other), "\n")
			for _, line := range a {
				if !slices.Contains(b, line) {
					t.Errorf("%s: only in the first: %s", law, line)
				}
			}
			for _, line := range b {
				if !slices.Contains(a, line) {
					t.Errorf("%s: only in the second: %s", law, line)
				}
			}
		}
		ab := mergedInto(t, dir, "ab", p[0], p[1])
		ba := mergedInto(t, dir, "ba", p[1], p[0])
		same("either order", ab, ba)
		same("again", ab, mergedInto(t, dir, "abb", p[0], p[1], p[1], p[0]))
		same("with itself", p[0], mergedInto(t, dir, "aa", p[0], p[0]))
		abc := mergedInto(t, dir, "abc", ab, p[2])
		bc := mergedInto(t, dir, "bc", p[1], p[2])
		same("three", abc, mergedInto(t, dir, "a(bc)", p[0], bc))
		same("three, the last first", abc, mergedInto(t, dir, "cba", p[2], ba))
	})
}
