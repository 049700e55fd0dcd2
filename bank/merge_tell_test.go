package bank_test

import (
	"path/filepath"
	"testing"
	"time"

	"evenhand/bank"
)

// twoBanks are a bank and its copy, both open, with the ID of the one item that both have.
func twoBanks(t *testing.T) (team, laptop *bank.Bank, id string) {
	t.Helper()
	dir := t.TempDir()
	one, other := filepath.Join(dir, "team.bank"), filepath.Join(dir, "laptop.bank")
	b, err := bank.Create(one)
	must(t, err)
	id = mustAdd(t, b, written("47 + 36 = ?"))[0]
	must(t, b.Close())
	copyFile(t, one, other)
	team, err = bank.Open(one, bank.Options{})
	must(t, err)
	laptop, err = bank.Open(other, bank.Options{})
	must(t, err)
	t.Cleanup(func() {
		mustBeWhole(t, team)
		must(t, team.Close())
		must(t, laptop.Close())
	})
	return team, laptop, id
}

func mustMergeOpen(t *testing.T, b, from *bank.Bank) bank.Merged {
	t.Helper()
	m, err := b.Merge(from, bank.MergeOptions{})
	must(t, err)
	return m
}

func noted(notes string) func(*bank.Item) error {
	return func(it *bank.Item) error { it.Notes = notes; return nil }
}

func measured(it *bank.Item) error {
	it.Measured = &bank.Measured{Difficulty: -500, StandardError: 90, Answers: 40}
	return nil
}

// Retired in one bank and changed in the other: the later stands and both are told, until
// somebody changes the item again.
func TestRetiredThereChangedHere(t *testing.T) {
	team, laptop, id := twoBanks(t)
	_, err := team.Revise(id, "MK", "cubes help", monday.Add(time.Hour), noted("with cubes"))
	must(t, err)
	_, err = laptop.Retire(id, "SV", "worn out", monday.Add(2*time.Hour))
	must(t, err)
	m := mustMergeOpen(t, team, laptop)
	want := []bank.Apart{{ID: id, Question: "47 + 36 = ?",
		Stands: bank.Change{Revision: 3, By: "SV", On: "2026-11-23", Reason: "worn out", Question: "47 + 36 = ?", Key: "83", Standing: bank.Retired},
		Other:  bank.Change{Revision: 2, By: "MK", On: "2026-11-23", Reason: "cubes help", Question: "47 + 36 = ?", Key: "83", Standing: bank.Ready}}}
	mustEqual(t, m.Apart, want)
	apart, _, err := team.Conflicts()
	must(t, err)
	mustEqual(t, apart, want)
	it, err := team.Get(id)
	must(t, err)
	mustEqual(t, it.Standing, bank.Retired)
	_, err = team.Revise(id, "JK", "both are right", monday.Add(3*time.Hour), noted("worn out; was with cubes"))
	must(t, err)
	apart, _, err = team.Conflicts()
	must(t, err)
	mustEqual(t, len(apart), 0)
}

// What a program worked out later does not undo what a person changed before, and is no conflict.
func TestWorkingOutUndoesNoChange(t *testing.T) {
	team, laptop, id := twoBanks(t)
	_, err := team.Revise(id, "MK", "cubes help", monday.Add(time.Hour), noted("with cubes"))
	must(t, err)
	_, err = laptop.Revise(id, "SV", "calibrated", monday.Add(2*time.Hour), measured)
	must(t, err)
	m := mustMergeOpen(t, team, laptop)
	mustEqual(t, m.Apart, []bank.Apart{})
	it, err := team.Get(id)
	must(t, err)
	mustEqual(t, it.Notes, "with cubes")
	history, err := team.History(id)
	must(t, err)
	mustEqual(t, len(history), 3)
}

