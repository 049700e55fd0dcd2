package intake_test

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	intake "evenhand/import"
)

var monday = time.Date(2026, 11, 23, 8, 0, 0, 0, time.UTC)

// newBank is an empty bank in a temporary folder, which is checked whole when the test ends.
func newBank(t testing.TB) *bank.Bank {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if report, err := b.Check(); err != nil || !report.Whole() {
			t.Errorf("the bank is not whole: %v %v", err, report.Problems)
		}
		b.Close()
	})
	return b
}

// mustOpen reads a list that is fit to be read.
func mustOpen(t testing.TB, text string) *intake.List {
	t.Helper()
	l, err := intake.Open("list.csv", []byte(text), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func mustImport(t testing.TB, b *bank.Bank, l *intake.List, o intake.ImportOptions) *intake.Report {
	t.Helper()
	o.By, o.At = "M.O.", monday
	r, err := intake.Import(b, l, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// importText brings a list into a new bank.
func importText(t testing.TB, text string) (*bank.Bank, *intake.Report) {
	t.Helper()
	b := newBank(t)
	return b, mustImport(t, b, mustOpen(t, text), intake.ImportOptions{})
}

// problems are the problems of a report, one a line.
func problems(r *intake.Report) string {
	var lines []string
	for _, p := range r.Problems() {
		lines = append(lines, p.String())
	}
	return strings.Join(lines, "\n")
}

// items are the items that a report added or found, in the order of the list.
func items(t testing.TB, b *bank.Bank, r *intake.Report) []bank.Item {
	t.Helper()
	var all []bank.Item
	for _, out := range r.Outcomes {
		if out.Problem != nil {
			continue
		}
		it, err := b.Get(out.ID)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, it)
	}
	return all
}

// meanings are the meanings of a list's columns, "-" where one isn't used.
func meanings(l *intake.List) string {
	var all []string
	for _, c := range l.Columns {
		m := string(c.Meaning)
		if m == "" {
			m = "-"
		}
		all = append(all, m)
	}
	return strings.Join(all, " ")
}
