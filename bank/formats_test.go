package bank_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/standards"
)

// told is everything that is kept of a revision, in an order of its own: what the fields are
// called and how they are stored may change, what they say may not.
func told(it bank.Item) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s revision %d by %s at %s because %q\n", it.ID, it.Revision, it.By, it.At.Format(time.RFC3339), it.Reason)
	fmt.Fprintf(&b, "asks %q en %q es %q key %q notes %q\n", it.Task, it.Wording["en"], it.Wording["es"], it.Key, it.Notes)
	fmt.Fprintf(&b, "%s %s %s %v traits %v\n", it.Skill, it.Look, it.Standing, it.Codes, it.Traits.List())
	fmt.Fprintf(&b, "predicted %s, %d seconds, %s by %s seed %d file %s row %d", it.Predicted, it.Seconds,
		it.Origin.Kind, it.Origin.By, it.Origin.Seed, it.Origin.File, it.Origin.Row)
	if m := it.Measured; m != nil {
		fmt.Fprintf(&b, ", measured %s ± %s on %d", m.Difficulty, m.StandardError, m.Answers)
	}
	return b.String()
}

// What the program of commit 8c40245 said of its own bank (show --json), typed off. A backslash at the end of a line
// goes on with the next.
var format1 = map[string][]string{
	"01M89PY9E8R9MNDJT19V1602WB": {
		`01M89PY9E8R9MNDJT19V1602WB revision 1 by Ms. Reyes at 2026-11-25T15:59:41Z because ""
asks "47 + 36 = ?" en "" es "" key "83" notes ""
add-two-digit sentence ready [2.NBT.B.5] traits [regroups=1 crosses_100=false reaches_100=false digits=2 \
regroup_places=ones doubles=false near_doubles=false makes_ten=false unknown=result largest=83 addends=2]
predicted -1.056, 45 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 2`,
		`01M89PY9E8R9MNDJT19V1602WB revision 2 by MK at 2026-11-25T15:59:41Z because "too like another"
asks "47 + 38 = ?" en "" es "" key "85" notes ""
add-two-digit sentence ready [2.NBT.B.5] traits [regroups=1 crosses_100=false reaches_100=false digits=2 \
regroup_places=ones doubles=false near_doubles=false makes_ten=false unknown=result largest=85 addends=2]
predicted -1.056, 45 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 2`,
		`01M89PY9E8R9MNDJT19V1602WB revision 3 by Mr. Okafor at 2026-11-25T15:59:41Z because "so said the team"
asks "47 + 38 = ?" en "" es "" key "85" notes "goes well with \"cubes\""
add-two-digit sentence ready [2.NBT.B.5] traits [regroups=1 crosses_100=false reaches_100=false digits=2 \
regroup_places=ones doubles=false near_doubles=false makes_ten=false unknown=result largest=85 addends=2]
predicted -1.056, 45 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 2`,
		`01M89PY9E8R9MNDJT19V1602WB revision 4 by MK at 2026-11-25T15:59:42Z because "calibrated on 4 papers"
asks "47 + 38 = ?" en "" es "" key "85" notes "goes well with \"cubes\""
add-two-digit sentence ready [2.NBT.B.5] traits [regroups=1 crosses_100=false reaches_100=false digits=2 \
regroup_places=ones doubles=false near_doubles=false makes_ten=false unknown=result largest=85 addends=2]
predicted -1.056, 45 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 2, measured -1.425 ± 0.679 on 1`,
	},
	"01M89PY9E8R9MNDJT19W8WMKT7": {
		`01M89PY9E8R9MNDJT19W8WMKT7 revision 1 by Ms. Reyes at 2026-11-25T15:59:41Z because ""
asks "402 - 178 = ?" en "" es "" key "224" notes ""
subtract-within-1000 sentence ready [2.NBT.B.7] traits [regroups=2 crosses_100=false reaches_100=false digits=3 \
regroup_places=ones+tens zero_crossed=true unknown=result largest=402]
predicted 1.177, 65 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 3`,
		`01M89PY9E8R9MNDJT19W8WMKT7 revision 2 by JK at 2026-11-25T15:59:41Z because "for next year"
asks "402 - 178 = ?" en "" es "" key "224" notes ""
subtract-within-1000 sentence retired [2.NBT.B.7] traits [regroups=2 crosses_100=false reaches_100=false digits=3 \
regroup_places=ones+tens zero_crossed=true unknown=result largest=402]
predicted 1.177, 65 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 3`,
	},
	"01M89PY9E8R9MNDJT19XDEGTHC": {
		`01M89PY9E8R9MNDJT19XDEGTHC revision 1 by Ms. Reyes at 2026-11-25T15:59:41Z because ""
asks "" en "Mia has 3 shells and finds 7 more. How many has she now?" es "" key "10" notes ""
stories-within-10 words ready [K.OA.A.2 K.OA.A.3 1.OA.A.1 2.OA.A.1] traits []
predicted -1.600, 65 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 6`,
		`01M89PY9E8R9MNDJT19XDEGTHC revision 2 by SV at 2026-11-25T15:59:41Z because "in Spanish, too"
asks "" en "Mia has 3 shells and finds 7 more. How many has she now?" es "Mía tiene 3 conchas y encuentra 7. ¿Cuántas tiene ahora?" key "10" notes ""
stories-within-10 words ready [K.OA.A.2 K.OA.A.3 1.OA.A.1 2.OA.A.1] traits []
predicted -1.600, 65 seconds, imported by Ms. Reyes seed 0 file reyes.csv row 6`,
	},
	"01M89PY9E8MM49PF1Y0ZRCY9HN": {
		`01M89PY9E8MM49PF1Y0ZRCY9HN revision 1 by MK at 2026-11-25T15:59:41Z because ""
asks "59 + 35 = ?" en "" es "" key "94" notes ""
add-two-digit sentence ready [2.NBT.B.5] traits [regroups=1 crosses_100=false reaches_100=false digits=2 \
regroup_places=ones doubles=false near_doubles=false makes_ten=false unknown=result largest=94 addends=2]
predicted -1.056, 45 seconds, generated by MK seed 48 file  row 0`,
	},
}

