package bank

import (
	"cmp"
	"iter"

	"evenhand/bank/store"
)

// A list is read in pages, of which the first are small, as many a caller stops soon, and
// later ones larger, as behind a network each page costs a round trip.
const (
	firstPage = 512
	mostPage  = 4096
)

// pages gives a long list in pages, each read in a transaction of its own, so that
// none is open while the caller works with what it got. read gives a page of about so many
// entries, beginning at the key from, and the key to go on at, nil at the end. first is how many
// the first page has; 0 means the usual.
func pages[T any](b *Bank, from []byte, first int, read func(r store.Reader, from []byte, about int) (page []T, next []byte, err error)) iter.Seq2[T, error] {
	return func(yield func(T, error) bool) {
		about := cmp.Or(first, firstPage)
		for next := from; ; {
			var page []T
			begin := next
			err := b.view(func(r store.Reader) (err error) {
				page, next, err = read(r, begin, about)
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
			about = min(2*about, mostPage)
		}
	}
}
