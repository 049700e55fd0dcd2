package bank

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"time"

	"go.etcd.io/bbolt"
	bberrors "go.etcd.io/bbolt/errors"
)

// File is an open bbolt file, handled with the care that a bank needs: never waited
// for without end, never mapped when it is cut short, and damage is an error, not a
// crash. What stands beside a bank uses it, too.
type File struct {
	path string
	db   *bbolt.DB
}

// Options say how to open a bank or a file beside one.
type Options struct {
	Timeout  time.Duration // how long to wait for another program; 0 means 5 s
	ReadOnly bool          // only read: several programs may at once
	Entropy  io.Reader     // the random part of new IDs; nil means the system's. A seeded one makes a demonstration repeatable
}

// OpenFile opens a file that is there or, with create, makes one that is not,
// readable by its owner only. What is wrong with it is said in one sentence.
func OpenFile(path string, o Options, create bool) (*File, error) {
	flags := 0
	if create {
		flags = os.O_CREATE | os.O_EXCL
	}
	timeout := o.Timeout
	if timeout == 0 {
		timeout = 5 * time.Second
	}
	f := &File{path: path}
	err := guard(path, func() (err error) {
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
	if errors.Is(err, bberrors.ErrTimeout) {
		return nil, fmt.Errorf("%s is in use by another evenhand command or window; close that, or wait until it is done, and try again (waited %s)", path, timeout)
	}
	if errors.Is(err, bberrors.ErrInvalid) || errors.Is(err, bberrors.ErrVersionMismatch) || errors.Is(err, bberrors.ErrChecksum) {
		return nil, damaged(path, err)
	}
	return f, err
}

// Path is the file's name as it was opened.
func (f *File) Path() string { return f.path }

// Close lets other programs use the file.
func (f *File) Close() error { return f.db.Close() }

// View reads; several may at once, also while one writes.
func (f *File) View(read func(*bbolt.Tx) error) error {
	return guard(f.path, func() error { return f.db.View(read) })
}

// Update writes all that it is given or, on an error, nothing.
func (f *File) Update(write func(*bbolt.Tx) error) error {
	err := guard(f.path, func() error { return f.db.Update(write) })
	if errors.Is(err, bberrors.ErrDatabaseReadOnly) {
		return fmt.Errorf("%s was opened only to read", f.path)
	}
	return err
}

// guard runs work on the store and turns what bbolt does on damaged pages, a
// panic or a memory fault, into an error.
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
