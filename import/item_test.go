package intake_test

import (
	"fmt"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"

	intake "evenhand/import"
)

func TestWrongAnswers(t *testing.T) {
	for row, want := range map[string]string{
		"47 + 36;73":         "line 2, answer: 47 + 36 is 83, the list says 73",
		"83 = 47 + ?;46":     "line 2, answer: the answer to 83 = 47 + ? is 36, the list says 46",
		"? = 47 + 36;73":     "line 2, answer: 47 + 36 is 83, the list says 73",
		"63 ○ 36;<":          "line 2, answer: the answer to 63 ? 36 is >, the list says <",
		"98, 99, ?, 101;102": "line 2, answer: the answer to 98, 99, ?, 101 is 100, the list says 102",
		"read 3:30;6:15":     "line 2, answer: the answer to read 3:30 is 3:30, the list says 6:15",
		"5 - 8;3":            "line 2, question: 5 - 8 is less than 0; quizzes for these grades stay with 0 and more",
		"4:75;":              `line 2, question: "4:75" has 75 minutes; an hour has 60, so minutes go from 00 to 59`,
		"98;99":              "line 2, question: ",
		"What comes next?;":  `line 2, answer: there is no answer, and it can't be worked out from "What comes next?"; write one`,
		";12":                "line 2, question: there is no question here",
	} {
		_, r := importText(t, "question;answer\n"+row+"\n1 + 1;2\n")
		if got := problems(r); !strings.HasPrefix(got, want) || got == "" || r.Count(intake.Added) != 1 {
			t.Errorf("%s\ngot  %s\nwant %s", row, got, want)
		}
	}
}

// An understood item needs no answer; what else is said of it is kept or compared.
func TestUnderstoodItem(t *testing.T) {
	b, r := importText(t, "Topic;Level;Question;Pregunta;Answer;Look;Standard;By;Notes\n"+
		"add-two-digit;hard;63 + 45;¿Cuánto suman 63 fichas y 45 fichas?;;column;2.NBT.5;T.L.;use blocks\n"+
		"adding;;47 + 36;;83;clock-face;K.ZZ.9;;\n")
	all := items(t, b, r)
	want := bank.NewItem(task.MustParse("63 + 45 = ?"), task.LookColumn, bank.Origin{Kind: "imported", File: "list.csv", Row: 2, By: "T.L."})
	want.Wording = map[string]string{"es": "¿Cuánto suman 63 fichas y 45 fichas?"}
	want.Notes = "use blocks; level: hard"
	want.ID, want.Revision, want.By, want.At = all[0].ID, 1, "M.O.", monday
	if got, want := fmt.Sprintf("%+v", all[0]), fmt.Sprintf("%+v", want); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if by := all[1].Origin.By; by != "M.O." {
		t.Errorf("a row without author is by %q, want who brings the list", by)
	}
	// The standard of 63 + 45 is that of sums within 1000, as it passes 100: Common Core
	// State Standards for Mathematics (2010), 2.NBT.5 and 2.NBT.7.
	notes := []string{
		`line 2, skill: the list says "add-two-digit"; by its numbers 63 + 45 = ? is add-past-100`,
		"line 2, standards: the list says 2.NBT.5; by its numbers 63 + 45 = ? meets 2.NBT.B.7",
		"line 3, look: 47 + 36 = ? can't be shown as clock-face; it is shown as sentence",
		`line 3, standards: "K.ZZ.9" is no standard from kindergarten to grade 2; 47 + 36 = ? meets 2.NBT.B.5`,
	}
	if got, want := fmt.Sprint(r.Notes), fmt.Sprint(notes); got != want {
		t.Errorf("notes\n%s\nwant\n%s", got, want)
	}
}

