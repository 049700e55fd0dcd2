package intake_test

import (
	"strings"
	"testing"

	intake "evenhand/import"
)

// A row of a package that can't be read is set aside with the package's own reason, and with its words where it has some.
func TestPackagedRowsKeepTheirReason(t *testing.T) {
	book, err := intake.OpenPackaged("theirs.zip", "package", []intake.PackagedRow{
		{Question: "47 + 36 = ___", Answer: "83", Where: "q1.xml"},
		{Where: "q2.xml", Problem: "q2.xml: a document type"},
		{Question: "What time is it?", Where: "q3.xml", Problem: "it has img in it"},
	})
	if err != nil {
		t.Fatal(err)
	}
	b := newBank(t)
	report := mustImport(t, b, book.Lists[0], intake.ImportOptions{})
	for _, reason := range []string{"q2.xml: a document type", "it has img in it"} {
		if said := problems(report); !strings.Contains(said, reason) {
			t.Errorf("said %q, want %q in it", said, reason)
		}
	}
	if got := items(t, b, report); len(got) != 1 || got[0].Task != "47 + 36 = ?" {
		t.Errorf("came in: %v", got)
	}
}
