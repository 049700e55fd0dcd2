package bank_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
)

// What the bank of formats/2 holds beside its items: each field by its name, in an order of our own.

func stamp(at time.Time) string { return at.Format(time.RFC3339) }

func toldPlan(p bank.Plan) string {
	return fmt.Sprintf("plan %q revision %d by %s at %s pacing %v removed %v: %q", p.Name, p.Revision, p.By, stamp(p.At), p.Pacing, p.Removed, p.Text)
}

func toldQuiz(q bank.Quiz) string {
	var b strings.Builder
	fmt.Fprintf(&b, "quiz %s %q week %s class %q by %s at %s taken back %v\n", q.ID, q.Title, q.Week, q.Class, q.By, stamp(q.At), q.TakenBack)
	fmt.Fprintf(&b, "plan %q pacing week %d from %q make-up of %q seed %d\n", q.Plan, q.PacingWeek, q.From, q.MakeUp, q.Seed)
	if p := q.Printed; p != nil {
		fmt.Fprintf(&b, "printed on %s in %s large %v columns %d spaced %v fewer %d aloud %v html %v strips %v\n",
			p.Paper, p.Lang, p.Large, p.Columns, p.Spaced, p.Fewer, p.Aloud, p.HTML, p.Strips)
	}
	fmt.Fprintf(&b, "%d in 100 at level %d: off %v uneven %v uses %d objective %d bound %d %q\n",
		q.ShareRight, q.Level, q.Off, q.Uneven, q.Uses, q.Objective, q.Bound, q.Verdict)
	for _, f := range q.Forms {
		fmt.Fprintf(&b, "form %s scores %v\n", f.Name, f.Scores)
		for _, i := range f.Items {
			it := i.Item
			fmt.Fprintf(&b, "%s revision %d %q %v key %q %s %s %v %v difficulty %s seconds %d row %q uses %d shared %v choices %q\n",
				it.ID, it.Revision, it.Task, it.Wording, it.Key, it.Skill, it.Look, it.Codes, it.Traits.List(), it.Difficulty(), it.Seconds,
				i.Row, i.Uses, i.Shared, i.Choices)
		}
	}
	return strings.TrimSpace(b.String())
}

func toldList(l bank.List, rows []bank.ListRow) string {
	var b strings.Builder
	fmt.Fprintf(&b, "list %q time %d written %q asked %q rows %d by %s at %s", l.Name, l.Number, l.Written, l.Asked, l.Rows, l.By, stamp(l.At))
	for _, fate := range slices.Sorted(maps.Keys(l.Fates)) {
		fmt.Fprintf(&b, " %s %d", fate, l.Fates[fate])
	}
	if t := l.TakenBack; t != nil {
		fmt.Fprintf(&b, " taken back by %s at %s", t.By, stamp(t.At))
	}
	for _, c := range l.Columns {
		fmt.Fprintf(&b, "\ncolumn %d %q means %q because %q", c.Number, c.Heading, c.Meaning, c.Why)
	}
	for _, r := range rows {
		fmt.Fprintf(&b, "\nline %d %s %s %q %q", r.Line, r.Fate, r.ID, r.Column, r.Reason)
	}
	return b.String()
}

func toldTable(t bank.Table) string {
	var b strings.Builder
	fmt.Fprintf(&b, "learnt %d by %s at %s from %d papers, %d answers", t.Number, t.By, stamp(t.At), t.Papers, t.Answers)
	for _, skill := range slices.Sorted(maps.Keys(t.Levels)) {
		l := t.Levels[skill]
		fmt.Fprintf(&b, "\nlevel %s %s for %s ± %s on %d", skill, l.Value, l.Default, l.SE, l.Answers)
	}
	for _, name := range slices.Sorted(maps.Keys(t.Weights)) {
		w := t.Weights[name]
		fmt.Fprintf(&b, "\nweight %s %s for %s ± %s on %d", name, w.Value, w.Default, w.SE, w.Answers)
	}
	return b.String()
}

