package remote

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
)

// spool is a file that is there until it was sent.
type spool struct {
	*os.File
	size int64
	dir  string
}

func (s spool) remove() {
	s.Close()
	os.RemoveAll(s.dir)
}

// seen is a reader without what is hidden from clients.
type seen struct{ store.Reader }

func (s seen) Buckets() ([]string, error) {
	names, err := s.Reader.Buckets()
	return slices.DeleteFunc(names, hidden), err
}

// copied is a copy of what clients see, in a file of its own.
func copied(ctx context.Context, s store.Store) (made spool, err error) {
	dir, err := os.MkdirTemp("", "evenhand-")
	if err != nil {
		return made, err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(dir))
		}
	}()
	path := filepath.Join(dir, "copy")
	if err := bolt.Create(path, func(store.Writer) error { return nil }); err != nil {
		return made, err
	}
	file, err := bolt.Open(path, store.Options{})
	if err != nil {
		return made, err
	}
	began := false
	err = s.View(ctx, func(r store.Reader) error {
		if began {
			return errGone
		}
		began = true
		return store.Copy(seen{r}, func(put func(store.Writer) error) error { return file.Update(ctx, put) })
	})
	if err := errors.Join(err, file.Close()); err != nil {
		return made, err
	}
	opened, err := os.Open(path)
	if err != nil {
		return made, err
	}
	info, err := opened.Stat()
	if err != nil {
		return made, errors.Join(err, opened.Close())
	}
	return spool{opened, info.Size(), dir}, nil
}
