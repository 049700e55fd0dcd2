package bank

import (
	"context"
	"io"
	"time"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
	"evenhand/bank/store/postgres"
)

// A bank has an address: the name of a file, or that of a bank in a database,
// postgres://host/database?bank=alder-hill-2 (see package postgres).

// Options say how to open a bank or the marks beside one.
type Options struct {
	Timeout  time.Duration   // how long to wait for another program or a lost server; 0 means store.DefaultTimeout
	ReadOnly bool            // only read: several programs may at once
	Waiting  func(on string) // told what is waited for, if that takes long; nil means nobody
	Context  context.Context // ends what is being done when it ends; nil means nothing does
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

// OpenStore opens what a bank, or its marks, are kept in. If nothing is there the error
// is fs.ErrNotExist; what else may be wrong is said in one sentence.
func OpenStore(address string, o Options) (store.Store, error) {
	if InDatabase(address) {
		return postgres.Open(o.context(), address, o.store())
	}
	return bolt.Open(address, o.store())
}

// NewStore makes a store that layOut fills, whole or not at all. If there is one already
// the error is fs.ErrExist.
func NewStore(address string, o Options, layOut func(store.Writer) error) error {
	if InDatabase(address) {
		return postgres.Create(o.context(), address, o.store(), layOut)
	}
	return bolt.Create(address, layOut)
}
