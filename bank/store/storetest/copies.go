package storetest

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
)

// copies: a copy in the same or another make of store is equal, and so is a backup.
func copies(t *testing.T, m Maker) {
	s := made(t, m)
	put(t, s, "items", many("v", 0, 3000)...)
	put(t, s, "uses", "a", "", "b", "\x00")
	must(t, s.Update(background, func(w store.Writer) error {
		if err := w.Make("papers"); err != nil {
			return err
		}
		_, err := w.Next("uses", 1<<63+5)
		return err
	}))
	other := made(t, m)
	copyAll(t, s, other)
	if difference := different(t, s, other); difference != nil {
		t.Error(difference)
	}
	path := filepath.Join(t.TempDir(), "backup")
	size := writeBackup(t, s, path)
	file, err := bolt.Open(path, store.Options{})
	must(t, err)
	defer file.Close()
	must(t, different(t, s, file))
	if size < 3000 {
		t.Errorf("the backup is said to have %d bytes", size)
	}
	back := made(t, m)
	copyAll(t, file, back)
	must(t, different(t, back, s))
	for _, change := range []func(store.Writer) error{
		func(w store.Writer) error { return w.Put("uses", []byte("b"), nil) },
		func(w store.Writer) error { return w.Put("uses", []byte("c"), nil) },
		func(w store.Writer) error { return w.Delete("items", []byte("002999")) },
		func(w store.Writer) error { return w.Make("plans") },
		func(w store.Writer) error { _, err := w.Next("items", 1); return err },
	} {
		one := made(t, m)
		copyAll(t, s, one)
		must(t, one.Update(background, change))
		if different(t, s, one) == nil || different(t, one, s) == nil {
			t.Error("two stores that differ are taken for equal")
		}
	}
}

func copyAll(t *testing.T, from, to store.Store) {
	t.Helper()
	must(t, from.View(background, func(r store.Reader) error {
		return store.Copy(r, func(write func(store.Writer) error) error { return to.Update(background, write) })
	}))
}

// different is the first difference of two stores.
func different(t *testing.T, one, other store.Store) (difference error) {
	t.Helper()
	must(t, one.View(background, func(a store.Reader) error {
		return other.View(background, func(b store.Reader) error {
			_, difference = store.Equal(a, b)
			return nil
		})
	}))
	return difference
}

// writeBackup writes a backup to a file and returns the length that was told.
func writeBackup(t *testing.T, s store.Store, path string) (size int64) {
	t.Helper()
	file, err := os.Create(path)
	must(t, err)
	size, err = s.Backup(background, file)
	must(t, err)
	info, err := file.Stat()
	must(t, err)
	if info.Size() != size {
		t.Errorf("the backup has %d bytes and is said to have %d", info.Size(), size)
	}
	must(t, file.Close())
	return size
}

// replacing: whatever a store and another one hold, in one Update the first holds what the other does, but for what it
// keeps; a failed Update replaces nothing, and a number that was given is never given again.
func replacing(t *testing.T, m Maker) {
	from := made(t, m)
	put(t, from, "items", many("v", 0, 3000)...)
	put(t, from, "uses", "a", "", "c", "\x00", "d", "new")
	put(t, from, "people", "jk", "of then")
	s := made(t, m)
	put(t, s, "items", many("v", 500, 2500)...)
	put(t, s, "items", "000600", "changed", "zz", "since")
	put(t, s, "uses", "b", "since", "d", "old")
	put(t, s, "plans", "winter", "since")
	put(t, s, "people", "mk", "of now")
	must(t, s.Update(background, func(w store.Writer) error { _, err := w.Next("uses", 7); return err }))
	must(t, from.Update(background, func(w store.Writer) error { _, err := w.Next("items", 40); return err }))
	untouched := made(t, m)
	copyAll(t, s, untouched)
	replace := func(fail error) error {
		return from.View(background, func(r store.Reader) error {
			return s.Update(background, func(w store.Writer) error {
				if err := store.Replace(w, r, "people"); err != nil {
					return err
				}
				return fail
			})
		})
	}
	if err := replace(errLater); !errors.Is(err, errLater) {
		t.Fatalf("the error of an Update is %v", err)
	}
	must(t, different(t, s, untouched))
	must(t, replace(nil))
	want := made(t, m) // what the other holds, with what was to stay
	copyAll(t, from, want)
	must(t, want.Update(background, func(w store.Writer) error {
		for name, n := range map[string]uint64{"items": 1, "uses": 8} {
			if _, err := w.Next(name, n); err != nil {
				return err
			}
		}
		if _, err := w.Next("plans", 1); err != nil {
			return err
		}
		return errors.Join(w.Delete("people", []byte("jk")), w.Put("people", []byte("mk"), []byte("of now")))
	}))
	must(t, different(t, s, want))
}

// errLater ends an Update after its work.
var errLater = errors.New("later")