func toldChange(c bank.Change) string {
	return fmt.Sprintf("revision %d by %s on %s because %q: %q key %q %s", c.Revision, c.By, c.On, c.Reason, c.Question, c.Key, c.Standing)
}

// toldAll is all that a bank keeps.
func toldAll(t testing.TB, b *bank.Bank) string {
	t.Helper()
	var all []string
	for it, err := range b.Find(bank.Query{}) {
		must(t, err)
		history, err := b.History(it.ID)
		must(t, err)
		for _, was := range history {
			all = append(all, told(was))
		}
		uses, err := b.Uses(it.ID)
		must(t, err)
		for _, u := range uses {
			all = append(all, fmt.Sprintf("%s used in %q week %s at %s", it.ID, u.Quiz, u.Week, stamp(u.At)))
		}
	}
	for _, name := range []string{"friday check", "winter term", "old one"} {
		history, err := b.PlanHistory(name)
		must(t, err)
		for _, p := range history {
			all = append(all, toldPlan(p))
		}
	}
	quizzes, err := b.Quizzes()
	must(t, err)
	for _, q := range quizzes {
		all = append(all, toldQuiz(q))
	}
	lists, err := b.Lists()
	must(t, err)
	for _, l := range lists {
		rows, err := b.ListRows(l)
		must(t, err)
		all = append(all, toldList(l, rows))
	}
	table, err := b.KeptTable()
	must(t, err)
	review, err := b.Review()
	must(t, err)
	all = append(all, toldTable(table), fmt.Sprintf("review: anyone %v by %s at %s", review.Anyone, review.By, stamp(review.At)))
	apart, doubles, err := b.Conflicts()
	must(t, err)
	for _, a := range apart {
		all = append(all, fmt.Sprintf("apart %s %q: stands %s; other %s", a.ID, a.Question, toldChange(a.Stands), toldChange(a.Other)))
	}
	return strings.Join(append(all, fmt.Sprintf("doubles %v", doubles)), "\n\n") + "\n"
}

// A bank of the second format says, field by field, what it said when it was made; told.txt was
// compared with what the program's commands show of it.
func TestFormat2Opens(t *testing.T) {
	dir := t.TempDir()
	must(t, os.CopyFS(dir, os.DirFS("../testdata/formats/2")))
	want, err := os.ReadFile(filepath.Join(dir, "told.txt"))
	must(t, err)
	for _, readOnly := range []bool{true, false} {
		b, err := bank.Open(filepath.Join(dir, "team.bank"), bank.Options{ReadOnly: readOnly})
		must(t, err)
		defer b.Close()
		sameLines(t, toldAll(t, b), string(want))
		if !readOnly {
			report, err := b.Check()
			must(t, err)
			if !report.Whole() || report.Older == 0 {
				t.Errorf("check found %v, and %d items of an earlier catalogue", report.Problems, report.Older)
			}
			joined, err := b.Get("01M8A5JSM88SFHQ9WAKP951MNZ") // its ID in the colleague's bank
			must(t, err)
			mustEqual(t, joined.ID, "01M8A5JQNRBC9AZQA4Z3MH6A4G")
			// The uses of the 11 items of Monday start, which were taken back, are known: they stand again later than that.
			use := bank.Use{Quiz: "Monday start", Week: "2026-W53", At: time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)}
			later := 0
			for it, err := range b.Find(bank.Query{}) {
				must(t, err)
				must(t, b.RecordUse([]string{it.ID}, use))
				uses, err := b.Uses(it.ID)
				must(t, err)
				for _, u := range uses {
					if u.Week == use.Week && u.At.After(use.At) {
						later++
					}
				}
			}
			mustEqual(t, later, 11)
			_, err = b.Refresh("MK", monday, nil)
			must(t, err)
			mustBeWhole(t, b)
		}
		must(t, b.Close())
	}
}

func sameLines(t *testing.T, got, want string) {
	t.Helper()
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range max(len(a), len(b)) {
		var one, other string
		if i < len(a) {
			one = a[i]
		}
		if i < len(b) {
			other = b[i]
		}
		if one != other {
			t.Errorf("line %d\ngot  %s\nwant %s", i+1, one, other)
		}
	}
}
