package bank

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"go.etcd.io/bbolt"

	"evenhand/bank/files"
)

// Backup writes a copy of the bank as it stands at one moment, while it may go on
// being used, and returns its length in bytes. The copy is a bank file itself.
func (b *Bank) Backup(to io.Writer) (size int64, err error) { return b.file.Backup(to) }

// BackupFile writes a copy to a file, which appears under its name only when it
// is proved undamaged and safe on the disk. It never replaces a file.
func (b *Bank) BackupFile(path string) (size int64, err error) {
	return b.file.BackupFile(path, ProveFile)
}

// ProveFile says what is damaged in the bank of a file.
func ProveFile(path string) error {
	b, err := Open(path, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	report, err := b.Check()
	if err = errors.Join(err, b.Close()); err == nil && !report.Whole() {
		err = Damaged{path, report.Problems[0]}
	}
	return err
}

// Backup writes a copy of the file as it stands at one moment.
func (f *File) Backup(to io.Writer) (size int64, err error) {
	err = f.View(func(tx *bbolt.Tx) error {
		size, err = tx.WriteTo(to)
		return err
	})
	return size, err
}

// BackupFile writes a copy to a file that must not be there yet. The copy is proved
// before it gets its name; the error of the proof then speaks of this file.
func (f *File) BackupFile(path string, prove func(temp string) error) (size int64, err error) {
	err = files.New(path, files.Private, func(to io.Writer) error {
		size, err = f.Backup(to)
		return err
	}, func(temp string) error {
		err := prove(temp)
		if found := (Damaged{}); errors.As(err, &found) {
			return Damaged{f.path, found.What}
		}
		return err
	})
	switch found := (Damaged{}); {
	case errors.Is(err, fs.ErrExist):
		return 0, fmt.Errorf("%s is there already; choose another name for the backup", path)
	case errors.As(err, &found):
		return 0, fmt.Errorf("no backup was made, as it would be damaged, too: %w", err)
	case err != nil:
		return 0, fmt.Errorf("the backup could not be written: %w", err)
	}
	return size, nil
}

// Rewrite writes the file anew, so that nothing of what was removed is left in it, and
// closes it.
func (f *File) Rewrite() error {
	temp := files.TempName(f.path)
	to, err := bbolt.Open(temp, files.Private, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	if err != nil {
		return errors.Join(err, f.Close())
	}
	err = guard(f.path, func() error { return bbolt.Compact(to, f.db, 1<<20) })
	if err = errors.Join(err, to.Close()); err != nil {
		return errors.Join(err, f.Close(), os.Remove(temp))
	}
	// The name changes hands while the old file is still locked: who waits for it opens the new one.
	err = files.Swap(temp, f.path)
	return errors.Join(err, f.Close())
}
