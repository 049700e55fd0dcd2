package postgres_test

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"evenhand/bank/store"
	"evenhand/bank/store/postgres"
	"evenhand/bank/store/storetest"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// perWrite is how many entries a write makes beside the next number of its sequence.
const perWrite = 20

func writeOnce(s store.Store) error {
	return s.Update(background, func(w store.Writer) error {
		n, err := w.Next("items", 1)
		if err != nil {
			return err
		}
		if _, err := w.Get("items", []byte("nothing")); err != nil {
			return err
		}
		for i := range perWrite {
			if err := w.Put("items", fmt.Appendf(nil, "%06d %02d", n, i), []byte("x")); err != nil {
				return err
			}
		}
		return nil
	})
}

// writes is how many writes are there; each must be whole.
func writes(t *testing.T, s store.Store) (n int) {
	t.Helper()
	must(t, s.Update(background, func(store.Writer) error { return nil })) // after all that is still going on
	must(t, s.View(background, func(r store.Reader) error {
		sequence, err := r.Sequence("items")
		if err != nil {
			return err
		}
		n = 0
		for _, err := range r.Scan("items", store.Range{}) {
			if err != nil {
				return err
			}
			n++
		}
		if n != perWrite*int(sequence) {
			t.Fatalf("%d entries are there after %d writes of %d", n, sequence, perWrite)
		}
		n = int(sequence)
		return nil
	}))
	return n
}

// The connections are cut at the first piece that passes, at the second, and so on until a
// write needs no more pieces. Each time the write is done once: nothing is lost and nothing
// done twice, and the caller sees no error.
func TestAWriteSurvivesACutInEveryPhase(t *testing.T) {
	server := storetest.SharedServer(t)
	for _, before := range []bool{false, true} {
		bank := fmt.Sprintf("cut-%v", before)
		direct := made(t, server.Address(bank))
		p := newProxy(t, server.Port)
		cuts := 0
		for at := 1; ; at++ {
			s, err := postgres.Open(background, p.address(bank), store.Options{Timeout: 20 * time.Second})
			must(t, err)
			p.plan(at, before, false)
			if err := writeOnce(s); err != nil {
				t.Fatalf("cut at piece %d (lost: %v): %v", at, before, err)
			}
			cut := p.wasCut()
			p.plan(0, false, false)
			must(t, s.Close())
			if n := writes(t, direct); n != at {
				t.Fatalf("cut at piece %d (lost: %v): %d writes are there, want %d", at, before, n, at)
			}
			if !cut {
				break
			}
			cuts++
		}
		if cuts < 8 {
			t.Errorf("only %d phases were cut", cuts)
		}
	}
}

// The same, and the server stays away: what was acknowledged is there, what wasn't is there
// whole or not at all, and not at all unless the error says that it isn't known.
func TestAWriteIsAllOrNothingWhenTheServerStaysAway(t *testing.T) {
	server := storetest.SharedServer(t)
	for _, before := range []bool{false, true} {
		bank := fmt.Sprintf("away-%v", before)
		direct := made(t, server.Address(bank))
		p := newProxy(t, server.Port)
		had, unsure := 0, 0
		for at := 1; ; at++ {
			s, err := postgres.Open(background, p.address(bank), store.Options{Timeout: 20 * time.Millisecond})
			must(t, err)
			p.plan(at, before, true)
			err = writeOnce(s)
			cut := p.wasCut()
			must(t, s.Close())
			p.plan(0, false, false)
			n := writes(t, direct)
			switch {
			case err == nil && n != had+1:
				t.Fatalf("cut at piece %d: the write was acknowledged and isn't there", at)
			case errors.Is(err, store.ErrUnsure):
				unsure++
			case err != nil && n != had:
				t.Fatalf("cut at piece %d: the write failed (%v) and is there", at, err)
			}
			had = n
			if !cut {
				break
			}
		}
		if unsure == 0 {
			t.Error("no cut hit the commit")
		}
	}
}

// A View that loses its connection begins anew.
func TestAReadSurvivesACutInEveryPhase(t *testing.T) {
	server := storetest.SharedServer(t)
	direct := made(t, server.Address("read"))
	must(t, writeOnce(direct))
	p := newProxy(t, server.Port)
	for at := 1; ; at++ {
		s, err := postgres.Open(background, p.address("read"), store.Options{Timeout: 20 * time.Second})
		must(t, err)
		p.plan(at, true, false)
		n := 0
		err = s.View(background, func(r store.Reader) error {
			n = 0
			for _, err := range r.Scan("items", store.Range{}) {
				if err != nil {
					return err
				}
				n++
			}
			return nil
		})
		cut := p.wasCut()
		p.plan(0, false, false)
		must(t, s.Close())
		if err != nil || n != perWrite {
			t.Fatalf("cut at piece %d: %d entries were read (%v)", at, n, err)
		}
		if !cut {
			return
		}
	}
}

// made makes a store at an address.
func made(t *testing.T, address string) store.Store {
	t.Helper()
	must(t, postgres.Create(background, address, store.Options{}, func(store.Writer) error { return nil }))
	s, err := postgres.Open(background, address, store.Options{})
	must(t, err)
	t.Cleanup(func() { must(t, s.Close()) })
	return s
}
