package storetest

import (
	"encoding/binary"
	"fmt"
	"sync"
	"testing"

	"evenhand/bank/store"
)

const (
	writers = 8
	rounds  = 25
)

// turns: writers at once read, add one and write; none of it is lost, no number of a
// sequence is given twice and none is left out. Where programs may share a store each
// writer has opened it for itself.
func turns(t *testing.T, m Maker) {
	address := m.Place(t)
	first := madeAt(t, m, address)
	defer first.Close()
	var all sync.WaitGroup
	for n := range writers {
		s := first
		if m.Shared {
			var err error
			s, err = m.Open(address, store.Options{})
			must(t, err)
			defer s.Close()
		}
		all.Go(func() {
			for range rounds {
				if err := s.Update(background, func(w store.Writer) error { return addOne(w, n) }); err != nil {
					t.Errorf("writer %d: %v", n, err)
				}
			}
		})
	}
	all.Wait()
	must(t, first.View(background, func(r store.Reader) error {
		sum, err := r.Get("counts", []byte("all"))
		if err != nil {
			return err
		}
		if n := binary.BigEndian.Uint64(sum); n != writers*rounds {
			t.Errorf("%d of %d additions are there", n, writers*rounds)
		}
		list, err := scanned(r, "given", store.Range{})
		if len(list) != 2*writers*rounds {
			t.Errorf("%d numbers were given, want %d", len(list)/2, writers*rounds)
		}
		if last, _ := r.Sequence("given"); last != writers*rounds {
			t.Errorf("the last number given is %d, want %d", last, writers*rounds)
		}
		return err
	}))
}

func addOne(w store.Writer, writer int) error {
	value, err := w.Get("counts", []byte("all"))
	if err != nil {
		return err
	}
	sum := uint64(0)
	if value != nil {
		sum = binary.BigEndian.Uint64(value)
	}
	if err := w.Put("counts", []byte("all"), binary.BigEndian.AppendUint64(nil, sum+1)); err != nil {
		return err
	}
	number, err := w.Next("given", 1)
	if err != nil {
		return err
	}
	return w.Put("given", binary.BigEndian.AppendUint64(nil, number), fmt.Append(nil, writer))
}

// sequences: numbers have all 64 bits, those of two buckets are apart, and when they are
// used up that is an error.
func sequences(t *testing.T, m Maker) {
	address := m.Place(t)
	s := madeAt(t, m, address)
	next := func(bucket string, n, want uint64) {
		t.Helper()
		must(t, s.Update(background, func(w store.Writer) error {
			last, err := w.Next(bucket, n)
			if last != want {
				t.Errorf("%q gives %d, want %d", bucket, last, want)
			}
			return err
		}))
	}
	next("items", 1, 1)
	next("items", 1, 2)
	next("uses", 1, 1)
	next("items", 1<<63-3, 1<<63-1)
	next("items", 1, 1<<63)
	must(t, s.Close())
	s, err := m.Open(address, store.Options{})
	must(t, err)
	defer s.Close()
	next("items", 1<<63-2, 1<<64-2)
	next("items", 1, 1<<64-1)
	err = s.Update(background, func(w store.Writer) error {
		_, err := w.Next("items", 1)
		return err
	})
	if err == nil {
		t.Error("a number was given beyond the last one")
	}
	next("uses", 1, 2)
}
