package results_test

import (
	"fmt"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store/storetest"
	"evenhand/standards/task"
)

// A bank in a database goes back to a copy while colleagues write to it at two more addresses: what each of them was
// told is kept is in the copy of what stood there before, or in the bank; nothing of it is in neither. The marks go
// back, too, and both are undamaged.
func TestGoBackInADatabaseWhileOthersWrite(t *testing.T) {
	address := storetest.NewServer(t).URL("postgres") + "?bank=alder-hill-2"
	b, err := bank.Create(address)
	must(t, err)
	defer b.Close()
	add := func(b *bank.Bank, text string) {
		_, err := b.Add([]bank.Item{bank.NewItem(task.MustParse(text), "", bank.Origin{Kind: "written", By: "MK"})}, "MK", friday)
		must(t, err)
	}
	mark := func(pupil string) {
		s, err := results.Open(results.Path(address), bank.Options{})
		must(t, err)
		_, err = s.Mark(two(), []results.Paper{{Class: "2A", Pupil: pupil, Form: "A", Answers: right(2)}}, "MK", friday)
		must(t, err)
		must(t, s.Close())
	}
	add(b, "47 + 36 = ?")
	mark("P01")
	copies := results.Copies{Dir: t.TempDir(), Keep: 3}
	then, err := copies.Make(b, friday)
	must(t, err)
	mark("P02")
	var kept [2][]string
	var writing sync.WaitGroup
	stop := make(chan struct{})
	for i := range kept {
		other, err := bank.Open(address, bank.Options{Timeout: time.Minute})
		must(t, err)
		defer other.Close()
		writing.Go(func() {
			for n := 0; ; n++ {
				text := fmt.Sprintf("%d + %d = ?", 1000+n, 2000+i)
				_, err := other.Add([]bank.Item{bank.NewItem(task.MustParse(text), "", bank.Origin{Kind: "written"})}, "SV", friday)
				if err != nil {
					t.Error(err)
					return
				}
				kept[i] = append(kept[i], text)
				select {
				case <-stop:
					return
				default:
				}
			}
		})
	}
	path, err := copies.File(then)
	must(t, err)
	done, err := copies.GoBack(address, path, friday.Add(time.Hour), bank.Options{})
	must(t, err)
	close(stop)
	writing.Wait()
	if len(done.Kept) != 1 || !done.Marks {
		t.Fatalf("%+v", done)
	}
	there := map[string]int{}
	count := func(b *bank.Bank) (items int) {
		for it, err := range b.Find(bank.Query{}) {
			must(t, err)
			there[it.Task]++
			items++
		}
		report, err := b.Check()
		if must(t, err); len(report.Problems) > 0 {
			t.Error(report.Problems)
		}
		return items
	}
	before, err := bank.Open(done.Kept[0], bank.Options{ReadOnly: true})
	must(t, err)
	defer before.Close()
	since, earlier := count(b), count(before)
	for _, text := range append(kept[0], kept[1]...) {
		if there[text] == 0 {
			t.Errorf("%s was kept and is nowhere", text)
		}
	}
	if there["47 + 36 = ?"] != 2 || since+earlier != len(kept[0])+len(kept[1])+2 {
		t.Errorf("%d items stand, %d stood before, of %d and one of then in both", since, earlier, len(kept[0])+len(kept[1]))
	}
	for path, want := range map[string]int{results.Path(address): 1, results.Path(filepath.Clean(done.Kept[0])): 2} {
		s, err := results.Open(path, bank.Options{ReadOnly: true})
		must(t, err)
		_, papers, err := s.All()
		must(t, err)
		if _, err := s.Check(); err != nil || len(papers) != want {
			t.Errorf("%d papers, want %d: %v", len(papers), want, err)
		}
		must(t, s.Close())
	}
}
