// Package store says what a bank and its marks ask of the place that keeps them:
// named buckets of ordered keys, read as of one moment and written all or nothing.
//
// There are three makers of it, bolt (one file), postgres (a database for many banks) and
// remote (a running desk), and one suite of laws that all must pass (storetest). What is said here
// is all that may be relied on; how entries are kept is the maker's own affair.
//
//	err := s.Update(ctx, func(w store.Writer) error {
//		return w.Put("items", key, value)
//	})
//	err = s.View(ctx, func(r store.Reader) error {
//		for e, err := range r.Scan("items", store.Prefix(key)) { ... }
//	})
//
// # What all makers promise
//
// Keys are compared byte by byte. A View sees the store as it stood at one moment, when it
// began or when it asked its first question, whatever is written meanwhile. It is to be short and must not wait for an Update, as
// an Update may have to wait for open Views (a file that must grow does). An Update is written whole
// or not at all, and when it returns nil its entries outlive a crash of the program
// and of the machine. Updates of one store take turns, those of other programs too,
// so that each builds on what the one before has written.
//
// The function that is given to View or Update may be called more than once, when a
// connection is lost or a server asks for another try: it must begin anew each time
// and touch nothing outside but what it sets anew.
//
// When an Update returns an error nothing of it was written, with one exception: an
// error that is ErrUnsure says that it can't be known.
package store

import (
	"context"
	"evenhand/standards/words"
	"io"
	"iter"
)

// Store is an open store. Several goroutines may use it at once.
type Store interface {
	// Name is the store's address as people may see it: it never holds a password.
	Name() string

	// View reads as of one moment.
	View(ctx context.Context, read func(Reader) error) error

	// Update writes all that write puts and deletes, or on an error nothing. Inside,
	// the Writer reads what it has written.
	Update(ctx context.Context, write func(Writer) error) error

	// Inspect looks for damage below the entries, in the pages of a file, and says in
	// plain words what it found. An error means that it could not be finished.
	Inspect(ctx context.Context) (problems []*words.Told, err error)

	// Backup writes a copy as of one moment, a file that bolt.Open reads, and returns
	// its length in bytes.
	Backup(ctx context.Context, to io.Writer) (size int64, err error)

	// Close ends the use of the store; nothing may be using it any more.
	Close() error
}

// Rewriter is a store that can be written anew, so that nothing of what was deleted is
// left in it. That closes it. A database leaves this to its server.
type Rewriter interface{ Rewrite() error }

// Watcher is a store that tells of what others write to it.
type Watcher interface {
	// Watch tells of each write of others while it happens, by the buckets that it changed, with one of the keys,
	// until the context ends. What is written while the way to the store is lost isn't told.
	Watch(ctx context.Context, told func(changed map[string][]byte))
}

// Reader reads within a View or an Update. The keys and values that it gives are the
// store's own: they must not be changed, and are valid until the transaction ends.
type Reader interface {
	// Buckets lists the buckets in order.
	Buckets() ([]string, error)

	// Get is the value of a key: nil if the key isn't there, and not nil if it is. A
	// bucket that isn't there is read as an empty one.
	Get(bucket string, key []byte) ([]byte, error)

	// GetAll is the values of many keys, for a network the price of one. It is
	// fastest for keys in order.
	GetAll(bucket string, keys [][]byte) ([][]byte, error)

	// Scan gives the entries of the ranges, one range after the other. In an Update
	// the loop may write to the same bucket: each entry that it does not touch is
	// still given once and in its place, while one that was put or deleted since the
	// scan began may be given or not.
	Scan(bucket string, ranges ...Range) iter.Seq2[Entry, error]

	// Sequence is the number that Next last gave out, or 0.
	Sequence(bucket string) (uint64, error)
}

// Writer reads and writes within an Update. It copies the keys and values that it
// is given.
type Writer interface {
	Reader

	// Make makes a bucket, so that it is there though nothing is in it. Put and Next
	// make theirs by themselves.
	Make(bucket string) error

	// Put keeps a value under a key of 1 to MaxKey bytes, in the place of the one that
	// was there. A value may be empty and has at most MaxValue bytes.
	Put(bucket string, key, value []byte) error

	// Delete takes a key away; it need not be there.
	Delete(bucket string, key []byte) error

	// Next takes the next n numbers of the bucket's sequence and returns the last of
	// them. The first ever is 1. No number is given twice, and an Update that fails
	// leaves no gap.
	Next(bucket string, n uint64) (last uint64, err error)
}

// Entry is a key and its value.
type Entry struct{ Key, Value []byte }

// Range is the keys from From, which is in it, to To, which is not. A nil one is open.
type Range struct {
	From, To []byte
	Backward bool // the highest keys first
	Limit    int  // at most so many entries; 0 means all
}

// Prefix is the range of the keys that begin with the prefix.
func Prefix(prefix []byte) Range { return Range{From: prefix, To: After(prefix)} }

// After is the first key behind all that begin with the prefix; nil if there is none.
func After(prefix []byte) []byte {
	for end := len(prefix); end > 0; end-- {
		if prefix[end-1] < 0xFF {
			after := append([]byte(nil), prefix[:end]...)
			after[end-1]++
			return after
		}
	}
	return nil
}
