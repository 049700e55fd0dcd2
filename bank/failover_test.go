package bank_test

import (
	"fmt"
	"math/rand/v2"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/store/storetest"
)

// Twenty programs write into one bank whose server has a standby that it waits for. The first
// server is killed, the standby takes its place: no item that was acknowledged is lost, every
// writer goes on within 30 seconds without being opened again, and the bank is undamaged.
func TestFailover(t *testing.T) {
	first := storetest.NewServer(t)
	second := storetest.NewStandby(t, first, "second")
	first.Exec(t, `alter system set synchronous_standby_names = 'second'`)
	first.Exec(t, `select pg_reload_conf()`)
	address := fmt.Sprintf("postgres://postgres@127.0.0.1:%d,127.0.0.1:%d/postgres?bank=alder-hill-2&target_session_attrs=read-write",
		first.Port, second.Port)
	b, err := bank.Create(address)
	must(t, err)
	defer b.Close()
	const writers = 20
	items := sums(writers * 1000)
	var stop atomic.Bool
	var all sync.WaitGroup
	var kept [writers][]bank.Item // acknowledged
	var longest [writers]time.Duration
	var after [writers]atomic.Bool // something was acknowledged after the kill
	var killed atomic.Bool
	for n := range writers {
		own, err := bank.Open(address, bank.Options{Timeout: 30 * time.Second})
		must(t, err)
		defer own.Close()
		all.Go(func() {
			for i := 0; i+5 <= 1000 && !stop.Load(); i += 5 {
				some, began, late := items[1000*n+i:][:5], time.Now(), killed.Load()
				if _, err := own.Add(some, fmt.Sprintf("Teacher %d", n), monday); err != nil {
					t.Errorf("writer %d: %v", n, err)
					return
				}
				kept[n] = append(kept[n], some...)
				longest[n] = max(longest[n], time.Since(began))
				if late {
					after[n].Store(true)
				}
				time.Sleep(rand.N(20 * time.Millisecond))
			}
		})
	}
	time.Sleep(2 * time.Second)
	killed.Store(true)
	at := time.Now()
	first.Kill()
	second.Promote(t)
	for deadline := at.Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(50 * time.Millisecond) {
		on := 0
		for n := range writers {
			if after[n].Load() {
				on++
			}
		}
		if on == writers {
			break
		}
	}
	t.Logf("all went on %s after the kill", time.Since(at).Round(time.Millisecond))
	stop.Store(true)
	all.Wait()
	total := 0
	for n := range writers {
		if !after[n].Load() || longest[n] > 30*time.Second {
			t.Errorf("writer %d waited for %s", n, longest[n])
		}
		for _, it := range kept[n] {
			if _, ok, err := b.Has(it.Fingerprint()); err != nil || !ok {
				t.Fatalf("%s was acknowledged and isn't there (%v)", it.Task, err)
			}
			total++
		}
	}
	t.Logf("%d items were acknowledged", total)
	mustBeWhole(t, b)
}

// Sixty-four teams keep their banks in one database, sixteen at work at a time. Each finds its
// own items and no others, and several banks get more done than one.
func TestManyBanksInOneDatabase(t *testing.T) {
	server := storetest.NewServer(t)
	const teams, atOnce, each = 64, 16, 40
	items := sums(teams * each)
	open := make([]*bank.Bank, teams)
	for n := range open {
		b, err := bank.Create(server.Address(fmt.Sprintf("team-%d", n)))
		must(t, err)
		defer b.Close()
		open[n] = b
	}
	work := make(chan int, teams)
	for n := range teams {
		work <- n
	}
	close(work)
	var all sync.WaitGroup
	for range atOnce {
		all.Go(func() {
			for n := range work {
				for i := 0; i < each; i += 10 {
					if _, err := open[n].Add(items[each*n+i:][:10], "Ms. Reyes", monday); err != nil {
						t.Errorf("team %d: %v", n, err)
						return
					}
				}
			}
		})
	}
	all.Wait()
	for n, b := range open {
		want := map[string]bool{}
		for _, it := range items[each*n:][:each] {
			want[it.Task] = true
		}
		found := tasksFound(t, b, bank.Query{})
		for _, text := range found {
			if !want[text] {
				t.Fatalf("team %d finds %s, which is another's", n, text)
			}
		}
		if len(found) != each {
			t.Errorf("team %d finds %d items, want %d", n, len(found), each)
		}
		mustBeWhole(t, b)
	}
	one, many := perSecond(t, open[:1], atOnce), perSecond(t, open[:atOnce], atOnce)
	t.Logf("16 writers: %.0f changes a second in one bank, %.0f in sixteen", one, many)
	if many < one {
		t.Errorf("16 writers make %.0f changes a second in one bank, and only %.0f in sixteen", one, many)
	}
}

// perSecond is how many changes some writers make in a second, spread over banks.
func perSecond(t *testing.T, banks []*bank.Bank, writers int) float64 {
	t.Helper()
	var all sync.WaitGroup
	var done atomic.Int64
	began := time.Now()
	for n := range writers {
		b := banks[n%len(banks)]
		id := ""
		for it, err := range b.Find(bank.Query{}) {
			must(t, err)
			id = it.ID
			break
		}
		all.Go(func() {
			for i := 0; time.Since(began) < 2*time.Second; i++ {
				week := fmt.Sprintf("2026-W%02d", 1+i%50)
				use := bank.Use{Quiz: fmt.Sprintf("writer %d, %d", n, i), Week: week, At: monday}
				if err := b.RecordUse([]string{id}, use); err != nil {
					t.Error(err)
					return
				}
				done.Add(1)
			}
		})
	}
	all.Wait()
	return float64(done.Load()) / time.Since(began).Seconds()
}
