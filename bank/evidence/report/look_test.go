package report_test

import (
	"testing"

	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/standards/task"
)

// A misstep is suggested only where a child could make it on the sheet that it sat: a bond has no
// sign to overlook, and hands that are drawn are not misread.
func TestMisstepsAreThoseOfTheSheet(t *testing.T) {
	for _, c := range []struct {
		asks, written string
		look          task.Look
		told          bool
	}{
		{"52 - 18 = ?", "70", "", true}, {"52 - 18 = ?", "70", task.LookColumn, true}, {"52 - 18 = ?", "70", task.LookBond, false},
		{"draw 9:00", "12:45", task.LookBlankFace, true}, {"draw 9:00", "9:12", task.LookSaidFace, false},
	} {
		posed := task.MustParse(c.asks)
		kinds := report.Explain(results.Item{Asks: posed.String(), Key: posed.Key(), Look: c.look}, c.written)
		if told := len(kinds) > 0; told != c.told {
			t.Errorf("%s as %q, answered %s: told %v, want %v", c.asks, c.look, c.written, kinds, c.told)
		}
	}
}
