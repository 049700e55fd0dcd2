package search

import (
	"context"
	"slices"
	"sync"
	"testing"
	"time"
)

// On one core two things are done one behind the other, in their order; on several each may wait for the other.
func TestOneCore(t *testing.T) {
	var mutex sync.Mutex
	var done []string
	note := func(what string) {
		mutex.Lock()
		defer mutex.Unlock()
		done = append(done, what)
	}
	alone := &climb{oneCore: onOneCore(OneCore(context.Background()))}
	alone.both(func() { note("one begins"); time.Sleep(time.Millisecond); note("one ends") }, func() { note("the other") })
	if want := []string{"one begins", "one ends", "the other"}; !slices.Equal(done, want) {
		t.Errorf("on one core: %q, want %q", done, want)
	}
	meeting, met := make(chan bool), 0
	wide := &climb{oneCore: onOneCore(context.Background())}
	wide.both(func() {
		select {
		case <-meeting:
			met++
		case <-time.After(10 * time.Second):
		}
	}, func() {
		select {
		case meeting <- true:
		case <-time.After(10 * time.Second):
		}
	})
	if met != 1 {
		t.Error("on several cores one waits for the other to end")
	}
}
