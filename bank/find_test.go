package bank_test

import (
	"fmt"
	"reflect"
	"slices"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// mixedBank holds a few items that differ in all a query can ask about.
func mixedBank(t *testing.T) *bank.Bank {
	t.Helper()
	b := tempBank(t)
	imported := written("80 - 30 = ?")
	imported.Origin = bank.Origin{Kind: "imported", File: "autumn.csv", Row: 7, By: "Mr. Okafor"}
	draft := written("read 4:30")
	draft.Standing = bank.Draft
	byHand := bank.NewHandItem("Which bag is heavier?", "the left one", "compare-within-10", "en", bank.Origin{Kind: "written", By: "Ms. Reyes"})
	ids := mustAdd(t, b, written("47 + 36 = ?"), written("27 + 5 = ?"), written("83 + 45 = ?"), imported, draft, byHand)
	_, err := b.Retire(ids[1], "Ms. Reyes", "worn out", monday)
	must(t, err)
	must(t, b.RecordUse(ids[:1], bank.Use{Quiz: "Friday check", Week: "2026-W46", At: monday}))
	return b
}

func TestFind(t *testing.T) {
	b := mixedBank(t)
	yes, no := true, false
	where := func(texts ...string) standards.Where {
		w, err := standards.ParseWhere(texts)
		must(t, err)
		return w
	}
	for _, test := range []struct {
		name  string
		query bank.Query
		want  []string
	}{
		{"all, in the order they came", bank.Query{}, []string{"47 + 36 = ?", "27 + 5 = ?", "83 + 45 = ?", "80 - 30 = ?", "read 4:30", "Which bag is heavier?"}},
		{"skill", bank.Query{Skills: []standards.SkillID{"add-two-digit", "clock-half-hour"}}, []string{"47 + 36 = ?", "read 4:30"}},
		{"traits", bank.Query{Where: where("crosses_100 = true")}, []string{"83 + 45 = ?"}},
		{"traits, two conditions", bank.Query{Where: where("regroups = 1", "digits = 2")}, []string{"47 + 36 = ?", "27 + 5 = ?", "83 + 45 = ?"}},
		// Common Core State Standards for Mathematics (2010): two-digit and two-digit with a regrouping within 100.
		{"standard", bank.Query{Code: "2.NBT.B.5"}, []string{"47 + 36 = ?"}},
		{"standing", bank.Query{Standings: []bank.Standing{bank.Retired, bank.Draft}}, []string{"27 + 5 = ?", "read 4:30"}},
		{"file", bank.Query{File: "autumn.csv"}, []string{"80 - 30 = ?"}},
		{"kind", bank.Query{Kind: "imported"}, []string{"80 - 30 = ?"}},
		{"author", bank.Query{Author: "Mr. Okafor"}, []string{"80 - 30 = ?"}},
		{"nobody", bank.Query{Author: "Ms. Nobody"}, []string{}},
		{"words", bank.Query{Words: "HEAVIER bag"}, []string{"Which bag is heavier?"}},
		{"words of a task", bank.Query{Words: "47"}, []string{"47 + 36 = ?"}},
		{"by hand", bank.Query{ByHand: &yes}, []string{"Which bag is heavier?"}},
		{"computed, in words", bank.Query{ByHand: &no, Words: "read"}, []string{"read 4:30"}},
		{"look", bank.Query{Looks: []task.Look{task.LookClockFace}}, []string{"read 4:30"}},
		{"not since an earlier week", bank.Query{Unused: "2026-W46", Skills: []standards.SkillID{"add-two-digit"}}, []string{}},
		{"not since a later week", bank.Query{Unused: "2026-W47", Skills: []standards.SkillID{"add-two-digit"}}, []string{"47 + 36 = ?"}},
		{"not since a week, all", bank.Query{Unused: "2026-W46"}, []string{"27 + 5 = ?", "83 + 45 = ?", "80 - 30 = ?", "read 4:30", "Which bag is heavier?"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := tasksFound(t, b, test.query); !slices.Equal(got, test.want) {
				t.Errorf("got %q, want %q", got, test.want)
			}
		})
	}
}

func TestFindByDifficulty(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, sums(600)...)
	d := written("9 + 8 = ?").Predicted
	for it, err := range b.Find(bank.Query{Difficulty: &bank.Range{From: d, To: d}}) {
		must(t, err)
		if it.Difficulty() != d {
			t.Errorf("%s has difficulty %s, want %s", it.Task, it.Difficulty(), d)
		}
	}
	all := 0
	for _, band := range standards.Bands() {
		for it, err := range b.Find(bank.Query{Bands: []standards.Band{band}}) {
			must(t, err)
			if all++; it.Difficulty().Band() != band {
				t.Errorf("%s is %s, want %s", it.Task, it.Difficulty().Band(), band)
			}
		}
	}
	if all != 600 {
		t.Errorf("the bands hold %d items together, want 600", all)
	}
}

