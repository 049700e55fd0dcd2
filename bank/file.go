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

	"evenhand/bank/files"
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

// ErrInUse says that another program has the file open.
var ErrInUse = errors.New("in use by another evenhand command or window")

// OpenFile opens a file that is there. What is wrong with it is said in one sentence.
func OpenFile(path string, o Options) (*File, error) {
	if o.Timeout == 0 {
		o.Timeout = 5 * time.Second
	}
	for {
		f, opened, err := openFile(path, o)
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

// openFile opens the file and tells which one it was.
func openFile(path string, o Options) (f *File, opened os.FileInfo, err error) {
	f = &File{path: path}
	err = guard(path, func() (err error) {
		f.db, err = bbolt.Open(path, 0o600, &bbolt.Options{
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
func inWords(path string, o Options, err error) error {
	switch {
	case errors.Is(err, bberrors.ErrTimeout):
		return fmt.Errorf("%s is %w; close that, or wait until it is done, and try again (waited %s)", path, ErrInUse, o.Timeout)
	case errors.Is(err, bberrors.ErrInvalid) || errors.Is(err, bberrors.ErrVersionMismatch) || errors.Is(err, bberrors.ErrChecksum):
		return damaged(path, "its beginning can't be read")
	}
	return err
}

// NewFile makes a file that only its owner can read and that layOut fills. It appears
// under its name with that in it or not at all, and never takes the place of another,
// however many programs make it at once: the error is then fs.ErrExist.
func NewFile(path string, layOut func(*bbolt.Tx) error) error {
	temp := files.TempName(path)
	db, err := bbolt.Open(temp, files.Private, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	if err != nil {
		return err
	}
	if err := errors.Join(db.Update(layOut), db.Close()); err != nil {
		return errors.Join(err, os.Remove(temp))
	}
	return files.Place(temp, path)
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
// panic or a memory fault, into an error. What it says then is for programmers only.
func guard(path string, work func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if cause := recover(); cause != nil {
			err = damaged(path, "its pages don't hang together")
		}
	}()
	return work()
}

// Damaged is a file that can't be trusted any more, and what to do.
type Damaged struct{ Path, What string }

func (d Damaged) Error() string {
	return fmt.Sprintf("%s is damaged (%s); put a backup in its place with evenhand restore BACKUP", d.Path, d.What)
}

func damaged(path, what string) error { return Damaged{path, what} }
