package bank

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"sync"
	"time"

	"go.etcd.io/bbolt"
	bberrors "go.etcd.io/bbolt/errors"
)

// Bank is an open bank file. Close it soon: while it is open, other programs wait.
type Bank struct {
	path string
	db   *bbolt.DB

	making  sync.Mutex // guards entropy
	entropy io.Reader
}

// Options say how to open a bank.
type Options struct {
	Timeout  time.Duration // how long to wait for another program; 0 means 5 s
	ReadOnly bool          // only read: several programs may at once
	Entropy  io.Reader     // the random part of new IDs; nil means the system's. A seeded one makes a demonstration repeatable
}

// The buckets of the file; see the package comment.
var (
	aboutBucket       = []byte("about")
	itemsBucket       = []byte("items")
	revisionsBucket   = []byte("revisions")
	usesBucket        = []byte("uses")
	fingerprintBucket = []byte("fingerprints")
	groupsBucket      = []byte("groups")
	groupMembers      = []byte("group members")
	originsBucket     = []byte("origins")
	originMembers     = []byte("origin members")

	dataBuckets = [][]byte{itemsBucket, revisionsBucket, usesBucket, fingerprintBucket,
		groupsBucket, groupMembers, originsBucket, originMembers}
)

// Create makes a new, empty bank, readable by its owner only, and opens it. It
// never touches a file that is already there.
func Create(path string) (*Bank, error) {
	b, err := open(path, Options{}, os.O_CREATE|os.O_EXCL)
	if errors.Is(err, os.ErrExist) {
		return nil, fmt.Errorf("%s is there already; use it, or choose another name for the new bank", path)
	}
	if err != nil {
		return nil, err
	}
	if err := b.update(layOut); err != nil {
		return nil, errors.Join(err, b.Close(), os.Remove(path))
	}
	return b, nil
}

// Open opens a bank. A file that is missing, in use, damaged, written by a newer
// program or no bank at all gives an error that says so in one sentence.
func Open(path string, o Options) (*Bank, error) {
	b, err := open(path, o, 0)
	if errors.Is(err, os.ErrNotExist) {
		return nil, fmt.Errorf("there is no bank %s; make one with evenhand init, or name another with --bank", path)
	}
	if err != nil {
		return nil, err
	}
	err = b.view(func(tx *bbolt.Tx) error { return recognise(path, tx) })
	if err == nil && !o.ReadOnly {
		err = b.adopt()
	}
	if err != nil {
		return nil, errors.Join(err, b.Close())
	}
	return b, nil
}

// open opens the store; create is the flags for a new file, or 0 for one that
// must be there and whole.
func open(path string, o Options, create int) (*Bank, error) {
	b := &Bank{path: path, entropy: newEntropy(o.Entropy)}
	timeout := o.Timeout
	if timeout == 0 {
		timeout = 5 * time.Second
	}
	err := guard(path, func() (err error) {
		b.db, err = bbolt.Open(path, 0o600, &bbolt.Options{
			Timeout:  timeout,
			ReadOnly: o.ReadOnly,
			OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
				return openWhole(name, flag&^os.O_CREATE|create, mode)
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
	return b, err
}

// Path is the file's name as it was opened.
func (b *Bank) Path() string { return b.path }

// Close lets other programs use the file.
func (b *Bank) Close() error { return b.db.Close() }

// view reads; several may at once, also while one writes.
func (b *Bank) view(read func(*bbolt.Tx) error) error {
	return guard(b.path, func() error { return b.db.View(read) })
}

// update writes all that it is given or, on an error, nothing.
func (b *Bank) update(write func(*bbolt.Tx) error) error {
	err := guard(b.path, func() error { return b.db.Update(write) })
	if errors.Is(err, bberrors.ErrDatabaseReadOnly) {
		return fmt.Errorf("%s was opened only to read", b.path)
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

// damaged is the one sentence for a bank that can't be trusted any more.
func damaged(path string, cause any) error {
	return fmt.Errorf("%s is damaged (%v); put a backup in its place", path, cause)
}
