package bank_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/task"
)

// olderBank is a copy of the bank of the first format, which catalogue 1 computed.
func olderBank(t *testing.T, readOnly bool) *bank.Bank {
	t.Helper()
	dir := t.TempDir()
	must(t, os.CopyFS(dir, os.DirFS("../testdata/formats/1")))
	b, err := bank.Open(filepath.Join(dir, "team.bank"), bank.Options{ReadOnly: readOnly})
	must(t, err)
	t.Cleanup(func() { must(t, b.Close()) })
	return b
}

// asOfTheFirstCatalogue takes the number of its catalogue from a bank.
func asOfTheFirstCatalogue(t failer, path string) {
	s, err := bank.OpenStore(path, bank.Options{})
	must(t, err)
	must(t, s.Update(context.Background(), func(w store.Writer) error { return w.Delete("about", []byte("catalogue")) }))
	must(t, s.Close())
}

// spoken is what people said of an item in all its revisions; the rest is computed.
func spoken(t *testing.T, b *bank.Bank, id string) []string {
	t.Helper()
	history, err := b.History(id)
	must(t, err)
	var list []string
	for _, it := range history {
		if !strings.HasPrefix(it.Reason, "catalogue ") {
			list = append(list, told(it))
		}
	}
	return list
}

// A bank of an earlier catalogue is told from a damaged one, and brought along without loss.
func TestAnOlderBankIsBroughtAlong(t *testing.T) {
	b := olderBank(t, false)
	before := map[string][]string{}
	uses := map[string][]bank.Use{}
	for it, err := range b.Find(bank.Query{}) {
		must(t, err)
		before[it.ID] = spoken(t, b, it.ID)
		uses[it.ID], err = b.Uses(it.ID)
		must(t, err)
	}
	report, err := b.Check()
	must(t, err)
	outdated := 0
	for o, err := range b.Outdated() {
		must(t, err)
		must(t, o.Err)
		if len(o.Changed()) == 0 {
			t.Errorf("%s is outdated, but nothing differs", o.Old.ID)
		}
		outdated++
	}
	if !report.Whole() || report.Older == 0 || report.Older != outdated {
		t.Fatalf("check found %v, %d older; %d are outdated", report.Problems, report.Older, outdated)
	}
	mustEqual(t, mustCatalogue(t, b), 1)

	revised, err := b.Refresh("MK", monday, nil)
	must(t, err)
	mustEqual(t, revised, outdated)
	mustEqual(t, mustCatalogue(t, b), standards.CatalogueNumber)
	mustBeWhole(t, b)
	for id, want := range before {
		mustEqual(t, spoken(t, b, id), want)
		got, err := b.Uses(id)
		must(t, err)
		mustEqual(t, got, uses[id])
		it, err := b.Get(id)
		must(t, err)
		if it.Revision != len(want) && it.Reason != fmt.Sprintf("catalogue %d", standards.CatalogueNumber) {
			t.Errorf("%s: revision %d because %q", id, it.Revision, it.Reason)
		}
		if asked, err := task.Parse(it.Task); err == nil && it.Predicted != standards.Predict(standards.SkillOf(asked), asked.Traits()) {
			t.Errorf("%s is predicted %s", it.Task, it.Predicted)
		}
	}
	// The measured difficulty is pupils' work and stays; the story by hand was predicted by its skill.
	measured, err := b.Get("01M89PY9E8R9MNDJT19V1602WB")
	must(t, err)
	mustEqual(t, *measured.Measured, bank.Measured{Difficulty: -1425, StandardError: 679, Answers: 1})
	story, err := b.Get("01M89PY9E8R9MNDJT19XDEGTHC")
	must(t, err)
	mustEqual(t, story.Predicted, usual("stories-within-10"))

	again, err := b.Refresh("MK", monday, nil)
	must(t, err)
	mustEqual(t, again, 0)
}

func mustCatalogue(t testing.TB, b *bank.Bank) int {
	t.Helper()
	number, err := b.Catalogue()
	must(t, err)
	return number
}

