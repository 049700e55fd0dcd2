package bank_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank"
)

func TestGuardCell(t *testing.T) {
	// OWASP, "CSV Injection": a cell beginning with one of these runs; one apostrophe before it stops that.
	for _, cell := range []string{"=1+1", "+7", "-5", "@SUM(A1)", "\tx", "\rx", "\nx", "= 12"} {
		if got := bank.GuardCell(cell); got != "'"+cell {
			t.Errorf("GuardCell(%q) = %q, want one apostrophe before it", cell, got)
		}
	}
	for _, cell := range []string{"", "47 + 36 = ?", "'tis 4 o'clock", "'", "5-3"} {
		if got := bank.GuardCell(cell); got != cell {
			t.Errorf("GuardCell(%q) = %q, want it unchanged", cell, got)
		}
	}
}

func TestUnguardCellTakesOffOne(t *testing.T) {
	for cell, want := range map[string]string{"'-5": "-5", "''=x": "'=x", "'tis": "'tis", "-5": "-5"} {
		if got := bank.UnguardCell(cell); got != want {
			t.Errorf("UnguardCell(%q) = %q, want %q", cell, got, want)
		}
	}
}

// A round trip changes nothing, and what is written never starts a formula.
func TestCellRoundTrip(t *testing.T) {
	start := rapid.SampledFrom([]string{"", "'", "''", "=", "+", "-", "@", "\t", "\r", "\n", "−", "'="})
	rapid.Check(t, func(t *rapid.T) {
		cell := start.Draw(t, "start") + rapid.String().Draw(t, "rest")
		safe := bank.GuardCell(cell)
		if strings.IndexAny(safe, "=+-@\t\r\n") == 0 {
			t.Fatalf("GuardCell(%q) = %q still runs as a formula", cell, safe)
		}
		if back := bank.UnguardCell(safe); back != cell {
			t.Fatalf("%q came back as %q", cell, back)
		}
	})
}
