package bank_test

import (
	"fmt"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/standards/task"
)

// monday is when everything happens in these tests, in week 48 of 2026.
var monday = time.Date(2026, 11, 23, 8, 0, 0, 0, time.UTC)

// tempBank makes a bank for one test. When the test ends the bank is checked from
// end to end, whatever the test was about.
func tempBank(t testing.TB) *bank.Bank {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	must(t, err)
	t.Cleanup(func() {
		mustBeWhole(t, b)
		must(t, b.Close())
	})
	return b
}

func mustBeWhole(t testing.TB, b *bank.Bank) bank.Report {
	t.Helper()
	report, err := b.Check()
	must(t, err)
	for _, problem := range report.Problems {
		t.Errorf("check: %s", problem)
	}
	if report.Older > 0 {
		t.Errorf("check: %d items are not what their tasks give: %s", report.Older, report.Example)
	}
	return report
}

func must(t failer, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// written is an item that Ms. Reyes wrote.
func written(asked string) bank.Item {
	return bank.NewItem(task.MustParse(asked), "", bank.Origin{Kind: "written", By: "Ms. Reyes"})
}

func writtenAll(tasks ...string) []bank.Item {
	items := make([]bank.Item, len(tasks))
	for i, asked := range tasks {
		items[i] = written(asked)
	}
	return items
}

// mustAdd adds items and gives their IDs.
func mustAdd(t testing.TB, b *bank.Bank, items ...bank.Item) []string {
	t.Helper()
	added, err := b.Add(items, "Ms. Reyes", monday)
	must(t, err)
	ids := make([]string, len(added))
	for i, a := range added {
		ids[i] = a.ID
	}
	return ids
}

// tasksFound lists what a query finds, in its order.
func tasksFound(t testing.TB, b *bank.Bank, q bank.Query) []string {
	t.Helper()
	tasks := []string{}
	for it, err := range b.Find(q) {
		must(t, err)
		tasks = append(tasks, it.Question("en"))
	}
	return tasks
}

// sums makes n different addition items of two numbers, of several skills.
func sums(n int) []bank.Item {
	items := make([]bank.Item, 0, n)
	for a := 1; len(items) < n; a++ {
		for b := 1; b <= a && len(items) < n; b++ {
			items = append(items, written(fmt.Sprintf("%d + %d = ?", a, b)))
		}
	}
	return items
}

func mustEqual(t failer, got, want any) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("got  %+v\nwant %+v", got, want)
	}
}

// failer is a test, or a run of a property.
type failer interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
}