// Where a bank has learnt, its items are checked and brought along by what it learnt.
func TestRefreshPredictsByTheLearntTable(t *testing.T) {
	b := tempBank(t)
	skill := standards.SkillID("facts-within-20")
	id := mustAdd(t, b, written("7 + 8 = ?"))[0]
	before, err := b.Get(id)
	must(t, err)
	level := bank.LevelOf(skill)
	must(t, b.KeepTable(bank.Table{Number: 1, At: monday, By: "MK", Levels: map[standards.SkillID]bank.Learnt{
		skill: {Default: level, Value: level + 300, SE: 100, Answers: 40},
	}}))
	report, err := b.Check()
	must(t, err)
	mustEqual(t, report.Older, 1)
	if want := fmt.Sprintf("difficulty %s, the bank says %s", before.Predicted+300, before.Predicted); !strings.Contains(report.Example, want) {
		t.Errorf("check says %q, want %q", report.Example, want)
	}
	_, err = b.Refresh("MK", monday, nil)
	must(t, err)
	after, err := b.Get(id)
	must(t, err)
	mustEqual(t, after.Predicted, before.Predicted+300)
}

// An item by hand that was predicted by its skill alone, as the bank had learnt it beside
// earlier defaults, comes along with its skill; the difficulty that a person gave stays.
func TestRefreshForgetsWhatWasLearntBesideOtherDefaults(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	skill := standards.SkillID("facts-within-20")
	level := bank.LevelOf(skill)
	hand := func(asks string, predicted standards.Difficulty) bank.Item {
		it := bank.NewHandItem(asks, "4", skill, "en", bank.Origin{Kind: "written"})
		it.Predicted = predicted
		return it
	}
	ids := mustAdd(t, b, hand("How many sides has a square?", level+300), hand("How many legs has a cat?", level+700))
	must(t, b.KeepTable(bank.Table{Number: 1, At: monday, By: "MK", Levels: map[standards.SkillID]bank.Learnt{
		skill: {Default: level - 100, Value: level + 300, SE: 100, Answers: 40},
	}}))
	must(t, b.Close())
	asOfTheFirstCatalogue(t, path)
	b, err = bank.Open(path, bank.Options{})
	must(t, err)
	defer b.Close()
	_, err = b.Refresh("MK", monday, nil)
	must(t, err)
	for i, want := range []standards.Difficulty{usual(skill), level + 700} {
		it, err := b.Get(ids[i])
		must(t, err)
		mustEqual(t, it.Predicted, want)
	}
	kept, err := b.KeptTable()
	must(t, err)
	if now, err := b.Table(); err != nil || !kept.Outlived() || len(now.Levels) != 0 || now.Number != 1 {
		t.Errorf("the bank predicts by %+v, %v", now, err)
	}
}

func usual(skill standards.SkillID) standards.Difficulty {
	return standards.Predict(skill, standards.Usual(skill))
}

// What the program of catalogue 4 predicted for its items by hand is typed off (list --verbose):
// the bare level of their skill, once as papers had taught it, and once a person's own.
func TestItemsByHandOfCatalogue4(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	copyFile(t, "../testdata/formats/catalogue-4/team.bank", path)
	b, err := bank.Open(path, bank.Options{})
	must(t, err)
	defer b.Close()
	mustEqual(t, mustCatalogue(t, b), 4)
	learnt, err := b.Table()
	must(t, err)
	if learnt.Outlived() || len(learnt.Levels) == 0 {
		t.Errorf("what was learnt beside the same defaults teaches nothing: %+v", learnt)
	}
	type difficulty struct{ was, is standards.Difficulty }
	want := map[string]difficulty{
		"01M8BJ167GQFY7ZHA27CE58G94": {-3300, learnt.Predict("stories-within-100", standards.Usual("stories-within-100"))},
		"01M8BJ167GQFY7ZHA27D7AQMQ0": {-2100, learnt.Predict("stories-within-20", standards.Usual("stories-within-20"))},
		"01M8BJ167GQFY7ZHA27DGJRP5E": {-2330, learnt.Predict("add-two-digit", standards.Usual("add-two-digit"))},
		"01M8BJ1MW8YVRDBN0GJ0788KKK": {-900, -900},
	}
	for id, d := range want {
		it, err := b.Get(id)
		must(t, err)
		mustEqual(t, it.Predicted, d.was)
	}
	revised, err := b.Refresh("MK", monday, nil)
	must(t, err)
	mustEqual(t, revised, 3)
	for id, d := range want {
		it, err := b.Get(id)
		must(t, err)
		mustEqual(t, it.Predicted, d.is)
		if it.Revision > 1 && it.Reason != fmt.Sprintf("catalogue %d", standards.CatalogueNumber) && d.was != d.is {
			t.Errorf("%s was changed because %q", id, it.Reason)
		}
	}
	mustBeWhole(t, b)
}