// A bank of the first format opens, to read and to change, and says what it said then.
func TestFormat1Opens(t *testing.T) {
	dir := t.TempDir()
	must(t, os.CopyFS(dir, os.DirFS("../testdata/formats/1")))
	for _, readOnly := range []bool{true, false} {
		b, err := bank.Open(filepath.Join(dir, "team.bank"), bank.Options{ReadOnly: readOnly})
		must(t, err)
		defer b.Close()
		count, err := b.Count()
		must(t, err)
		mustEqual(t, count, map[bank.Standing]int{bank.Ready: 19, bank.Retired: 1})
		for id, want := range format1 {
			history, err := b.History(id)
			must(t, err)
			var got []string
			for _, it := range history {
				got = append(got, told(it))
			}
			told, wanted := strings.Join(got, "\n"), strings.ReplaceAll(strings.Join(want, "\n"), "\\\n", "")
			if told != wanted {
				t.Errorf("read only %v: got\n%s\nwant\n%s", readOnly, told, wanted)
			}
		}
		uses, err := b.Uses("01M89PY9E8R9MNDJT19V1602WB")
		must(t, err)
		mustEqual(t, uses, []bank.Use{{Quiz: "Friday check, week 48", Week: "2026-W48", At: time.Date(2026, 11, 25, 15, 59, 42, 0, time.UTC)}})
		mustEqual(t, len(tasksFound(t, b, bank.Query{Unused: "2026-W48"})), 11)
		mustEqual(t, len(tasksFound(t, b, bank.Query{File: "reyes.csv", Author: "Ms. Reyes"})), 5)
		must(t, b.Close())
	}
}

