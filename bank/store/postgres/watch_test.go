package postgres_test

import (
	"context"
	"testing"
	"time"

	"evenhand/bank/store"
	"evenhand/bank/store/postgres"
	"evenhand/bank/store/storetest"
)

// Who watches a store is told of each write of another program that is kept, of no other store's, of none of its own,
// and of none that failed.
func TestWatch(t *testing.T) {
	server := storetest.SharedServer(t)
	watched, apart := made(t, server.Address("watched")), made(t, server.Address("watched-not"))
	other, err := postgres.Open(t.Context(), server.Address("watched"), store.Options{})
	must(t, err)
	defer other.Close()
	ctx, end := context.WithCancel(t.Context())
	defer end()
	heard := make(chan map[string][]byte, 100)
	go watched.(store.Watcher).Watch(ctx, func(changed map[string][]byte) { heard <- changed })
	put := func(s store.Store, bucket string, then error) {
		err := s.Update(ctx, func(w store.Writer) error {
			must(t, w.Put(bucket, []byte("key"), nil))
			return then
		})
		if err != then {
			t.Fatal(err)
		}
	}
	for range 100 { // until it listens
		put(other, "begin", nil)
		select {
		case <-heard:
		case <-time.After(100 * time.Millisecond):
			continue
		}
		break
	}
	put(watched, "own", nil)
	put(apart, "apart", nil)
	put(other, "failed", context.Canceled)
	put(other, "end", nil)
	for {
		select {
		case changed := <-heard:
			if changed["begin"] != nil {
				continue
			}
			if string(changed["end"]) != "key" || len(changed) != 1 {
				t.Errorf("the news are %q", changed)
			}
		case <-time.After(20 * time.Second):
			t.Error("no news came")
		}
		return
	}
}
