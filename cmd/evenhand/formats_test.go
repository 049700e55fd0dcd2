package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// Files of the first format, used together as a team would: a quiz of that time is found among its marks, its
// grid is read again, its bank's items are chosen anew. What must be said is what the program of commit 8c40245 said.
func TestFormat1Together(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/formats/1")); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	t.Setenv("EVENHAND_BANK", "team.bank")
	t.Setenv("EVENHAND_BY", "MK")
	for _, c := range []struct{ line, says string }{
		{"mark friday --class 2A --history P03", "1: 52 | 2: 65 | 3: 82 | 4: half past 7 | 5: 12:30"},
		{"report friday --csv answers", `2A,P05,2026-W48,"Friday check, week 48",A,4,01M89PY9E80Q51GK93EDEJK98G,clock-half-hour,say 7:30,half past 7,12:00,wrong,`},
		{"report 2026-W48 --csv answers", `2A,P02,2026-W48,"Friday check, week 48",B,2,01M89PY9E8MM49PF1Y0X3VRHGM,add-two-digit,36 + 29 = ?,65,,wrong,`},
		{"mark friday grid.csv --class 2A", "0 new, 1 changed, 4 as before"},
		{"show 01M89PY9E8R9MNDJT19V1602WB", "Friday check, week 48, week 2026-W48"},
		{"plan plan.toml", "Friday check, week 48: 2 forms, each of 5 items"},
		{"assemble plan.toml --from friday/quiz.csv --out again --week 2026-W48 --try", "best possible"},
	} {
		var stdout, stderr bytes.Buffer
		code := run(append([]string{"evenhand"}, strings.Fields(c.line)...), strings.NewReader(""), &stdout, &stderr)
		if said := stdout.String() + stderr.String(); code != 0 || !strings.Contains(said, c.says) {
			t.Errorf("evenhand %s: exit %d, said\n%s\nwant %q in it", c.line, code, said, c.says)
		}
	}
}
