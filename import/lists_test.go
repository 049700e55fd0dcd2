package intake_test

import (
	"fmt"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/testdata"

	intake "evenhand/import"
)

// sample reads one of the three colleagues' lists.
func sample(t *testing.T, name string) *intake.List {
	t.Helper()
	data, err := testdata.Lists.ReadFile("lists/" + name)
	if err != nil {
		t.Fatal(err)
	}
	l, err := intake.Open(name, data, intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// The three lists one after the other into one bank: what each is, how its columns are
// understood, and what becomes of it.
func TestThreeColleaguesLists(t *testing.T) {
	b := newBank(t)
	for _, c := range []struct {
		name, written, meanings, skipped, summary string
		byHand                                    int
		problems                                  []string
	}{
		{
			"mo-adding-and-taking-away.csv", "Windows-1252, semicolons between cells, 38 lines",
			"number answer skill question difficulty standards by notes",
			"1 title, 2 title, 4 heading, 38 total",
			"32 rows: 27 added, 1 already here, 4 set aside", 2,
			[]string{
				"line 7, answer: 28 + 46 is 74, the list says 64",
				"line 15, question: 5 - 8 is less than 0; quizzes for these grades stay with 0 and more",
				"line 28, question: 2026-01-02 is a date, which a spreadsheet may have made of 1-2, 2-1 or 1/2; write what was meant",
				`line 34, answer: there is no answer, and it can't be worked out from "Señora Paz has 52 stickers and gives some away. How many ..."; write one`,
			},
		},
		{
			"jk-clocks.txt", "UTF-16, tabs between cells, 30 lines",
			"question answer skill by notes",
			"1 heading, 30 total",
			"28 rows: 24 added, 1 already here, 3 set aside", 1,
			[]string{
				"line 11, answer: the answer to read 9:15 is 9:15, the list says 9:03",
				`line 21, question: "4:75" has 75 minutes; an hour has 60, so minutes go from 00 to 59`,
				"line 26, question: 46024 is the date 2026-01-02 as a spreadsheet keeps it, which a spreadsheet may have made of 1-2, 2-1 or 1/2; write what was meant",
			},
		},
		{
			"sv-friday-mix.csv", "UTF-8, commas between cells, 39 lines",
			"question answer skill",
			"1 title",
			"34 rows: 25 added, 5 already here, 4 set aside", 7,
			[]string{
				"line 5: this row has 5 cells, the list has 3 columns; put quotation marks around a cell with commas in it",
				"line 23, answer: 83 - 47 is 36, the list says 44",
				`line 35, answer: there is no answer, and it can't be worked out from "Name a shape with three corners"; write one`,
				"line 37, question: 55 + 45 = 110 has nothing to fill in, and 55 + 45 is 100",
			},
		},
	} {
		l := sample(t, c.name)
		if got := fmt.Sprintf("%s, %d lines", l.Written(), l.Total); got != c.written {
			t.Errorf("%s is written in %s, want %s", c.name, got, c.written)
		}
		if got := meanings(l); got != c.meanings {
			t.Errorf("%s: columns %s, want %s", c.name, got, c.meanings)
		}
		var skipped []string
		for _, line := range l.Skipped() {
			skipped = append(skipped, fmt.Sprintf("%d %s", line.First, line.Kind))
		}
		if got := strings.Join(skipped, ", "); got != c.skipped {
			t.Errorf("%s: skipped %s, want %s", c.name, got, c.skipped)
		}
		r := mustImport(t, b, l, intake.ImportOptions{})
		if r.Summary() != c.summary || r.ByHand() != c.byHand {
			t.Errorf("%s: %s, %d by hand, want %s, %d", c.name, r.Summary(), r.ByHand(), c.summary, c.byHand)
		}
		if want := strings.Join(c.problems, "\n"); problems(r) != want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.name, problems(r), want)
		}
	}
}

// A quiz needs material of many skills.
func TestListsCoverManySkills(t *testing.T) {
	b := newBank(t)
	for _, name := range []string{"mo-adding-and-taking-away.csv", "jk-clocks.txt", "sv-friday-mix.csv"} {
		mustImport(t, b, sample(t, name), intake.ImportOptions{})
	}
	skills := map[string]int{}
	for it, err := range b.Find(bank.Query{}) {
		if err != nil {
			t.Fatal(err)
		}
		skills[string(it.Skill)]++
	}
	if len(skills) < 24 {
		t.Errorf("%d skills: %v", len(skills), skills)
	}
}

func TestSecondTimeAddsNothing(t *testing.T) {
	b := newBank(t)
	for range 2 {
		for _, name := range []string{"mo-adding-and-taking-away.csv", "jk-clocks.txt", "sv-friday-mix.csv"} {
			mustImport(t, b, sample(t, name), intake.ImportOptions{})
		}
	}
	again := mustImport(t, b, sample(t, "sv-friday-mix.csv"), intake.ImportOptions{})
	if want := "34 rows: 0 added, 30 already here, 4 set aside"; again.Summary() != want {
		t.Errorf("got %s, want %s", again.Summary(), want)
	}
	if counts, err := b.Count(); err != nil || counts[bank.Ready] != 75 || counts[bank.Draft] != 1 {
		t.Errorf("the bank holds %v, %v", counts, err)
	}
}
