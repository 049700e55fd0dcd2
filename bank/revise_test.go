package bank_test

import (
	"errors"
	"testing"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

func TestAChangeNeedsANameAndAReason(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	for _, who := range [][2]string{{"", "worn out"}, {"Ms. Reyes", ""}} {
		_, err := b.Retire(id, who[0], who[1], monday)
		mustSay(t, err, "a name and a reason")
	}
	history, err := b.History(id)
	must(t, err)
	if len(history) != 1 {
		t.Errorf("there are %d revisions, want 1", len(history))
	}
}

// A new task brings everything that follows from it, and its evidence is none.
func TestANewTaskIsComputedAnew(t *testing.T) {
	b := tempBank(t)
	it := written("8 + 5 = ?")
	it.Measured = &bank.Measured{Difficulty: -900, StandardError: 150, Answers: 88}
	id := mustAdd(t, b, it)[0]
	got, err := b.Revise(id, "Ms. Reyes", "harder", monday, func(it *bank.Item) error {
		it.Task, it.Key = "402 - 178 = ?", "no matter what stands here"
		return nil
	})
	must(t, err)
	want := written("402 - 178 = ?")
	if got.Key != "224" || got.Skill != want.Skill || got.Traits != want.Traits || got.Predicted != want.Predicted || got.Measured != nil {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	for question, here := range map[string]bool{"5 + 8 = ?": false, "402 - 178 = ?": true} {
		if _, ok, err := b.Has(written(question).Fingerprint()); err != nil || ok != here {
			t.Errorf("Has(%s) is %v, want %v (%v)", question, ok, here, err)
		}
	}
}

func TestNoItemTakesAnothersTask(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, written("8 + 5 = ?"), written("9 + 5 = ?"))
	_, err := b.Revise(ids[0], "Ms. Reyes", "harder", monday, func(it *bank.Item) error {
		it.Task = "5 + 9 = ?"
		return nil
	})
	mustSay(t, err, ids[0], "item "+ids[1]+" (ready) asks the same already")
}

func TestAChangeThatFailsChangesNothing(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, sums(30)...)
	broken := errors.New("a broken pencil")
	n := 0
	_, err := b.ReviseAll(ids, "Ms. Reyes", "by the papers of week 48", monday, func(it *bank.Item) error {
		if n++; n == 20 {
			return broken
		}
		it.Standing = bank.Draft
		return nil
	})
	if !errors.Is(err, broken) {
		t.Errorf("the error is %v", err)
	}
	count, err := b.Count()
	must(t, err)
	mustEqual(t, count, map[bank.Standing]int{bank.Ready: 30})
}

func TestReviseAll(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, sums(200)...)
	measure := func(it *bank.Item) error {
		it.Measured = &bank.Measured{Difficulty: it.Predicted + 50, StandardError: 90, Answers: 120}
		return nil
	}
	for _, want := range []int{200, 0} { // the second time nothing is new
		n, err := b.ReviseAll(append(ids, ids[0], ids[7]), "Ms. Reyes", "by the papers of week 48", monday, measure)
		must(t, err)
		if n != want {
			t.Errorf("%d items were revised, want %d", n, want)
		}
	}
	for g, err := range b.Groups() {
		must(t, err)
		if want := standards.Predict(g.Skill, g.Traits) + 50; g.Difficulty != want {
			t.Errorf("a group has the difficulty %s, want %s", g.Difficulty, want)
		}
	}
}

// The function that changes an item may use the bank, even change the very item.
func TestAChangeInsideAChange(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	calls := 0
	got, err := b.Revise(id, "Ms. Reyes", "a note", monday, func(it *bank.Item) error {
		if calls++; calls == 1 {
			_, err := b.Retire(id, "Mr. Okafor", "worn out", monday)
			must(t, err)
		}
		it.Notes = "good on Mondays"
		return nil
	})
	must(t, err)
	if got.Revision != 3 || got.Standing != bank.Retired || got.Notes != "good on Mondays" || calls != 2 {
		t.Errorf("after %d calls the item is %+v", calls, got)
	}
}

func TestWhatIsAskedOfUnknownItems(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, written("8 + 5 = ?"))
	const id = "01ARZ3NDEKTSV4RRFFQ69G5FAV" // the example of the ULID specification
	for name, ask := range map[string]func(string) error{
		"get":     func(id string) error { _, err := b.Get(id); return err },
		"history": func(id string) error { _, err := b.History(id); return err },
		"uses":    func(id string) error { _, err := b.Uses(id); return err },
		"retire":  func(id string) error { _, err := b.Retire(id, "Ms. Reyes", "worn out", monday); return err },
		"use": func(id string) error {
			return b.RecordUse([]string{id}, bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday})
		},
	} {
		t.Run(name, func(t *testing.T) {
			mustSay(t, ask(id), "has no item "+id)
			mustSay(t, ask("seven"), `"seven" is no item ID`)
		})
	}
}

func TestWhatIsNoUse(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	for _, use := range []bank.Use{{Quiz: "Friday check", Week: "48"}, {Quiz: "Friday check", Week: "2026-W54"}, {Week: "2026-W48"}} {
		if err := b.RecordUse([]string{id}, use); err == nil {
			t.Errorf("%+v is taken", use)
		}
	}
	uses, err := b.Uses(id)
	must(t, err)
	if len(uses) != 0 {
		t.Errorf("uses are %+v", uses)
	}
}

func TestOneUnknownIDRecordsNothing(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	err := b.RecordUse([]string{id, "01ARZ3NDEKTSV4RRFFQ69G5FAV"}, bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday})
	mustSay(t, err, "has no item")
	uses, err := b.Uses(id)
	must(t, err)
	if len(uses) != 0 {
		t.Errorf("uses are %+v", uses)
	}
}

// An item by hand that is put under another skill is as difficult, as long and of the codes as is
// usual there; what a person gave it stays.
func TestAnItemByHandFollowsItsSkill(t *testing.T) {
	b := tempBank(t)
	must(t, b.KeepTable(harder("add-ones")))
	hand := func(asks string, change func(*bank.Item)) bank.Item {
		it := bank.NewHandItem(asks, "5", "clock-hour", "en", bank.Origin{Kind: "written"})
		change(&it)
		return it
	}
	ids := mustAdd(t, b,
		hand("How many birds are left?", func(*bank.Item) {}),
		hand("How many stay?", func(it *bank.Item) { it.Predicted, it.Seconds, it.Codes = -500, 90, []task.Code{"1.OA.A.1"} }))
	became := func(id string) bank.Item {
		it, err := b.Revise(id, "Ms. Reyes", "no clock in it", monday, func(it *bank.Item) error {
			it.Skill = "add-ones"
			return nil
		})
		must(t, err)
		return it
	}
	learnt, err := b.Table()
	must(t, err)
	want := bank.NewHandItem("", "", "add-ones", "en", bank.Origin{})
	got := became(ids[0])
	mustEqual(t, got.Predicted, learnt.PredictItem(want))
	mustEqual(t, got.Seconds, want.Seconds)
	mustEqual(t, got.Codes, want.Codes)
	got = became(ids[1])
	mustEqual(t, got.Predicted, standards.Difficulty(-500))
	mustEqual(t, got.Seconds, 90)
	mustEqual(t, got.Codes, []task.Code{"1.OA.A.1"})
}
