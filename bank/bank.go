package bank

import (
	"errors"
	"fmt"
	"io"
	"io/fs"

	"go.etcd.io/bbolt"
)

// Bank is an open bank file. Close it soon: while it is open, other programs wait.
type Bank struct {
	file    *File
	entropy io.Reader // read in writing transactions only, of which there is one at a time
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
	err := NewFile(path, layOut)
	if errors.Is(err, fs.ErrExist) {
		return nil, fmt.Errorf("%s is there already; use it, or choose another name for the new bank", path)
	}
	if err != nil {
		return nil, err
	}
	return Open(path, Options{})
}

// Open opens a bank. A file that is missing, in use, damaged, written by a newer
// program or no bank at all gives an error that says so in one sentence.
func Open(path string, o Options) (*Bank, error) {
	file, err := OpenFile(path, o)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("there is no bank %s; make one with evenhand init, or name another with --bank", path)
	}
	if err != nil {
		return nil, err
	}
	err = file.View(func(tx *bbolt.Tx) error { return recognise(path, tx) })
	if err == nil && !o.ReadOnly {
		err = adopt(file)
	}
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return &Bank{file: file, entropy: newEntropy(o.Entropy)}, nil
}

// Path is the file's name as it was opened.
func (b *Bank) Path() string { return b.file.Path() }

// Close lets other programs use the file.
func (b *Bank) Close() error { return b.file.Close() }

func (b *Bank) view(read func(*bbolt.Tx) error) error { return b.file.View(read) }

func (b *Bank) update(write func(*bbolt.Tx) error) error { return b.file.Update(write) }
