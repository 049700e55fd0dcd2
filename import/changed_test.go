package intake_test

import (
	"fmt"
	"strings"
	"testing"

	intake "evenhand/import"
)

// What spreadsheets make of times: a share of the day (3:30 is 3.5/24 = 0.1458333), or
// seconds and a half of the day. ECMA-376 Part 1, 18.17.4: a time is the fraction of a
// day, a date the days since 1899-12-30.
func TestChangedTimesAreRestored(t *testing.T) {
	for cell, want := range map[string]string{
		"3:30":                 "read 3:30",
		"3:30:00":              "read 3:30",
		"3:30:00 AM":           "read 3:30",
		"0.1458333":            "read 3:30",
		"0,14583":              "read 3:30",
		".1458333333":          "read 3:30",
		"0.145833333333333":    "read 3:30",
		"15:30:00":             "read 3:30 pm",
		"3:30:00 PM":           "read 3:30 pm",
		"0.6458333":            "read 3:30 pm",
		"12:15:00 PM":          "read 12:15",
		"0.5":                  "read 12:00",
		"12:15:00 AM":          "read 12:15 am",
		"0:15:00":              "read 12:15 am",
		"1899-12-30T03:29:59Z": "read 3:30",
		"read 3:30:00 AM":      "read 3:30",
		"draw 0.1458333":       "draw 3:30",
	} {
		b, r := importText(t, "Clock;Answer\n"+cell+";\nread 4:00;4:00\nread 5:00;5:00\n")
		if problems(r) != "" {
			t.Errorf("%s: %s", cell, problems(r))
			continue
		}
		if got := items(t, b, r)[0].Task; got != want {
			t.Errorf("%s is read as %s, want %s", cell, got, want)
		}
	}
}

func TestChangedAnswersAreRestored(t *testing.T) {
	_, r := importText(t, "question,answer\nread 3:30,0.1458333\ndraw 4:00,4:00:00 AM\nhalf past 8,8:30:00\nread 3:30 pm,0.6458333\n"+
		"47 + 36,83.0\n\"match 3:30, 4:00\",\"3:30:00, 4:00:00\"\n")
	if problems(r) != "" || r.Count(intake.Added) != 6 {
		t.Errorf("%s\n%s", r.Summary(), problems(r))
	}
}

// A list of nothing but changed times still has its questions found.
func TestAllTimesChanged(t *testing.T) {
	for _, text := range []string{"Shown,Answer\n0.1458333,3:30\n0.1666667,4:00\n", "3:30:00 AM\n4:00:00 AM\n"} {
		b, r := importText(t, text)
		if all := items(t, b, r); len(all) != 2 || all[0].Task != "read 3:30" || all[1].Task != "read 4:00" {
			t.Errorf("%q: %v\n%s", text, all, problems(r))
		}
	}
}

// Outside a list about clocks a share of a day is not taken for a time.
func TestShareOfADayNeedsAClock(t *testing.T) {
	_, r := importText(t, "question,answer\n47 + 36,83\n27 + 35,62\n0.1458333,\n5 + 3,0.3333333\n")
	want := "line 4, question: 0.1458333 may be the time 3:30 that a spreadsheet has changed; if so, write 3:30\n" +
		"line 5, answer: 5 + 3 is 8, the list says 0.3333333"
	if problems(r) != want {
		t.Errorf("got\n%s\nwant\n%s", problems(r), want)
	}
}

// A date is never guessed back into what it was. 2026-01-02 is day 46024: ECMA-376 as above.
func TestDatesAreSetAside(t *testing.T) {
	for _, cell := range []string{"2026-01-02", "46024", "2026-1-2", "2026-01-02 00:00:00", "1/2/2026", "02.01.2026", "2-Jan", "Jan-02", "2 ene", "03/04/26"} {
		_, r := importText(t, fmt.Sprintf("question,answer\n47 + 36,83\n%s,\n3 - 1,%s\nHow much is shaded?,%s\n", cell, cell, cell))
		got := r.Problems()
		if len(got) != 3 || r.Count(intake.Added) != 1 {
			t.Errorf("%s: %s\n%s", cell, r.Summary(), problems(r))
			continue
		}
		for i, column := range []string{"question", "answer", "answer"} {
			if got[i].Column != column || !strings.Contains(got[i].Reason.String(), "date") {
				t.Errorf("%s: %s, want the %s and a word about dates", cell, got[i], column)
			}
		}
	}
	_, r := importText(t, "question,answer\n46024,1\n2026-01-02,1\n3 - 1,2\n")
	want := "line 2, question: 46024 is the date 2026-01-02 as a spreadsheet keeps it, which a spreadsheet may " +
		"have made of 1-2, 2-1 or 1/2; write what was meant\n" +
		"line 3, question: 2026-01-02 is a date, which a spreadsheet may have made of 1-2, 2-1 or 1/2; write what was meant"
	if problems(r) != want {
		t.Errorf("got\n%s\nwant\n%s", problems(r), want)
	}
}

// What looks a little like a date or a time and is none.
func TestHonestCellsStay(t *testing.T) {
	_, r := importText(t, "question,answer,standards\n12-7,5,2.NBT.5\n=7+8,=15,2.MD.10\n5 - 3,+2,1.OA.6\n10-3-2,5,\n1000 - 900,100,\n")
	if problems(r) != "" {
		t.Error(problems(r))
	}
}
