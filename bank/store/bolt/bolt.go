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
	"os"
	"runtime/debug"
	"time"

	"go.etcd.io/bbolt"
	bberrors "go.etcd.io/bbolt/errors"

	"evenhand/bank/files"
	"evenhand/bank/store"
	"evenhand/standards/words"
)

// File is an open file. It is a store.Store.
type File struct {
	path string
	db   *bbolt.DB
	turn chan struct{} // holds one token: the right to write
}

// Create makes a file that only its owner can read, with what layOut writes in it. It appears
// under its name with that or not at all, and never takes the place of another, however
// many programs make it at once: the error is then fs.ErrExist.
func Create(path string, layOut func(store.Writer) error) error {
	temp := files.TempName(path)
	db, err := bbolt.Open(temp, files.Private, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bbolt.Tx) error { return layOut(newTransaction(context.Background(), tx)) })
	if err := errors.Join(err, db.Close()); err != nil {
		return errors.Join(err, os.Remove(temp))
	}
	return files.Place(temp, path)
}

// Open opens a file that is there; else the error is fs.ErrNotExist. What is wrong
// with it is said in one sentence.
func Open(path string, o store.Options) (*File, error) {
	told := o.Waiting == nil
	first := o
	if first.Timeout = o.Patience(); !told {
		first.Timeout = min(o.Patience(), aWhile)
	}
	for {
		f, opened, err := open(path, first)
		if errors.Is(err, bberrors.ErrTimeout) && !told && o.Patience() > aWhile {
			told = true
			o.Waiting(path)
			first.Timeout = o.Patience() - aWhile
			continue
		}
		if err != nil {
			return nil, inWords(path, o, err)
		}
		// While this program waited, another may have put a backup in the file's place.
		if still, err := os.Stat(path); err == nil && os.SameFile(still, opened) {
			return f, nil
		}
		if err := f.Close(); err != nil {
			return nil, err
		}
	}
}

// aWhile is how long is waited for a file before anybody is told.
const aWhile = time.Second

// open opens the file and tells which one it was.
func open(path string, o store.Options) (f *File, opened os.FileInfo, err error) {
	f = &File{path: path, turn: make(chan struct{}, 1)}
	f.turn <- struct{}{}
	err = guard(path, func() (err error) {
		f.db, err = bbolt.Open(path, files.Private, &bbolt.Options{
			Timeout:  o.Timeout,
			ReadOnly: o.ReadOnly,
			OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
				file, err := openWhole(name, flag&^os.O_CREATE, mode)
				if err == nil {
					opened, err = file.Stat()
				}
				return file, err
			},
			FreelistType: bbolt.FreelistMapType,
		})
		return err
	})
	return f, opened, err
}

// inWords says why a file can't be opened.
func inWords(path string, o store.Options, err error) error {
	switch {
	case errors.Is(err, bberrors.ErrTimeout):
		return words.Errorf("%s is %w; close that, or wait until it is done, and try again (waited %s)",
			path, store.ErrInUse, o.Patience())
	case errors.Is(err, bberrors.ErrInvalid), errors.Is(err, bberrors.ErrVersionMismatch), errors.Is(err, bberrors.ErrChecksum):
		return store.Damaged{Name: path, What: words.Sayf("its beginning can't be read")}
	}
	return err
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

// guard runs work on the file and turns what bbolt does on damaged pages, a panic or a
// memory fault, into an error. What bbolt says then is for programmers only.
func guard(path string, work func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if cause := recover(); cause != nil {
			err = store.Damaged{Name: path, What: words.Sayf("its pages don't hang together")}
		}
	}()
	return work()
}