// The same item added in both banks is one, by either ID, with both histories and all uses; a
// change of it stands over how it was added elsewhere afterwards.
func TestTheSameItemAddedInBoth(t *testing.T) {
	team, laptop, _ := twoBanks(t)
	add := func(b *bank.Bank, at time.Time) string {
		added, err := b.Add([]bank.Item{written("38 + 45 = ?")}, "MK", at)
		must(t, err)
		return added[0].ID
	}
	first := add(team, monday.Add(time.Minute))
	_, err := team.Revise(first, "MK", "cubes help", monday.Add(time.Hour), noted("with cubes"))
	must(t, err)
	second := add(laptop, monday.Add(2*time.Hour))
	use := bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday.Add(3 * time.Hour)}
	must(t, laptop.RecordUse([]string{second}, use))

	m := mustMergeOpen(t, team, laptop)
	mustEqual(t, m.Joined, []bank.Joined{{ID: first, Others: []string{second}, Question: "38 + 45 = ?"}})
	for _, id := range []string{first, second} {
		it, err := team.Get(id)
		must(t, err)
		if it.ID != first || it.Notes != "with cubes" || it.Revision != 3 {
			t.Errorf("%s is %+v", id, it)
		}
		uses, err := team.Uses(id)
		must(t, err)
		mustEqual(t, uses, []bank.Use{use})
	}
	must(t, team.RecordUse([]string{second}, bank.Use{Quiz: "Monday start", Week: "2026-W49", At: monday}))
	_, err = team.ReviseAll([]string{first, second}, "MK", "again", monday.Add(4*time.Hour), noted("once"))
	must(t, err)
	it, err := team.Get(second)
	must(t, err)
	mustEqual(t, it.Revision, 4)
	uses, err := team.Uses(first)
	must(t, err)
	mustEqual(t, len(uses), 2)
}

// Two items that were changed to ask the same stay two, and a person is told until one of them
// is retired or changed.
func TestTwoItemsThatAskTheSameNow(t *testing.T) {
	team, laptop, id := twoBanks(t)
	_, err := team.Revise(id, "MK", "harder", monday.Add(time.Hour), func(it *bank.Item) error { it.Task = "58 + 39 = ?"; return nil })
	must(t, err)
	added, err := laptop.Add([]bank.Item{written("58 + 39 = ?")}, "SV", monday.Add(2*time.Hour))
	must(t, err)
	other := added[0].ID
	m := mustMergeOpen(t, team, laptop)
	mustEqual(t, m.Doubles, []bank.Double{{ID: other, Other: id, Question: "58 + 39 = ?"}})
	mustBeWhole(t, team)
	_, err = team.Revise(id, "MK", "back", monday.Add(3*time.Hour), func(it *bank.Item) error { it.Task = "47 + 36 = ?"; return nil })
	must(t, err)
	found, ok, err := team.Has(written("58 + 39 = ?").Fingerprint())
	must(t, err)
	mustEqual(t, []any{found, ok}, []any{other, true})
	_, doubles, err := team.Conflicts()
	must(t, err)
	mustEqual(t, doubles, []bank.Double{})
}

// A use that was taken back in one bank does not come back from a copy; one that was noted
// again afterwards does.
func TestTakenBackStaysTakenBack(t *testing.T) {
	team, laptop, id := twoBanks(t)
	use := bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}
	must(t, team.RecordUse([]string{id}, use))
	mustMergeOpen(t, laptop, team)
	_, err := team.TakeBack(use.Quiz, use.Week)
	must(t, err)
	mustMergeOpen(t, team, laptop)
	uses, err := team.Uses(id)
	must(t, err)
	mustEqual(t, len(uses), 0)
	use.At = monday.Add(time.Hour)
	must(t, laptop.RecordUse([]string{id}, use)) // noted there already: as it was
	mustMergeOpen(t, laptop, team)
	must(t, laptop.RecordUse([]string{id}, use))
	mustMergeOpen(t, team, laptop)
	uses, err = team.Uses(id)
	must(t, err)
	mustEqual(t, uses, []bank.Use{use})
}

// A quiz that was taken back in one bank is taken back in both, whichever merges the other.
func TestAQuizTakenBackThere(t *testing.T) {
	team, laptop, id := twoBanks(t)
	it, err := team.Get(id)
	must(t, err)
	must(t, team.KeepQuiz(bank.Quiz{ID: "0123456789abcdef", Title: "Friday check", Week: "2026-W48", By: "MK", At: monday,
		Forms: []bank.QuizForm{{Name: "A", Items: []bank.QuizItem{{Item: it}}}}}))
	mustMergeOpen(t, laptop, team)
	_, err = team.TakeBack("Friday check", "2026-W48")
	must(t, err)
	for _, pair := range [][2]*bank.Bank{{team, laptop}, {laptop, team}} {
		mustMergeOpen(t, pair[0], pair[1])
		quizzes, err := pair[0].Quizzes()
		must(t, err)
		uses, err := pair[0].Uses(id)
		must(t, err)
		if len(quizzes)+len(uses) != 0 {
			t.Errorf("the quiz is there: %v, %v", quizzes, uses)
		}
	}
}
