package bolt

import (
	"context"
	"errors"
	"io"
	"os"

	"go.etcd.io/bbolt"

	"evenhand/bank/files"
)

// Backup writes a copy of the file's pages as they stand at one moment.
func (f *File) Backup(ctx context.Context, to io.Writer) (size int64, err error) {
	if err := ctx.Err(); err != nil {
		return 0, err
	}
	err = guard(f.path, func() error {
		return f.db.View(func(tx *bbolt.Tx) error {
			size, err = tx.WriteTo(writer{ctx, to})
			return err
		})
	})
	return size, err
}

// writer writes until its context ends.
type writer struct {
	ctx context.Context
	to  io.Writer
}

func (w writer) Write(bytes []byte) (int, error) {
	if err := w.ctx.Err(); err != nil {
		return 0, err
	}
	return w.to.Write(bytes)
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
