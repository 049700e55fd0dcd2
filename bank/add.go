package bank

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"runtime"
	"sync"
	"time"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"
)

// Added says what became of one item that was given to Add.
type Added struct {
	ID       string   // of the item in the bank
	Existing bool     // the bank had the item before, as it stands in Standing
	Standing Standing // retired ones are known too: an item is not let in twice
}

// batch is how many items are written in one transaction; much larger ones get
// slow in bbolt, much smaller ones wait for the disk too often.
const batch = 10_000

// Add puts items into the bank, and answers for each in the same order. An item
// that asks the same as one in the bank, or as an earlier one of the list, is not
// added again: the answer names the one that is there.
//
// The ID and the revision are given here; what follows from the task is computed
// anew. by is who adds them. Items are written in batches of 10,000, each whole or
// not at all, and each safe on the disk before the next begins. On an error the
// answers so far are returned with it: those items are in the bank, the rest is
// not. Adding all again is safe, as the first ones are then recognised.
func (b *Bank) Add(items []Item, by string, at time.Time) ([]Added, error) {
	if by == "" {
		return nil, errors.New("who adds these items? Give a name")
	}
	table, err := b.Table()
	if err != nil {
		return nil, err
	}
	at = at.UTC().Round(0)
	done := make([]Added, 0, len(items))
	next := prepare(items, 0, table, by, at)
	defer func() { <-next }() // the items are the caller's again only when nobody reads them
	for len(done) < len(items) {
		now := <-next
		next = prepare(items, len(done)+len(now.news), table, by, at)
		added, err := b.addBatch(now)
		if err != nil {
			return done, err
		}
		done = append(done, added...)
	}
	return done, nil
}

// newItem is an item ready to be added, and its key in the index of fingerprints.
type newItem struct {
	item  Item
	print []byte
}

// prepared is a batch of items ready to be added, or what is wrong with one.
type prepared struct {
	news []newItem
	err  error
}

// prepare readies the batch that begins at from, while the one before it is being
// written, on all processors: reading the tasks takes as long as the writing.
func prepare(items []Item, from int, table Table, by string, at time.Time) <-chan prepared {
	ready := make(chan prepared, 1)
	now := items[from:min(from+batch, len(items))]
	go func() {
		news := make([]newItem, len(now))
		errs := make([]error, runtime.GOMAXPROCS(0))
		var parts sync.WaitGroup
		for part := range errs {
			first, end := part*len(now)/len(errs), (part+1)*len(now)/len(errs)
			parts.Go(func() {
				for i := first; i < end && errs[part] == nil; i++ {
					if news[i], errs[part] = newItemOf(now[i], table, by, at); errs[part] != nil {
						errs[part] = fmt.Errorf("item %d of the list: %w", from+i+1, errs[part])
					}
				}
			})
		}
		parts.Wait()
		ready <- prepared{news, cmp.Or(errs...)}
	}()
	return ready
}

func newItemOf(it Item, table Table, by string, at time.Time) (newItem, error) {
	it.Revision, it.By, it.At, it.Reason = 1, by, at, ""
	fingerprint, err := it.settle()
	table.predict(&it)
	return newItem{it, printKey(fingerprint)}, err
}

// addBatch writes one batch.
func (b *Bank) addBatch(now prepared) ([]Added, error) {
	if now.err != nil {
		return nil, now.err
	}
	added := make([]Added, len(now.news))
	return added, b.update(func(tx *bbolt.Tx) error {
		w := b.writer(tx)
		last, _ := w.items.Cursor().Last()
		taken := func(id ulid.ULID) bool {
			return bytes.Compare(id[:], last) <= 0 && w.items.Get(id[:]) != nil
		}
		for i := range now.news {
			var err error
			if added[i], err = w.add(&now.news[i], taken); err != nil {
				return err
			}
		}
		return w.flush()
	})
}

func (w *writer) add(n *newItem, taken func(ulid.ULID) bool) (Added, error) {
	if here := w.fingerprint.Get(n.print); here != nil {
		var it Item
		err := w.get(ulid.ULID(here), &it)
		return Added{it.ID, true, it.Standing}, err
	}
	id, err := w.bank.newID(n.item.At, taken)
	if err != nil {
		return Added{}, err
	}
	return Added{id.String(), false, n.item.Standing}, w.insert(id, &n.item, n.print)
}

// Has finds the item that asks what the fingerprint stands for.
func (b *Bank) Has(fingerprint string) (id string, ok bool, err error) {
	err = b.view(func(tx *bbolt.Tx) error {
		if here := tx.Bucket(fingerprintBucket).Get(printKey(fingerprint)); here != nil {
			id, ok = ulid.ULID(here).String(), true
		}
		return nil
	})
	return id, ok, err
}
