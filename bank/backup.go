package bank

import (
	"fmt"
	"io"
	"os"

	"go.etcd.io/bbolt"
)

// Backup writes a copy of the bank as it stands at one moment, while it may go on
// being used, and returns its length in bytes. The copy is a bank file itself.
func (b *Bank) Backup(to io.Writer) (size int64, err error) {
	err = b.view(func(tx *bbolt.Tx) error {
		size, err = tx.WriteTo(to)
		return err
	})
	return size, err
}

// BackupFile writes a copy to a file, which appears under its name only when it
// is whole and safe on the disk. It never replaces a file.
func (b *Bank) BackupFile(path string) (size int64, err error) {
	if _, err := os.Lstat(path); err == nil {
		return 0, fmt.Errorf("%s is there already; choose another name for the backup", path)
	}
	err = WriteFile(path, 0o600, func(to io.Writer) error {
		size, err = b.Backup(to)
		return err
	})
	if err != nil {
		return 0, fmt.Errorf("the backup could not be written: %w", err)
	}
	return size, nil
}
