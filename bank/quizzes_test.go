package bank_test

import (
	"fmt"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"evenhand/bank"
)

// given is a quiz of the items as they stand, one form.
func given(t *testing.T, b *bank.Bank, id, title, week string, items ...string) bank.Quiz {
	t.Helper()
	form := bank.QuizForm{Name: "A", Scores: [3]int{1, 2, 3}}
	for _, item := range items {
		it, err := b.Get(item)
		must(t, err)
		form.Items = append(form.Items, bank.QuizItem{Item: it, Row: "row 1"})
	}
	return bank.Quiz{ID: id, Title: title, Week: week, Seed: 1<<63 + 1, Verdict: "best possible", Forms: []bank.QuizForm{form}, By: "MK", At: monday}
}

// A quiz stands as it was given, whatever becomes of its items.
func TestQuizStaysAsItWasGiven(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, writtenAll("47 + 36", "read 4:30")...)
	must(t, b.KeepQuiz(given(t, b, "aaaa1111", "Friday check", "2026-W48", ids...)))
	_, err := b.Revise(ids[0], "SV", "too like another", monday, func(it *bank.Item) error { it.Task = "48 + 17 = ?"; return nil })
	must(t, err)
	must(t, b.KeepQuiz(given(t, b, "aaaa1111", "Friday check", "2026-W48", ids...))) // the same ID: nothing changes
	q, err := b.Quiz("friday CHECK")
	must(t, err)
	it := q.Forms[0].Items[0].Item
	if it.Task != "47 + 36 = ?" || it.Key != "83" || it.Traits.Get(0) == "" || it.Revision != 1 || q.Seed != 1<<63+1 {
		t.Errorf("it stands as %+v", q)
	}
	uses, err := b.Uses(ids[1])
	must(t, err)
	if len(uses) != 1 || uses[0].Week != "2026-W48" {
		t.Errorf("its uses are %v", uses)
	}
	if report := mustBeWhole(t, b); report.Quizzes != 1 {
		t.Errorf("check counts %d quizzes", report.Quizzes)
	}
}

func TestQuizIsFoundAsItIsCalled(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, writtenAll("47 + 36", "read 4:30")...)
	must(t, b.KeepQuiz(given(t, b, "aaaa1111", "Friday check", "2026-W48", ids[0])))
	must(t, b.KeepQuiz(given(t, b, "aaaa2222", "Friday check", "2026-W49", ids[1])))
	for called, want := range map[string]string{
		"2026-w49": "aaaa2222", "aaaa1": "aaaa1111", "Friday check (2026-W48)": "aaaa1111", "aaaa2222": "aaaa2222",
	} {
		if q, err := b.Quiz(called); err != nil || q.ID != want {
			t.Errorf("%q is %s, %v; want %s", called, q.ID, err, want)
		}
	}
	for called, want := range map[string]string{
		"Friday check": "aaaa1111", "aaaa": "name one by its ID", "aa": "no quiz called", "2026-W50": "no quiz called", "": "no quiz called",
	} {
		if _, err := b.Quiz(called); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v; want %q", called, err, want)
		}
	}
}

// What was taken back is out of the list and its items are free; given again it is back.
func TestQuizTakenBack(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, written("47 + 36"))
	q := given(t, b, "aaaa1111", "Friday check", "2026-W48", ids...)
	must(t, b.KeepQuiz(q))
	_, err := b.TakeBack("Friday check", "2026-W48")
	must(t, err)
	if list, err := b.Quizzes(); err != nil || len(list) != 0 {
		t.Errorf("the list is %v, %v", list, err)
	}
	must(t, b.KeepQuiz(q))
	list, err := b.Quizzes()
	must(t, err)
	uses, err := b.Uses(ids[0])
	must(t, err)
	if len(list) != 1 || len(uses) != 1 {
		t.Errorf("given again: %d quizzes, %d uses", len(list), len(uses))
	}
	q.Week = "week 48"
	if err := b.KeepQuiz(q); err == nil {
		t.Error("a quiz of no week is kept")
	}
}

// Uses belong to quizzes: what is taken back frees no item of another quiz of the same title and week, as
// make-up forms are, and a quiz takes its make-up forms along.
func TestTakeBackOneQuiz(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, writtenAll("47 + 36", "read 4:30", "58 + 27", "33 + 44")...)
	quiz := given(t, b, "aaaa1111", "Friday check", "2026-W48", ids[0], ids[1])
	makeUp := given(t, b, "aaaa2222", "Friday check", "2026-W48", ids[2])
	makeUp.MakeUp = quiz.ID
	other := given(t, b, "aaaa3333", "Friday check", "2026-W48", ids[1], ids[3])
	for _, q := range []bank.Quiz{quiz, makeUp, other} {
		must(t, b.KeepQuiz(q))
	}
	uses := func() (n [4]int) {
		for i, id := range ids {
			list, err := b.Uses(id)
			must(t, err)
			n[i] = len(list)
		}
		return n
	}
	free, err := b.TakeBackQuiz(makeUp.ID)
	must(t, err)
	if got := uses(); free != 1 || got != [4]int{1, 1, 0, 1} {
		t.Errorf("without the make-up form: %d free, uses %v", free, got)
	}
	must(t, b.KeepQuiz(makeUp))
	free, err = b.TakeBackQuiz(quiz.ID)
	must(t, err)
	if got := uses(); free != 2 || got != [4]int{0, 1, 0, 1} {
		t.Errorf("without the quiz: %d free, uses %v", free, got)
	}
	if list, err := b.Quizzes(); err != nil || len(list) != 1 || list[0].ID != other.ID {
		t.Errorf("%v, %v", list, err)
	}
	if _, err := b.TakeBackQuiz(quiz.ID); err == nil {
		t.Error("a quiz is taken back twice")
	}
	mustBeWhole(t, b)
}

