package bank

import (
	"iter"

	"go.etcd.io/bbolt"
)

const pageEntries = 256

// pages gives a long list in pages, each read in a transaction of its own, so that
// none is open while the caller works with what it got. read fills the page, at
// most to its capacity, beginning at the key from, and returns the key to go on at, nil at the end.
func pages[T any](b *Bank, from []byte, read func(tx *bbolt.Tx, from []byte, page *[]T) (next []byte, err error)) iter.Seq2[T, error] {
	return func(yield func(T, error) bool) {
		page := make([]T, 0, pageEntries)
		for next := from; ; {
			page = page[:0]
			err := b.view(func(tx *bbolt.Tx) (err error) {
				next, err = read(tx, next, &page)
				return err
			})
			for _, entry := range page {
				if !yield(entry, nil) {
					return
				}
			}
			if err != nil {
				yield(*new(T), err)
			}
			if err != nil || next == nil {
				return
			}
		}
	}
}