// An item that isn't understood is kept with its question and answer.
func TestItemByHand(t *testing.T) {
	b, r := importText(t, "question,answer,skill,standard,grade\n"+
		"Which shape has three corners?,a triangle,music,2.G.1,2\n"+
		"¿Cuántas patas tienen 4 perros?,16,count-by-steps,,\n"+
		"Shade 1/2 of 8 counters.,4,facts,,\n"+
		"6 × 2 = ?,12,,,\n"+
		"√9 = ?,3,,,\n"+
		"Draw a line as long as your thumb.,about 5 cm,,,\n")
	if r.Count(intake.Added) != 6 || r.ByHand() != 6 {
		t.Fatalf("%s, %d by hand\n%s", r.Summary(), r.ByHand(), problems(r))
	}
	all := items(t, b, r)
	for i, it := range all {
		standing := bank.Ready
		if it.Skill == "" {
			standing = bank.Draft // until somebody has looked at it
		}
		if !it.ByHand() || it.Standing != standing || it.Look != task.LookWords {
			t.Errorf("item %d: %+v", i, it)
		}
	}
	if it := all[0]; it.Skill != "" || it.Key != "a triangle" || standards.JoinCodes(it.Codes, it.Skill) != "2.G.A.1" || it.Notes != "grade: 2; skill: music" {
		t.Errorf("got %+v", it)
	}
	if it := all[1]; it.Wording["es"] == "" || it.Wording["en"] != "" || it.Skill != "count-by-steps" {
		t.Errorf("got %+v", it)
	}
	notes := []string{
		`line 2, skill: "music" is no skill known here; name one for this item by hand`,
		`line 4, skill: "facts" may be make-ten; facts-within-20; name one for this item by hand`,
	}
	if got, want := fmt.Sprint(r.Notes), fmt.Sprint(notes); got != want {
		t.Errorf("notes\n%s\nwant\n%s", got, want)
	}
}

func TestSkillForAllByHand(t *testing.T) {
	b := newBank(t)
	r := mustImport(t, b, mustOpen(t, "question,answer,skill\nHow many legs has a dog?,4,\nHow many tens in 90?,9,tens and ones\n"),
		intake.ImportOptions{Skill: "facts-within-20"})
	all := items(t, b, r)
	if all[0].Skill != "facts-within-20" || all[1].Skill != "tens-and-ones" {
		t.Errorf("skills %s and %s", all[0].Skill, all[1].Skill)
	}
}

// The same question by hand with another answer is not taken for the same.
func TestByHandWithAnotherAnswer(t *testing.T) {
	b, first := importText(t, "question,answer\nHow many legs has a dog?,4\nhow many legs has a dog,FOUR\nHow many legs has a dog?, 4\n")
	if got, want := problems(first), "line 3, answer: line 2 asks the same and has the answer 4, the list says FOUR"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	second := mustImport(t, b, mustOpen(t, "question,answer\nHow many legs has a dog?,3\n"), intake.ImportOptions{})
	want := "line 2, answer: item " + first.Outcomes[0].ID + " asks the same and has the answer 4, the list says 3"
	if problems(second) != want {
		t.Errorf("got %q, want %q", problems(second), want)
	}
}

func TestAlreadyHereAlsoTurnedAroundAndRetired(t *testing.T) {
	b, first := importText(t, "question,answer\n47 + 36,83\n3:30,3:30\n")
	for i, out := range first.Outcomes {
		if i == 1 {
			if _, err := b.Retire(out.ID, "T.L.", "too easy", monday); err != nil {
				t.Fatal(err)
			}
		}
	}
	for _, dry := range []bool{true, false} {
		r := mustImport(t, b, mustOpen(t, "question,answer\n36 + 47 = __,83\nhalf past 3,\n27 + 35,62\n35 + 27,62\n"), intake.ImportOptions{DryRun: dry})
		added := map[bool]string{true: "1 to be added", false: "1 added"}[dry]
		if want := "4 rows: " + added + ", 3 already here, 0 set aside"; r.Summary() != want {
			t.Errorf("got %s, want %s", r.Summary(), want)
		}
		if r.Outcomes[0].ID != first.Outcomes[0].ID || r.Outcomes[0].Fate != intake.Here {
			t.Errorf("36 + 47: %+v, want the item %s", r.Outcomes[0], first.Outcomes[0].ID)
		}
		if want := "line 3: item " + first.Outcomes[1].ID + " is here but retired"; len(r.Notes) != 1 || r.Notes[0].String() != want {
			t.Errorf("notes %v, want %s", r.Notes, want)
		}
	}
}
