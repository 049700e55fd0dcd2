package postgres

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
)

// Backup copies the store into a file of its own first, in the folder for temporary files.
func (s *Store) Backup(ctx context.Context, to io.Writer) (size int64, err error) {
	dir, err := os.MkdirTemp("", "evenhand-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(dir)
	file, err := bolt.Create(filepath.Join(dir, "copy"), store.Options{})
	if err != nil {
		return 0, err
	}
	defer file.Close()
	if err := store.Copy(ctx, s, file); err != nil {
		return 0, err
	}
	return file.Backup(ctx, to)
}

// Inspect asks for the server's settings without which something that was acknowledged may be
// lost with the power. Its pages are the server's own to look after.
func (s *Store) Inspect(ctx context.Context) (problems []string, err error) {
	err = s.View(ctx, func(r store.Reader) error {
		problems = nil
		for _, setting := range []string{"fsync", "full_page_writes", "synchronous_commit"} {
			var value string
			if err := r.(*reader).tx.QueryRow(ctx, `select current_setting($1)`, setting).Scan(&value); err != nil {
				return r.(*reader).fail(err)
			}
			if value == "off" {
				problems = append(problems, fmt.Sprintf("the database is set to %s = off: "+
					"what was kept last may be lost when its machine stops; ask who keeps it to switch that on", setting))
			}
		}
		return nil
	})
	return problems, err
}
