package intake_test

import (
	"slices"
	"strings"
	"testing"
	"testing/quick"

	intake "evenhand/import"
)

// A row that repeats an earlier one ends as it would by itself: with a blank more behind it,
// which makes its cells others, it is judged anew.
func TestRepeatsEndAsTheyWouldByThemselves(t *testing.T) {
	lines := []string{"47 + 36 = ?,83", "47 + 36 = ?,84", "36 + 47 = ?,", "47 + 36 = ?,83", "What is a square?,four", "What is a square?,3",
		"half past 4,4:30", "8 = 3 + 5,", ","}
	law := func(picks []uint8) bool {
		var same, apart []string
		for i, pick := range picks {
			line := lines[int(pick)%len(lines)]
			same, apart = append(same, line), append(apart, line+strings.Repeat(" ", i+1))
		}
		ends := func(lines []string) (fates []string) {
			_, report := importText(t, "question,answer\n47 + 36 = ?,83\n"+strings.Join(lines, "\n")+"\n")
			for _, out := range report.Outcomes {
				text := string(out.Fate)
				if out.Problem != nil {
					text += out.Problem.Column + string(rune('0'+out.Problem.Line-out.First))
				}
				fates = append(fates, text)
			}
			return fates
		}
		return slices.Equal(ends(same), ends(apart))
	}
	if err := quick.Check(law, &quick.Config{MaxCount: 15}); err != nil {
		t.Error(err)
	}
}

// The rows that were here already are named with what they equal.
func TestAlreadyHereIsNamed(t *testing.T) {
	b, first := importText(t, "47 + 36 = ?\n7 + 5 = ?\n47 + 36 = ?\n")
	id := first.Outcomes[0].ID
	if got, _ := first.AlreadyHere(9); !slices.Equal(got, []string{"line 3 asks the same as line 1 (item " + id + ")"}) {
		t.Error(got)
	}
	dry := mustImport(t, b, mustOpen(t, "8 + 9 = ?\n7 + 8 = ?\n8 + 9 = ?\n9 + 8 =\n"), intake.ImportOptions{DryRun: true})
	if got, _ := dry.AlreadyHere(9); !slices.Equal(got, []string{"line 3 asks the same as line 1", "line 4 asks the same as line 1"}) {
		t.Error(got)
	}
	again := mustImport(t, b, mustOpen(t, "7 + 6 = ?\n47 + 36 = ?\n"), intake.ImportOptions{})
	if got, _ := again.AlreadyHere(9); !slices.Equal(got, []string{"line 2 asks the same as item " + id}) {
		t.Error(got)
	}
}
