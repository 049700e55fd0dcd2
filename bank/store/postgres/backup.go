package postgres

import (
	"context"
	"io"
	"os"
	"path/filepath"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
	"evenhand/standards/words"
)

// Backup copies the store into a file of its own first, in the folder for temporary files.
func (s *Store) Backup(ctx context.Context, to io.Writer) (size int64, err error) {
	dir, err := os.MkdirTemp("", "evenhand-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "copy")
	if err := bolt.Create(path, func(store.Writer) error { return nil }); err != nil {
		return 0, err
	}
	file, err := bolt.Open(path, store.Options{})
	if err != nil {
		return 0, err
	}
	defer file.Close()
	copied := false
	err = s.View(ctx, func(r store.Reader) error {
		if copied {
			return store.ErrLost
		}
		copied = true
		return store.Copy(r, func(write func(store.Writer) error) error { return file.Update(ctx, write) })
	})
	if err != nil {
		return 0, err
	}
	return file.Backup(ctx, to)
}

// Inspect finds nothing: pages are the server's own to look after.
func (s *Store) Inspect(context.Context) (problems []*words.Told, err error) { return nil, nil }
