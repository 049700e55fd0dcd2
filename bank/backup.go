package bank

import (
	"context"
	"errors"
	"io"
	"io/fs"

	"evenhand/bank/files"
	"evenhand/bank/store"
	"evenhand/standards/words"
)

// Backup writes a copy of the bank as it stands at one moment, while it may go on
// being used, and returns its length in bytes. The copy is a bank file itself.
func (b *Bank) Backup(to io.Writer) (size int64, err error) { return b.store.Backup(b.ctx, to) }

// BackupFile writes a copy to a file, which appears under its name only when it
// is proved undamaged and safe on the disk. It never replaces a file.
func (b *Bank) BackupFile(path string) (size int64, err error) {
	return BackupStore(b.ctx, b.store, path, ProveFile)
}

// ProveFile says what is damaged in the bank of a file.
func ProveFile(path string) error {
	b, err := Open(path, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	report, err := b.Check()
	if err = errors.Join(err, b.Close()); err == nil && !report.Whole() {
		err = store.Damaged{Name: path, What: report.Problems[0].Told}
	}
	return err
}

// BackupStore writes a copy of a store to a file that must not be there yet. The copy is
// proved before it gets its name; the error of the proof then speaks of the store.
func BackupStore(ctx context.Context, s store.Store, path string, prove func(temp string) error) (size int64, err error) {
	err = files.New(path, files.Private, func(to io.Writer) error {
		size, err = s.Backup(ctx, to)
		return err
	}, func(temp string) error {
		err := prove(temp)
		if found := (store.Damaged{}); errors.As(err, &found) {
			return store.Damaged{Name: s.Name(), What: found.What}
		}
		return err
	})
	switch found := (store.Damaged{}); {
	case errors.Is(err, fs.ErrExist):
		return 0, words.Errorf("%s is there already; choose another name for the backup", path)
	case errors.As(err, &found):
		return 0, words.Errorf("no backup was made, as it would be damaged, too: %w", err)
	case err != nil:
		return 0, words.Errorf("the backup could not be written: %w", err)
	}
	return size, nil
}
