package desk

import (
	"context"
	"slices"
	"testing"
	"time"
)

// Who waits is told how many come before, comes in the order of asking, and who gives up holds nobody up.
func TestLine(t *testing.T) {
	var l line
	var leave []func()
	for range atOnce {
		done, err := l.take(t.Context(), func(int) { t.Error("waits though nobody is here") })
		must(t, err)
		leave = append(leave, done)
	}
	type waiter struct {
		end  context.CancelFunc
		told chan int
		turn chan func() // nil for one who gave up
	}
	join := func() (w waiter) {
		var ctx context.Context
		ctx, w.end = context.WithCancel(t.Context())
		w.told, w.turn = make(chan int, 10), make(chan func(), 1)
		go func() {
			done, err := l.take(ctx, func(before int) { w.told <- before })
			if err != nil {
				done = nil
			}
			w.turn <- done
		}()
		return w
	}
	hears := func(w waiter, want ...int) {
		t.Helper()
		var heard []int
		for range want {
			select {
			case before := <-w.told:
				heard = append(heard, before)
			case <-time.After(10 * time.Second):
			}
		}
		if !slices.Equal(heard, want) {
			t.Errorf("told %v, want %v", heard, want)
		}
	}
	first := join()
	hears(first, 1)
	second := join()
	hears(second, 2)
	third := join()
	hears(third, 3)
	second.end()
	if <-second.turn != nil {
		t.Error("who gave up has a turn")
	}
	hears(third, 2)
	leave[0]()
	done := <-first.turn
	hears(third, 1)
	third.end()
	if <-third.turn != nil {
		t.Error("who gave up has a turn")
	}
	done()
	for _, done := range leave[1:] {
		done()
	}
	if l.busy != 0 || len(l.waiting) != 0 {
		t.Errorf("%d are busy and %d wait when all have left", l.busy, len(l.waiting))
	}
	for range atOnce + longestLine {
		join()
	}
	for began := time.Now(); time.Since(began) < 10*time.Second; time.Sleep(time.Millisecond) {
		l.Lock()
		full := len(l.waiting) == longestLine
		l.Unlock()
		if full {
			break
		}
	}
	if _, err := l.take(t.Context(), func(int) {}); err == nil {
		t.Error("the line has no end")
	}
}
