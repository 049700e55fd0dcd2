package storetest

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"sync"
	"testing"
	"time"

	"evenhand/bank/store"
)

// opening: what isn't there isn't opened, what is there isn't made again, and who only
// reads doesn't write.
func opening(t *testing.T, m Maker) {
	address := m.Place(t)
	if _, err := m.Open(address, store.Options{}); !errors.Is(err, fs.ErrNotExist) {
		t.Fatalf("opening nothing gives %v, want fs.ErrNotExist", err)
	}
	s := madeAt(t, m, address)
	put(t, s, "items", "a", "1")
	if s.Name() != address {
		t.Errorf("the store's name is %q, want %q", s.Name(), address)
	}
	must(t, s.Close())
	if err := m.Create(address, func(store.Writer) error { return nil }); !errors.Is(err, fs.ErrExist) {
		t.Fatalf("making it again gives %v, want fs.ErrExist", err)
	}
	s, err := m.Open(address, store.Options{ReadOnly: true})
	must(t, err)
	err = s.Update(background, func(w store.Writer) error { return w.Put("items", []byte("a"), []byte("2")) })
	if err == nil || !strings.Contains(err.Error(), "opened only to read") {
		t.Errorf("writing to what was opened to read gives %v", err)
	}
	if value, _ := get(t, s, "items", "a"); value != "1" {
		t.Errorf("the value is %q, want what was kept first", value)
	}
	problems, err := s.Inspect(background)
	if must(t, err); len(problems) > 0 {
		t.Errorf("a sound store has the problems %q", problems)
	}
	must(t, s.Close())
}

// order: keys are compared byte by byte, a shorter one before those that it begins.
func order(t *testing.T, m Maker) {
	s := made(t, m)
	want := []string{"\x00", "\x00\x00", "\x01", "A", "B", "a", "a\x00", "aa", "b", "\x7f", "\x80", "\xc3\xa4", "\xfe", "\xff", "\xff\x00", "\xff\xff"}
	for i := range want { // put in another order: 7 has no factor in common with 16
		key := want[i*7%len(want)]
		put(t, s, "items", key, key)
	}
	must(t, s.View(background, func(r store.Reader) error {
		list, err := scanned(r, "items", store.Range{})
		if err != nil {
			return err
		}
		for i, key := range want {
			if 2*i >= len(list) || list[2*i] != key {
				t.Fatalf("the keys are %q, want %q", list, want)
			}
		}
		list, err = scanned(r, "items", store.Prefix([]byte("\xff")))
		if len(list) != 6 {
			t.Errorf("what begins with FF is %q", list)
		}
		return err
	}))
}

// oneMoment: a View doesn't see what is written after it began.
func oneMoment(t *testing.T, m Maker) {
	s := made(t, m)
	put(t, s, "items", many("old", 0, 3000)...)
	var writing sync.WaitGroup
	must(t, s.View(background, func(r store.Reader) error {
		n := 0
		for e, err := range r.Scan("items", store.Range{}) {
			if err != nil {
				return err
			}
			if string(e.Value) != "old" {
				t.Fatalf("%q has become %q", e.Key, e.Value)
			}
			if n++; n%1000 == 1 {
				from := n - 1 // the writing may last longer than the wait for it
				besides(&writing, func() {
					put(t, s, "items", many("new", from, 1000)...)
					put(t, s, "uses", fmt.Sprint(from+1), "new")
				})
			}
		}
		if n != 3000 {
			t.Fatalf("%d entries were read, want 3,000", n)
		}
		if value, err := r.Get("uses", []byte("1")); value != nil || err != nil {
			t.Errorf("an entry of a bucket made since is seen: %q (%v)", value, err)
		}
		return nil
	}))
	writing.Wait()
	if value, _ := get(t, s, "items", "002999"); value != "new" {
		t.Errorf("the next View sees %q", value)
	}
}

// besides writes while a View is open, and gives it a moment to be done: an Update may
// have to wait for open Views.
func besides(all *sync.WaitGroup, write func()) {
	done := make(chan bool)
	all.Go(func() { write(); close(done) })
	select {
	case <-done:
	case <-time.After(100 * time.Millisecond):
	}
}

// many is n keys in order, from a number on, all with one value.
func many(value string, from, n int) (entries []string) {
	for i := range n {
		entries = append(entries, fmt.Sprintf("%06d", from+i), value)
	}
	return entries
}

// allOrNothing: what an Update wrote before its error isn't there, nor is its sequence.
func allOrNothing(t *testing.T, m Maker) {
	s := made(t, m)
	put(t, s, "items", "a", "1", "b", "2")
	err := s.Update(background, func(w store.Writer) error {
		must(t, w.Put("items", []byte("a"), []byte("changed")))
		must(t, w.Delete("items", []byte("b")))
		must(t, w.Make("papers"))
		_, err := w.Next("items", 5)
		must(t, err)
		for i := range 3000 { // more than is gathered
			must(t, w.Put("items", fmt.Appendf(nil, "%06d", i), make([]byte, 5000)))
		}
		list, err := scanned(w, "items", store.Prefix([]byte("a")))
		if must(t, err); len(list) != 2 || list[1] != "changed" {
			t.Errorf("inside, the Update sees %q", list)
		}
		return errOurs
	})
	if !errors.Is(err, errOurs) {
		t.Fatalf("the error is %v", err)
	}
	must(t, s.View(background, func(r store.Reader) error {
		list, err := scanned(r, "items", store.Range{})
		if len(list) != 4 || list[1] != "1" {
			t.Errorf("after a failed Update %d entries are there", len(list)/2)
		}
		if sequence, _ := r.Sequence("items"); sequence != 0 {
			t.Errorf("the sequence stands at %d", sequence)
		}
		return err
	}))
}
