package intake_test

import (
	"testing"

	intake "evenhand/import"
)

// A text that is wrong as a task is a question all the same from four words on; with fewer it is
// most likely a slip in a task, and is set aside (common practice).
func TestHowManyWordsMakeAQuestion(t *testing.T) {
	for text, kept := range map[string]bool{
		"take 8 away from 5": false, "write 99999 in words": false, "coins 3, 4, 7 cents here": false,
		"match 3:00 and 25:00 as you like": true,
	} {
		_, r := importText(t, "Question,Answer\n\""+text+"\",3\n")
		if got := r.Count(intake.Added) == 1; got != kept {
			t.Errorf("%s: kept %v, want %v (%s)", text, got, kept, problems(r))
		}
	}
}

// A share of a day is a time where most of a list are clocks; where half are, it is asked about.
// (A spreadsheet keeps 3:30 as 0.1458333 of a day: ECMA-376 Part 1, 18.17.4.)
func TestMoreThanHalfOfAListAreClocks(t *testing.T) {
	for list, want := range map[string]int{
		"Question\n0.1458333\n47 + 36\n":                1,
		"Question\n0.1458333\nhalf past 4\n47 + 36\n":   3,
		"Question\n0.1458333\n4:15\n47 + 36\n52 - 18\n": 3,
		"Question\n0.1458333\n4:15\n9:30\n52 - 18\n":    4,
	} {
		if _, r := importText(t, list); r.Count(intake.Added) != want {
			t.Errorf("%q: %s, want %d added: %s", list, r.Summary(), want, problems(r))
		}
	}
}
