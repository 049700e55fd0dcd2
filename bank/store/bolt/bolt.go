// Package bolt keeps a store in one file, by bbolt.
//
// The file is handled with the care that a bank needs: readable by its owner only,
// never waited for without end, never mapped when it is cut short, and damage in it
// is an error, not a crash.
//
// While one program has the file open to write, no other can open it; several may
// have it open to read. That is for programs of one machine: on a folder of a network
// the locks of bbolt may not hold, and two programs that write at once destroy the file.
package bolt

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"time"

	"go.etcd.io/bbolt"
	bberrors "go.etcd.io/bbolt/errors"

	"evenhand/bank/store"
)

// File is an open file. It is a store.Store.
type File struct {
	path string
	db   *bbolt.DB
	turn chan struct{} // holds one token: the right to write
}

// aWhile is how long is waited for a file before anybody is told.
const aWhile = time.Second

// Create makes a new file and opens it. Where there is one already the error is os.ErrExist.
func Create(path string, o store.Options) (*File, error) {
	return open(path, o, os.O_CREATE|os.O_EXCL)
}

// Open opens a file that is there; else the error is os.ErrNotExist. What is wrong
// with it is said in one sentence.
func Open(path string, o store.Options) (*File, error) { return open(path, o, 0) }

func open(path string, o store.Options, flags int) (*File, error) {
	first := min(o.Patience(), aWhile)
	f, err := lock(path, o, flags, first)
	if rest := o.Patience() - first; errors.Is(err, bberrors.ErrTimeout) && rest > 0 {
		o.Told(path)
		f, err = lock(path, o, flags, rest)
	}
	switch {
	case errors.Is(err, bberrors.ErrTimeout):
		return nil, fmt.Errorf("%s is in use by another evenhand command or window; "+
			"close that, or wait until it is done, and try again (waited %s)", path, o.Patience())
	case errors.Is(err, bberrors.ErrInvalid), errors.Is(err, bberrors.ErrVersionMismatch), errors.Is(err, bberrors.ErrChecksum):
		return nil, damaged(path, err)
	}
	return f, err
}

// lock opens the file as soon as no other program keeps it from that.
func lock(path string, o store.Options, flags int, timeout time.Duration) (*File, error) {
	f := &File{path: path, turn: make(chan struct{}, 1)}
	f.turn <- struct{}{}
	return f, guard(path, func() (err error) {
		f.db, err = bbolt.Open(path, 0o600, &bbolt.Options{
			Timeout:  timeout,
			ReadOnly: o.ReadOnly,
			OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
				return openWhole(name, flag&^os.O_CREATE|flags, mode)
			},
			FreelistType: bbolt.FreelistMapType,
		})
		return err
	})
}

// Name is the file's name as it was opened.
func (f *File) Name() string { return f.path }

// Close lets other programs use the file.
func (f *File) Close() error { return f.db.Close() }

// View reads; several may at once, also while one writes.
func (f *File) View(ctx context.Context, read func(store.Reader) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	return guard(f.path, func() error {
		return f.db.View(func(tx *bbolt.Tx) error { return read(newTransaction(ctx, tx)) })
	})
}

// Update writes all that it is given or, on an error, nothing.
func (f *File) Update(ctx context.Context, write func(store.Writer) error) error {
	return f.update(ctx, func(tx *bbolt.Tx) error { return write(newTransaction(ctx, tx)) })
}

func (f *File) update(ctx context.Context, write func(*bbolt.Tx) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-f.turn:
		defer func() { f.turn <- struct{}{} }()
	}
	err := guard(f.path, func() error {
		return f.db.Update(func(tx *bbolt.Tx) error {
			if err := write(tx); err != nil {
				return err
			}
			return ctx.Err()
		})
	})
	if errors.Is(err, bberrors.ErrDatabaseReadOnly) {
		return fmt.Errorf("%s was opened only to read", f.path)
	}
	return err
}

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

// guard runs work on the file and turns what bbolt does on damaged pages, a panic
// or a memory fault, into an error.
func guard(path string, work func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if cause := recover(); cause != nil {
			err = damaged(path, cause)
		}
	}()
	return work()
}

// damaged is the one sentence for a file that can't be trusted any more.
func damaged(path string, cause any) error {
	return fmt.Errorf("%s is damaged (%v); put a backup in its place", path, cause)
}
