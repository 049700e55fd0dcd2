package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"evenhand/bank"
)

// One proved copy a day, and the oldest go; what else stands in the folder stays.
func TestNightlyKeepsSomeDays(t *testing.T) {
	dir := t.TempDir()
	b, err := bank.Create(filepath.Join(dir, "team.bank"))
	must(t, err)
	defer b.Close()
	copies := filepath.Join(dir, "copies")
	must(t, os.Mkdir(copies, 0o700))
	must(t, os.WriteFile(filepath.Join(copies, "evenhand-before-summer.bank"), nil, 0o600))
	n := nightly{bank: b, dir: copies, keep: 3, say: t.Logf}
	day := time.Date(2026, time.November, 25, 9, 0, 0, 0, time.UTC)
	for i := range 10 {
		must(t, n.copy(day.Add(time.Duration(i)*12*time.Hour)))
	}
	files, err := os.ReadDir(copies)
	must(t, err)
	var names []string
	for _, file := range files {
		names = append(names, file.Name())
	}
	want := []string{"evenhand-2026-11-27.bank", "evenhand-2026-11-28.bank", "evenhand-2026-11-29.bank", "evenhand-before-summer.bank"}
	if len(names) != len(want) {
		t.Fatalf("%q, want %q", names, want)
	}
	for i := range want {
		if names[i] != want[i] {
			t.Errorf("%q, want %q", names, want)
		}
	}
	must(t, bank.ProveFile(filepath.Join(copies, want[0])))
}
