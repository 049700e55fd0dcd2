// Package storetest is the laws that every maker of a store must keep, whatever it is
// made of, and the PostgreSQL servers that tests of ours start for themselves.
//
// A maker's tests call Laws and Main:
//
//	func TestLaws(t *testing.T) { storetest.Laws(t, maker) }
//	func TestMain(m *testing.M) { os.Exit(storetest.Main(m, maker)) }
package storetest

import (
	"bytes"
	"context"
	"errors"
	"os"
	"testing"

	"evenhand/bank/store"
	"evenhand/testdata/outside"
)

// Maker is how the laws get at stores of one make.
type Maker struct {
	// Place is an address at which nothing is yet.
	Place func(t testing.TB) string

	Create func(address string, layOut func(store.Writer) error) error
	Open   func(address string, o store.Options) (store.Store, error)

	// Shared says that several programs may have a store open to write at once.
	Shared bool
}

// Laws holds a maker to all of them.
func Laws(t *testing.T, m Maker) {
	for _, law := range []struct {
		name string
		hold func(*testing.T, Maker)
	}{
		{"opening", opening},
		{"as maps would be", model},
		{"order of keys", order},
		{"one moment", oneMoment},
		{"all or nothing", allOrNothing},
		{"taking turns", turns},
		{"writing while scanning", writingWhileScanning},
		{"many ranges", manyRanges},
		{"edges of ranges", edges},
		{"sequences", sequences},
		{"sizes", sizes},
		{"cancelled", cancelled},
		{"cancelled at every step", cancelledAtEveryStep},
		{"copies", copies},
		{"replacing", replacing},
		{"a program that is killed", killed},
	} {
		t.Run(law.name, func(t *testing.T) { law.hold(t, m) })
	}
}

// Main runs a package's tests; it is also the program that the law "killed" kills.
func Main(m *testing.M, maker Maker) int {
	if address := os.Getenv(victim); address != "" {
		writeUntilKilled(maker, address)
		return 1
	}
	defer stopShared()
	return outside.M{M: m}.Run()
}

var background = context.Background()

// failer is a *testing.T or one of rapid's.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

func must(t failer, err error) {
	t.Helper()
	if err != nil {
		t.Fatalf("%v", err)
	}
}

// made is a new store, closed when the test ends.
func made(t testing.TB, m Maker) store.Store {
	t.Helper()
	s := madeAt(t, m, m.Place(t))
	t.Cleanup(func() { must(t, s.Close()) })
	return s
}

// madeAt is a new, empty store.
func madeAt(t failer, m Maker, address string) store.Store {
	t.Helper()
	must(t, m.Create(address, func(store.Writer) error { return nil }))
	s, err := m.Open(address, store.Options{})
	must(t, err)
	return s
}

func put(t failer, s store.Store, bucket string, entries ...string) {
	t.Helper()
	must(t, s.Update(background, func(w store.Writer) error {
		for i := 0; i < len(entries); i += 2 {
			if err := w.Put(bucket, []byte(entries[i]), []byte(entries[i+1])); err != nil {
				return err
			}
		}
		return nil
	}))
}

func get(t failer, s store.Store, bucket, key string) (value string, there bool) {
	t.Helper()
	must(t, s.View(background, func(r store.Reader) error {
		v, err := r.Get(bucket, []byte(key))
		value, there = string(v), v != nil
		return err
	}))
	return value, there
}

// scanned is the keys and values of ranges, one after the other.
func scanned(r store.Reader, bucket string, ranges ...store.Range) (list []string, err error) {
	for e, err := range r.Scan(bucket, ranges...) {
		if err != nil {
			return nil, err
		}
		list = append(list, string(e.Key), string(bytes.Clone(e.Value)))
	}
	return list, nil
}

var errOurs = errors.New("an error of the caller's own")
