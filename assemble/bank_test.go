package assemble_test

import (
	"path/filepath"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// noon is when everything in these tests happens: a Monday in 2026-W48.
var noon = time.Date(2026, 11, 23, 12, 0, 0, 0, time.UTC)

// newBank makes an empty bank that is closed when the test ends.
func newBank(t testing.TB) *bank.Bank {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b
}

// fridayBank holds what the example plan asks for.
func fridayBank(t testing.TB) *bank.Bank {
	t.Helper()
	b := newBank(t)
	for _, skill := range []standards.SkillID{"add-two-digit", "subtract-regrouping", "tens-and-ones", "clock-half-hour"} {
		addMade(t, b, skill, 60, 7)
	}
	return b
}

// addMade puts count generated items of a skill into the bank.
func addMade(t testing.TB, b *bank.Bank, skill standards.SkillID, count int, seed uint64, where ...string) []string {
	t.Helper()
	wish, err := standards.ParseWhere(where)
	if err != nil {
		t.Fatal(err)
	}
	made, err := generate.Make(generate.Request{Skill: skill, Where: wish, Count: count, Seed: seed})
	if err != nil {
		t.Fatal(err)
	}
	items := make([]bank.Item, len(made.Tasks))
	for i, asked := range made.Tasks {
		items[i] = bank.NewItem(asked, "", bank.Origin{Kind: "generated", Seed: seed})
	}
	return addItems(t, b, items...)
}

func addTasks(t testing.TB, b *bank.Bank, tasks ...string) []string {
	t.Helper()
	items := make([]bank.Item, len(tasks))
	for i, asked := range tasks {
		items[i] = bank.NewItem(task.MustParse(asked), "", bank.Origin{Kind: "written", By: "lin"})
	}
	return addItems(t, b, items...)
}

func addItems(t testing.TB, b *bank.Bank, items ...bank.Item) []string {
	t.Helper()
	added, err := b.Add(items, "lin", noon)
	if err != nil {
		t.Fatal(err)
	}
	ids := make([]string, len(added))
	for i, a := range added {
		ids[i] = a.ID
	}
	return ids
}

// use records that items stood in a quiz of a week.
func use(t testing.TB, b *bank.Bank, week string, ids ...string) {
	t.Helper()
	if err := b.RecordUse(ids, bank.Use{Quiz: "earlier", Week: week, At: noon}); err != nil {
		t.Fatal(err)
	}
}