// What is remembered of a list never answers another question: each part of a query, asked first, leaves the list of
// all items whole.
func TestNoListAnswersForAnother(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, sums(600)...)
	must(t, b.RecordUse(ids[:400], bank.Use{Quiz: "Friday check", Week: "2026-W46", At: monday}))
	where, err := standards.ParseWhere([]string{"regroups = 7"})
	must(t, err)
	yes := true
	lists := map[string]bank.Query{
		"Skills": {Skills: []standards.SkillID{"clock-half-hour"}}, "Where": {Where: where}, "Standings": {Standings: []bank.Standing{bank.Retired}},
		"Looks": {Looks: []task.Look{task.LookClockFace}}, "Bands": {Bands: []standards.Band{"none"}}, "Difficulty": {Difficulty: &bank.Range{From: 1}},
		"ByHand": {ByHand: &yes}, "Unused": {Unused: "2026-W46"}, "Kind": {Kind: "imported"}, "File": {File: "autumn.csv"}, "Author": {Author: "Mr. Okafor"},
		"Code": {Code: "K.G.A.1"}, "Words": {Words: "heavier"}, "From": {From: ids[500]}, "About": {About: 1},
	}
	for _, field := range reflect.VisibleFields(reflect.TypeFor[bank.Query]()) {
		added := mustAdd(t, b, written(fmt.Sprintf("%d - 1", 100+field.Index[0]))) // so that nothing is remembered
		ids = append(ids, added...)
		q := lists[field.Name]
		if reflect.ValueOf(q).FieldByIndex(field.Index).IsZero() {
			t.Errorf("%s is asked by nothing here", field.Name)
		}
		some, all := len(tasksFound(t, b, q)), len(tasksFound(t, b, bank.Query{}))
		if field.Name != "About" && some > len(ids)/2 || all != len(ids) {
			t.Errorf("by %s the bank lists %d items, and then %d of all %d", field.Name, some, all, len(ids))
		}
	}
}

// An item that takes the origin of another bank's in a merge is listed by its new author only, though it stays in its
// group.
func TestListsOfAuthorsAfterAMerge(t *testing.T) {
	moved := false
	for hours := range 2 {
		ours, theirs := tempBank(t), tempBank(t)
		mustAdd(t, ours, writtenAll("9 + 5", "9 + 6", "9 + 7")...)
		_, err := ours.Add(writtenAll("8 + 5"), "Ms. Reyes", monday)
		must(t, err)
		other := written("8 + 5")
		other.Origin.By = "Mr. Okafor"
		_, err = theirs.Add([]bank.Item{other}, "Mr. Okafor", monday.Add(time.Duration(2*hours-1)*time.Hour))
		must(t, err)
		before := tasksFound(t, ours, bank.Query{Author: "Mr. Okafor"})
		mustMergeOpen(t, ours, theirs)
		var want []string
		for it, err := range ours.Find(bank.Query{}) {
			must(t, err)
			if it.Origin.By == "Mr. Okafor" {
				want = append(want, it.Task)
			}
		}
		if got := tasksFound(t, ours, bank.Query{Author: "Mr. Okafor"}); !slices.Equal(got, want) {
			t.Errorf("Mr. Okafor's list holds %q, want %q", got, want)
		}
		moved = moved || len(want) > len(before)
	}
	if !moved {
		t.Error("no item took another's origin")
	}
}

// Every way of finding gives what reading all items and choosing would.
func TestFindThroughAnIndexIsFindByReadingAll(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, sums(1500)...)
	for _, skill := range standards.Catalogue().IDs() {
		for n := range 3 {
			where, err := standards.ParseWhere([]string{fmt.Sprintf("regroups >= %d", n)})
			must(t, err)
			q := bank.Query{Skills: []standards.SkillID{standards.SkillID(skill)}, Where: where}
			var want []string
			for it, err := range b.Find(bank.Query{}) {
				must(t, err)
				if string(it.Skill) == skill && where.Holds(it.Traits) {
					want = append(want, it.Task)
				}
			}
			if got := tasksFound(t, b, q); !slices.Equal(got, want) {
				t.Fatalf("%s, %s: got %d items, want %d", skill, where, len(got), len(want))
			}
		}
	}
}

func TestTheLoopMayChangeTheBank(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, sums(700)...)
	doubles, err := standards.ParseWhere([]string{"doubles = true"})
	must(t, err)
	for it, err := range b.Find(bank.Query{Where: doubles}) {
		must(t, err)
		_, err := b.Retire(it.ID, "Ms. Reyes", "known by heart", monday)
		must(t, err)
	}
	// The first 700 sums a + b with b ≤ a end at 37 + 34, so that 36 + 36 is the last double.
	if n := len(tasksFound(t, b, bank.Query{Standings: []bank.Standing{bank.Retired}})); n != 36 {
		t.Errorf("%d items were retired, want 36", n)
	}
}

func TestCount(t *testing.T) {
	count, err := mixedBank(t).Count()
	must(t, err)
	mustEqual(t, count, map[bank.Standing]int{bank.Ready: 4, bank.Draft: 1, bank.Retired: 1})
}

// A bank that stays open finds what was changed since it last looked, also where two items changed
// places, so that no group is larger or smaller than before.
func TestFindAfterItemsChangedPlaces(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, written("47 + 36 = ?"), written("41 + 36 = ?"), written("5 + 2 = ?"), written("5 + 3 = ?"))
	where, err := standards.ParseWhere([]string{"regroups = 1"})
	must(t, err)
	found := func() (list []string) {
		for it, err := range b.Find(bank.Query{Where: where}) {
			must(t, err)
			list = append(list, it.ID)
		}
		return list
	}
	mustEqual(t, found(), ids[:1])
	before := allGroups(t, b)
	_, err = b.ReviseAll(ids[:2], "Ms. Reyes", "other numbers", monday, func(it *bank.Item) error {
		it.Task = map[string]string{"47 + 36 = ?": "46 + 31 = ?", "41 + 36 = ?": "46 + 37 = ?"}[it.Task]
		return nil
	})
	must(t, err)
	mustEqual(t, allGroups(t, b), before)
	mustEqual(t, found(), ids[1:2])
}
