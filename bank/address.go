package bank

import (
	"context"
	"errors"
	"io"
	"time"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
	"evenhand/bank/store/postgres"
	"evenhand/bank/store/remote"
)

// A bank has an address: the name of a file, that of a bank in a database,
// postgres://host/database?bank=alder-hill-2 (see package postgres), or that of a running desk,
// http://127.0.0.1:8080 (see package remote). A file that a running desk has open is reached
// through that desk.

// Options say how to open a bank or the marks beside one.
type Options struct {
	Timeout  time.Duration   // how long to wait for another program or a lost server; 0 means store.DefaultTimeout
	ReadOnly bool            // only read: several programs may at once
	Waiting  func(on string) // told what is waited for, if that takes long; nil means nobody
	Context  context.Context // ends what is being done when it ends; nil means nothing does
	Direct   bool            // open a file itself, also where a running desk has it
	Entropy  io.Reader       // the random part of new IDs; nil means the system's. A seeded one makes a demonstration repeatable
}

func (o Options) context() context.Context {
	if o.Context == nil {
		return context.Background()
	}
	return o.Context
}

func (o Options) store() store.Options {
	return store.Options{Timeout: o.Timeout, ReadOnly: o.ReadOnly, Waiting: o.Waiting}
}

// InDatabase says whether an address is one of a database.
func InDatabase(address string) bool { return postgres.IsAddress(address) }

// AtDesk says whether an address is one of a running desk.
func AtDesk(address string) bool { return remote.IsAddress(address) }

// IsFile says whether an address is the name of a file.
func IsFile(address string) bool { return !InDatabase(address) && !AtDesk(address) }

// OpenStore opens what a bank, or its marks, are kept in. If nothing is there the error
// is fs.ErrNotExist; what else may be wrong is said in one sentence.
func OpenStore(address string, o Options) (store.Store, error) {
	switch {
	case InDatabase(address):
		return postgres.Open(o.context(), address, o.store())
	case AtDesk(address):
		return remote.Open(o.context(), address, o.store())
	case o.Direct:
		return opened(bolt.Open(address, o.store()))
	}
	if s, err := remote.OpenBeside(o.context(), address, o.store()); s != nil || err != nil {
		return s, err
	}
	first := o.store()
	if first.Patience() > 2*aMoment {
		first.Timeout = aMoment
	}
	f, err := bolt.Open(address, first)
	if err == nil && !o.ReadOnly {
		err = remote.Forget(address) // what a killed desk left: this program has the file now
	}
	if !errors.Is(err, store.ErrInUse) || first.Timeout == o.Timeout {
		return opened(f, err)
	}
	// It may be a desk that was just being opened.
	if s, err := remote.OpenBeside(o.context(), address, o.store()); s != nil || err != nil {
		return s, err
	}
	return opened(bolt.Open(address, o.store()))
}

// aMoment is how long a desk takes to open.
const aMoment = time.Second

// opened is a file that was opened, or no store at all.
func opened(f *bolt.File, err error) (store.Store, error) {
	if err != nil {
		return nil, err
	}
	return f, nil
}

// NewStore makes a store that layOut fills, whole or not at all. If there is one already
// the error is fs.ErrExist.
func NewStore(address string, o Options, layOut func(store.Writer) error) error {
	switch {
	case InDatabase(address):
		return postgres.Create(o.context(), address, o.store(), layOut)
	case AtDesk(address):
		return remote.Create(o.context(), address, o.store(), layOut)
	}
	return bolt.Create(address, layOut)
}
