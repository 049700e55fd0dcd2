package results_test

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
)

// One proved copy a day, and the oldest go; what else stands in the folder stays.
func TestCopiesKeepSomeDays(t *testing.T) {
	dir := t.TempDir()
	b, err := bank.Create(filepath.Join(dir, "team.bank"))
	must(t, err)
	defer b.Close()
	copies := filepath.Join(dir, "copies")
	must(t, os.Mkdir(copies, 0o700))
	must(t, os.WriteFile(filepath.Join(copies, "evenhand-before-summer.bank"), nil, 0o600))
	n := results.Copies{Dir: copies, Keep: 3}
	day := time.Date(2026, time.November, 25, 9, 0, 0, 0, time.UTC)
	for i := range 10 {
		must(t, n.Daily(b, day.Add(time.Duration(i)*12*time.Hour)))
	}
	files, err := os.ReadDir(copies)
	must(t, err)
	var names []string
	for _, file := range files {
		names = append(names, file.Name())
	}
	want := []string{"evenhand-2026-11-27.bank", "evenhand-2026-11-28.bank", "evenhand-2026-11-29.bank", "evenhand-before-summer.bank"}
	if !slices.Equal(names, want) {
		t.Fatalf("%q, want %q", names, want)
	}
	must(t, n.Prove(want[0]))
	byHand, err := n.Make(b, day.Add(30*24*time.Hour))
	must(t, err)
	listed, err := n.List()
	must(t, err)
	if len(listed) != 4 || listed[0].Name != byHand || listed[0].Marks || listed[0].Size == 0 {
		t.Errorf("%+v", listed)
	}
	must(t, os.WriteFile(filepath.Join(copies, byHand), []byte("damaged"), 0o600))
	if n.Prove(byHand) == nil {
		t.Error("a damaged copy is proved")
	}
	for _, name := range []string{"../team.bank", "evenhand-before-summer.bank", ""} {
		if _, err := n.File(name); err == nil {
			t.Errorf("%q is taken for a copy", name)
		}
	}
}

// A copy that fails in the middle leaves nothing of the pupils behind, which no later day would find and remove.
func TestFailedCopyLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	b, err := bank.Create(filepath.Join(dir, "team.bank"))
	must(t, err)
	s := open(t, results.Path(b.Path()))
	_, err = s.Mark(two(), []results.Paper{{Class: "2A", Pupil: "P07", Form: "A", Answers: right(2)}}, "MK", friday)
	must(t, errors.Join(err, s.Close(), b.Close()))
	copies := results.Copies{Dir: filepath.Join(dir, "copies"), Keep: 3}
	if copies.Daily(b, friday) == nil {
		t.Fatal("a bank that is closed was copied")
	}
	if left, err := os.ReadDir(copies.Dir); err != nil || len(left) > 0 {
		t.Errorf("%v is left, %v", left, err)
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
