package storetest

import (
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