// What is kept as JSON, as it was typed off once: a field that is renamed, or that changes
// places with another, could not be read in the banks that are there.
func TestNamesOfWhatIsKept(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	id := mustAdd(t, b, written("47 + 36 = ?"))[0]
	it, err := b.Get(id)
	must(t, err)
	_, err = b.SavePlan(bank.Plan{Name: "Friday", Pacing: true, Text: "forms = 2", By: "MK", At: monday})
	must(t, err)
	must(t, b.RemovePlan("friday", "JK", monday.Add(time.Hour)))
	must(t, b.KeepQuiz(bank.Quiz{ID: "0123456789abcdef", Title: "Friday check", Week: "2026-W48", Plan: "the plan", From: "the first", MakeUp: "the absent",
		Seed: 7, ShareRight: 70, Level: -250, Off: []int{1}, Uneven: [3]int{2, 3, 4}, Uses: 5, Objective: 6, Bound: 8, Verdict: "best",
		Forms: []bank.QuizForm{{Name: "A", Scores: [3]int{9, 10, 11}, Items: []bank.QuizItem{
			{Item: it, Row: "sums", Uses: 12, Shared: true, Choices: []string{"83", "73"}, Basis: bank.LearntBasis},
		}}},
		Class: "2A", PacingWeek: 13, TakenBack: true, By: "SV", At: monday,
		Printed: &bank.Printed{Paper: "a4", Lang: "es", Both: true, Large: true, Columns: 1, Spaced: true, Fewer: 5, Aloud: true, HTML: true, Strips: true}}))
	must(t, b.KeepTable(bank.Table{Number: 2, At: monday, By: "MK", Papers: 3, Answers: 4,
		Levels:  map[standards.SkillID]bank.Learnt{"add-tens": {Default: -2300, Value: -2000, SE: 100, Answers: 40}},
		Weights: map[string]bank.Learnt{"regroups": {Default: 444, Value: 500, SE: 90, Answers: 41}}}))
	must(t, b.SetReview(bank.Review{Anyone: true, By: "MK", At: monday}))
	must(t, b.Close())
	all := kept(t, path)
	for _, want := range []string{
		`{"name":"Friday","pacing":true,"text":"forms = 2","revision":1,"by":"MK","at":"2026-11-23T08:00:00Z"}`,
		`{"name":"Friday","pacing":true,"text":"forms = 2","revision":2,"by":"JK","at":"2026-11-23T09:00:00Z","removed":true}`,
		`{"number":2,"at":"2026-11-23T08:00:00Z","by":"MK","papers":3,"answers":4,` +
			`"levels":{"add-tens":{"default":-2300,"value":-2000,"se":100,"answers":40}},` +
			`"weights":{"regroups":{"default":444,"value":500,"se":90,"answers":41}}}`,
		`{"anyone":true,"by":"MK","at":"2026-11-23T08:00:00Z"}`,
		`"id":"0123456789abcdef","title":"Friday check","week":"2026-W48"`,
		`"plan":"the plan"`, `"from":"the first"`, `"make_up":"the absent"`, `"seed":"7"`, `"share_right":70`, `"level":-250`,
		`"off":[1]`, `"uneven":[2,3,4]`, `"uses":5`, `"objective":6`, `"bound":8`, `"verdict":"best"`, `"name":"A"`, `"expected_scores":[9,10,11]`,
		`"items":[{"id":"` + id + `","revision":1,"task":"47 + 36 = ?","key":"83","skill":"add-two-digit","look":"sentence","standards":["2.NBT.B.5"],`,
		`"class":"2A"`, `"pacing_week":13`, `"taken_back":true`, `"printed":{"paper":"a4","lang":"es","both":true,"large":true,"columns":1,` +
			`"spaced":true,"fewer":5,"aloud":true,"html":true,"strips":true}`,
		`"row":"sums","uses":12,"shared":true,"choices":["83","73"],"basis":"learnt"`, `"by":"SV","at":"2026-11-23T08:00:00Z"`,
	} {
		if !strings.Contains(all, strings.ReplaceAll(want, `"`, `\"`)) {
			t.Errorf("the bank doesn't keep %s", want)
		}
	}
	for _, want := range []string{`about "schema": "1"`, fmt.Sprintf(`about "catalogue": "%d"`, standards.CatalogueNumber), `about "what":`, `about "traits":`} {
		if !strings.Contains(all, want) {
			t.Errorf("the bank doesn't keep %s", want)
		}
	}
	if t.Failed() {
		t.Log(all)
	}
}