// The bank as if quizzes had been taken back reads just as a copy in which they were, also when items come later, and
// stays as it is.
func TestAsIfTakenBack(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, writtenAll("47 + 36", "read 4:30", "58 + 27", "read 5:30")...)
	quiz := given(t, b, "bbbb1111", "Friday check", "2026-W48", ids[0], ids[1])
	must(t, b.KeepQuiz(quiz))
	must(t, b.RecordUse(ids[1:3], bank.Use{Quiz: "Practice", Week: "2026-W47", At: monday}))
	as := b.AsIfTakenBack(bank.Earlier{ID: quiz.ID}, bank.Earlier{Title: "Practice", Week: "2026-W47"})
	alike := func() {
		t.Helper()
		copied := filepath.Join(t.TempDir(), "copy.bank")
		_, err := b.BackupFile(copied)
		must(t, err)
		other, err := bank.Open(copied, bank.Options{})
		must(t, err)
		defer other.Close()
		_, err = other.TakeBackQuiz(quiz.ID)
		must(t, err)
		_, err = other.TakeBack("Practice", "2026-W47")
		must(t, err)
		for _, at := range []*bank.Bank{as, other} {
			if list, err := at.Quizzes(); err != nil || len(list) != 0 {
				t.Errorf("%v, %v", list, err)
			}
		}
		if got, want := membersByGroup(t, as), membersByGroup(t, other); !reflect.DeepEqual(got, want) {
			t.Errorf("as if taken back there are\n%v\nand when they are\n%v", got, want)
		}
	}
	alike()
	mustAdd(t, b, writtenAll("29 + 44", "read 8:30")...)
	alike()
	if err := as.KeepQuiz(quiz); err == nil {
		t.Error("a quiz is kept in a bank that is only looked at")
	}
	if list, err := b.Quizzes(); err != nil || len(list) != 1 {
		t.Errorf("the bank itself keeps %v, %v", list, err)
	}
	mustBeWhole(t, b)
}

// membersByGroup lists the tasks in each group of ready items, by what the group is.
func membersByGroup(t *testing.T, b *bank.Bank) map[string][]string {
	t.Helper()
	all := map[string][]string{}
	for g, err := range b.Groups() {
		must(t, err)
		members, err := b.Members(g, 1, 0)
		must(t, err)
		name := fmt.Sprint(g.Skill, g.Look, g.Traits, g.Difficulty, g.Uses, g.LastWeek, g.Size)
		for _, m := range members {
			all[name] = append(all[name], m.Task)
		}
		slices.Sort(all[name])
	}
	return all
}

// A changed quiz takes the place of the earlier one, with its uses; where it can't, the earlier one stays.
func TestChangeQuiz(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, writtenAll("47 + 36", "read 4:30", "58 + 27")...)
	before := given(t, b, "bbbb1111", "Friday check", "2026-W48", ids[0], ids[1])
	after := given(t, b, "bbbb2222", "Friday check", "2026-W48", ids[0], ids[2])
	must(t, b.KeepQuiz(before))
	kept := func(want string, used ...int) {
		t.Helper()
		for i, id := range ids {
			list, err := b.Uses(id)
			must(t, err)
			if len(list) != used[i] {
				t.Errorf("item %d is used %d times, want %d", i, len(list), used[i])
			}
		}
		if list, err := b.Quizzes(); err != nil || len(list) != 1 || list[0].ID != want {
			t.Errorf("%v, %v", list, err)
		}
	}
	elsewhere := given(t, b, "bbbb3333", "Friday check", "2026-W48", ids[0], ids[2])
	elsewhere.Forms[0].Items[1].Item.ID = "01M89PY9E8R9MNDJT19V1602WB" // of another bank
	if err := b.ChangeQuiz(bank.Earlier{ID: before.ID}, elsewhere); err == nil {
		t.Error("a quiz of another bank's item is kept")
	}
	if err := b.ChangeQuiz(bank.Earlier{ID: "bbbb4444"}, after); err == nil {
		t.Error("a quiz takes the place of none")
	}
	kept(before.ID, 1, 1, 0)
	must(t, b.ChangeQuiz(bank.Earlier{ID: before.ID}, after))
	kept(after.ID, 1, 0, 1)
	must(t, b.ChangeQuiz(bank.Earlier{ID: after.ID}, before)) // changed back
	kept(before.ID, 1, 1, 0)
	must(t, b.ChangeQuiz(bank.Earlier{ID: before.ID}, before))
	kept(before.ID, 1, 1, 0)
	mustBeWhole(t, b)
}
