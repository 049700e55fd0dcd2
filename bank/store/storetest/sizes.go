package storetest

import (
	"bytes"
	"context"
	"errors"
	"math/rand/v2"
	"testing"
	"time"

	"evenhand/bank/store"
)

// sizes: keys and values of all sizes that are promised are kept, larger ones refused.
func sizes(t *testing.T, m Maker) {
	s := made(t, m)
	// Bytes that can't be packed closer, as a store may pack what it keeps.
	random := rand.NewChaCha8([32]byte{})
	noise := func(n int) []byte {
		b := make([]byte, n)
		random.Read(b)
		return b
	}
	key := noise(store.MaxKey)
	for _, size := range []int{0, 1, 2000, 8192, 70_000, store.MaxValue} {
		value := noise(size)
		must(t, s.Update(background, func(w store.Writer) error { return w.Put("items", key, value) }))
		must(t, s.View(background, func(r store.Reader) error {
			got, err := r.Get("items", key)
			if !bytes.Equal(got, value) {
				t.Errorf("a value of %d bytes has %d when it is read", len(value), len(got))
			}
			return err
		}))
	}
	for n := range store.MaxKey / 64 {
		must(t, s.Update(background, func(w store.Writer) error { return w.Put("keys", key[:64*n+1], key[:n]) }))
	}
	must(t, s.View(background, func(r store.Reader) error {
		list, err := scanned(r, "keys", store.Range{})
		if len(list) != 2*store.MaxKey/64 || len(list[len(list)-2]) != store.MaxKey-63 {
			t.Errorf("%d keys of growing length are there", len(list)/2)
		}
		return err
	}))
	for _, wrong := range []struct {
		bucket     string
		key, value []byte
	}{
		{"items", nil, nil},
		{"", []byte("a"), nil},
		{"items", append(key, 0), nil},
		{"items", []byte("a"), make([]byte, store.MaxValue+1)},
	} {
		if s.Update(background, func(w store.Writer) error { return w.Put(wrong.bucket, wrong.key, wrong.value) }) == nil {
			t.Errorf("a key of %d and a value of %d bytes are kept in %q", len(wrong.key), len(wrong.value), wrong.bucket)
		}
	}
}

// cancelled: a context that ends ends the work; an Update then wrote nothing, and the
// store can be used as before.
func cancelled(t *testing.T, m Maker) {
	s := made(t, m)
	put(t, s, "items", many("old", 0, 3000)...)
	ended, end := context.WithCancel(background)
	end()
	if err := s.View(ended, func(store.Reader) error { return nil }); !errors.Is(err, context.Canceled) {
		t.Errorf("a View with an ended context gives %v", err)
	}
	err := s.Update(ended, func(w store.Writer) error { return w.Put("items", []byte("a"), nil) })
	if !errors.Is(err, context.Canceled) {
		t.Errorf("an Update with an ended context gives %v", err)
	}
	ctx, end := context.WithCancel(background)
	err = s.Update(ctx, func(w store.Writer) error {
		must(t, w.Put("items", []byte("b"), nil))
		end()
		return nil
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("an Update whose context ends gives %v", err)
	}
	ctx, end = context.WithCancel(background)
	n := 0
	err = s.View(ctx, func(r store.Reader) error {
		n = 0
		for _, err := range r.Scan("items", store.Range{}) {
			if err != nil {
				return err
			}
			if n++; n == 10 {
				end()
			}
		}
		return nil
	})
	if !errors.Is(err, context.Canceled) || n == 3000 {
		t.Errorf("a View whose context ends gives %v after %d entries", err, n)
	}
	waitingForAnother(t, s)
	for _, key := range []string{"a", "b", "c"} {
		if _, there := get(t, s, "items", key); there {
			t.Errorf("an Update that was ended has written %q", key)
		}
	}
	put(t, s, "items", "d", "after all")
}

// waitingForAnother: who waits for another's Update can be called off.
func waitingForAnother(t *testing.T, s store.Store) {
	began, hold, done := make(chan bool), make(chan bool), make(chan error)
	go func() {
		done <- s.Update(background, func(store.Writer) error {
			close(began)
			<-hold
			return nil
		})
	}()
	<-began
	short, end := context.WithTimeout(background, 30*time.Millisecond)
	defer end()
	err := s.Update(short, func(w store.Writer) error { return w.Put("items", []byte("c"), nil) })
	if !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("an Update that waited for too long gives %v", err)
	}
	close(hold)
	must(t, <-done)
}
