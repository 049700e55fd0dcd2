package task_test

import (
	"testing"

	"evenhand/standards/task"
)

func TestWaysOfWorking(t *testing.T) {
	for _, row := range []struct {
		text                              string
		makeTen, breakApart, line, hundre bool
	}{
		// Common practice, no source: make the next ten with a one-digit addend, break apart
		// two-digit numbers, jump within 100 and 120 from a known start.
		{"8 + 5 = ?", true, false, true, true},
		{"5 + 8 = ?", true, false, true, true},
		{"47 + 5 = ?", true, false, true, true},
		{"4 + 5 = ?", false, false, true, true},
		{"6 + 4 = ?", false, false, true, true},
		{"10 + 4 = ?", false, false, true, true},
		{"47 + 36 = ?", false, true, true, true},
		{"63 + 45 = ?", false, true, false, true},
		{"93 + 45 = ?", false, true, false, false},
		{"40 + 36 = ?", false, false, true, true},
		{"83 - 47 = ?", false, false, true, true},
		{"47 + ? = 83", false, false, true, true},
		{"? + 36 = 83", false, false, false, false},
		{"8 - 8 = ?", false, false, true, false},
		{"9 + 4 + 6 = ?", false, false, false, false},
	} {
		has := make(map[task.Look]bool)
		for _, l := range task.MustParse(row.text).Looks() {
			has[l] = true
		}
		for look, want := range map[task.Look]bool{
			task.LookMakeTen: row.makeTen, task.LookBreakApart: row.breakApart,
			task.LookNumberLine: row.line, task.LookHundredsChart: row.hundre,
		} {
			if has[look] != want {
				t.Errorf("%s as %s: %v, want %v", row.text, look, has[look], want)
			}
		}
	}
}

func TestNextTen(t *testing.T) {
	// Worked by hand: 8 + 5 is 8 + 2 + 3, 47 + 5 is 47 + 3 + 2.
	for text, want := range map[string][2]int{"8 + 5": {2, 3}, "47 + 5": {3, 2}, "4 + 9": {1, 3}} {
		s := task.MustParse(text).(task.Sentence)
		if first, rest, ok := s.NextTen(); !ok || first != want[0] || rest != want[1] {
			t.Errorf("%s: %d and %d, %v; want %v", text, first, rest, ok, want)
		}
	}
}
