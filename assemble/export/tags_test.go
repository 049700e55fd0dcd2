package export_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble/export"
	"evenhand/standards/task"
)

func TestTags(t *testing.T) {
	lines := []string{"81-38", "half past 4", "47?47", "  = who knows"}
	var rows []export.TagRow
	for _, line := range lines {
		rows = append(rows, export.Tag(line))
	}
	var file bytes.Buffer
	if err := export.WriteTags(&file, slices.Values(rows)); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(&file).ReadAll()
	if err != nil || len(records) != 5 {
		t.Fatalf("%d records, %v, want 5", len(records), err)
	}
	head := []string{"task", "skill", "standards", "key"}
	for _, trait := range task.AllTraits() {
		head = append(head, trait.String())
	}
	head = append(head, "difficulty", "band", "share_right", "missteps", "problem")
	if !slices.Equal(records[0], head) {
		t.Errorf("heading\n got %v\nwant %v", records[0], head)
	}
	for _, row := range []struct {
		row          int
		column, want string
	}{
		// Common Core State Standards (2010): 81 − 38 is 2.NBT.B.5; one regrouping.
		{1, "task", "81 - 38 = ?"}, {1, "key", "43"}, {1, "standards", "2.NBT.B.5"}, {1, "regroups", "1"}, {1, "problem", ""},
		{2, "task", "read 4:30"}, {2, "clock_step", "half-hour"}, {2, "regroups", ""}, {2, "standards", "1.MD.B.3"},
		{3, "key", "'="},
		{4, "task", "'= who knows"}, {4, "key", ""}, {4, "difficulty", ""}, {4, "share_right", ""}, {4, "standards", ""},
	} {
		if got := cell(t, records, row.row, row.column); got != row.want {
			t.Errorf("row %d, %s: got %q, want %q", row.row, row.column, got, row.want)
		}
	}
	if cell(t, records, 4, "problem") == "" {
		t.Error("a line that is no task has no problem")
	}
	// Brown & Burton (1978), VanLehn (1990): in 81 − 38 smaller from larger gives 57, a ten taken
	// and not paid back 53, added 119.
	missteps := strings.Split(cell(t, records, 1, "missteps"), ";")
	for _, answer := range []string{"57=", "53=", "119="} {
		if !slices.ContainsFunc(missteps, func(m string) bool { return strings.HasPrefix(m, answer) && len(m) > len(answer) }) {
			t.Errorf("no misstep %s... among %q", answer, missteps)
		}
	}
}

// BenchmarkTag100000 tags lists of a hundred thousand lines; "parse" is the reading of the
// tasks alone.
func BenchmarkTag100000(b *testing.B) {
	some := []string{"47+36", "402 - 178 = ?", "47 + ? = 83", "98, 99, ?, 101", "half past 4", "142 = ? hundreds ? tens ? ones", "no task"}
	b.Run("tag", func(b *testing.B) {
		for b.Loop() {
			rows := func(yield func(export.TagRow) bool) {
				for i := range 100_000 {
					if !yield(export.Tag(some[i%len(some)])) {
						return
					}
				}
			}
			if err := export.WriteTags(io.Discard, rows); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("parse", func(b *testing.B) {
		for b.Loop() {
			for i := range 100_000 {
				_, _ = task.Parse(some[i%len(some)])
			}
		}
	})
}
