package cells_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/cells"
)

func TestGuard(t *testing.T) {
	// OWASP, "CSV Injection": a cell beginning with one of these runs; one apostrophe before it stops that.
	for _, cell := range []string{"=1+1", "+7", "-5", "@SUM(A1)", "\tx", "\rx", "\nx", "= 12"} {
		if got := cells.Guard(cell); got != "'"+cell {
			t.Errorf("Guard(%q) = %q, want one apostrophe before it", cell, got)
		}
	}
	for _, cell := range []string{"", "47 + 36 = ?", "'tis 4 o'clock", "'", "5-3"} {
		if got := cells.Guard(cell); got != cell {
			t.Errorf("Guard(%q) = %q, want it unchanged", cell, got)
		}
	}
}

func TestUnguardTakesOffOne(t *testing.T) {
	for cell, want := range map[string]string{"'-5": "-5", "''=x": "'=x", "'tis": "'tis", "-5": "-5"} {
		if got := cells.Unguard(cell); got != want {
			t.Errorf("Unguard(%q) = %q, want %q", cell, got, want)
		}
	}
}

// A round trip changes nothing, and what is written never starts a formula.
func TestCellRoundTrip(t *testing.T) {
	start := rapid.SampledFrom([]string{"", "'", "''", "=", "+", "-", "@", "\t", "\r", "\n", "−", "'="})
	rapid.Check(t, func(t *rapid.T) {
		cell := start.Draw(t, "start") + rapid.String().Draw(t, "rest")
		safe := cells.Guard(cell)
		if strings.IndexAny(safe, "=+-@\t\r\n") == 0 {
			t.Fatalf("Guard(%q) = %q still runs as a formula", cell, safe)
		}
		if back := cells.Unguard(safe); back != cell {
			t.Fatalf("%q came back as %q", cell, back)
		}
	})
}
