package bank_test

import (
	"fmt"
	"sync"
	"testing"

	"evenhand/bank"
)

// Several goroutines, as of people at one desk, use a bank at once; nothing that
// one of them did is lost.
func TestManyAtOneBank(t *testing.T) {
	b := tempBank(t)
	items := sums(400)
	shared := mustAdd(t, b, written("read 4:30"))[0]
	var all sync.WaitGroup
	for person := range 4 {
		mine := items[100*person : 100*person+100]
		all.Go(func() {
			if err := work(b, fmt.Sprintf("Teacher %d", person), mine, shared); err != nil {
				t.Error(err)
			}
		})
	}
	all.Go(func() {
		for range 5 {
			if report, err := b.Check(); err != nil || !report.Whole() {
				t.Errorf("check: %q (%v)", report.Problems, err)
			}
		}
	})
	all.Wait()
	count, err := b.Count()
	must(t, err)
	mustEqual(t, count, map[bank.Standing]int{bank.Ready: 361, bank.Retired: 40})
	history, err := b.History(shared)
	must(t, err)
	if len(history) != 41 {
		t.Errorf("the item that all changed has %d revisions, want 41", len(history))
	}
}

// work adds items, retires every tenth, and adds a word to the notes of one item
// as often.
func work(b *bank.Bank, person string, mine []bank.Item, shared string) error {
	for from := 0; from < len(mine); from += 10 {
		added, err := b.Add(mine[from:from+10], person, monday)
		if err != nil {
			return err
		}
		if _, err := b.Retire(added[0].ID, person, "one too many", monday); err != nil {
			return err
		}
		_, err = b.Revise(shared, person, "a note", monday, func(it *bank.Item) error {
			it.Notes += person + " "
			return nil
		})
		if err != nil {
			return err
		}
		for _, err := range b.Find(bank.Query{Standings: []bank.Standing{bank.Ready}}) {
			if err != nil {
				return err
			}
		}
	}
	return nil
}
