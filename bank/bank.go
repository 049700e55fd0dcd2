package bank

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// Bank is an open bank. Close it soon: while a file is open, other programs wait.
type Bank struct {
	store   store.Store
	ctx     context.Context
	entropy io.Reader // read in writing transactions only, of which there is one at a time
	groups  knownGroups
}

// The buckets of the store; see the package comment.
const (
	aboutBucket       = "about"
	itemsBucket       = "items"
	revisionsBucket   = "revisions"
	usesBucket        = "uses"
	fingerprintBucket = "fingerprints"
	groupsBucket      = "groups"
	groupMembers      = "group members"
	originsBucket     = "origins"
	originMembers     = "origin members"
)

var dataBuckets = []string{itemsBucket, revisionsBucket, usesBucket, fingerprintBucket,
	groupsBucket, groupMembers, originsBucket, originMembers}

// Create makes a new, empty bank, of which a file can be read by its owner only, and opens
// it. It never touches one that is already there.
func Create(address string) (*Bank, error) {
	if AtDesk(address) {
		return nil, errors.New("a desk has its bank already; make one where it will stand, and open a desk on it with evenhand serve")
	}
	err := NewStore(address, Options{}, layOut)
	if errors.Is(err, fs.ErrExist) {
		return nil, fmt.Errorf("%s is there already; use it, or choose another name for the new bank", address)
	}
	if err != nil {
		return nil, err
	}
	return Open(address, Options{})
}

// Open opens a bank. One that is missing, in use, damaged, written by a newer
// program or no bank at all gives an error that says so in one sentence.
func Open(address string, o Options) (*Bank, error) {
	s, err := OpenStore(address, o)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, words.Errorf("there is no bank %s; make one with evenhand init, or name another with --bank", address)
	}
	if err != nil {
		return nil, err
	}
	b := &Bank{store: s, ctx: o.context(), entropy: newEntropy(o.Entropy)}
	err = b.view(func(r store.Reader) error { return recognise(address, r) })
	if err == nil && !o.ReadOnly {
		err = b.adopt()
	}
	if err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return b, nil
}

// Path is the bank's address as it was opened.
func (b *Bank) Path() string { return b.store.Name() }

// Store is where the bank stands, for those who keep other things beside it, in buckets of their own.
func (b *Bank) Store() store.Store { return b.store }

// Close lets other programs use the file.
func (b *Bank) Close() error { return b.store.Close() }

// view and update call what they are given again if need be: it must begin anew each time.
func (b *Bank) view(read func(store.Reader) error) error { return b.store.View(b.ctx, read) }

func (b *Bank) update(write func(store.Writer) error) error { return b.store.Update(b.ctx, write) }

// damaged is the error for what can't be trusted in the bank.
func (b *Bank) damaged(format string, args ...any) error {
	return store.Damaged{Name: b.Path(), What: words.Sayf(format, args...)}
}
