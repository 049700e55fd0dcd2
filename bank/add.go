package bank

import (
	"bytes"
	"cmp"
	"runtime"
	"slices"
	"sync"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards/words"
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
		return nil, words.Errorf("who adds these items? Give a name")
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

// newItem is an item ready to be added, its key in the index of fingerprints and the name
// of its group.
type newItem struct {
	item         Item
	print, group []byte
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
						errs[part] = words.Errorf("item %d of the list: %w", from+i+1, errs[part])
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
	g := newGroup(&it, usage{})
	return newItem{it, printKey(fingerprint), g.appendName(nil)}, err
}

// addBatch writes one batch.
func (b *Bank) addBatch(now prepared) (added []Added, err error) {
	if now.err != nil {
		return nil, now.err
	}
	return added, b.update(func(tx store.Writer) error {
		w := b.writer(tx)
		if added, err = w.addAll(now.news); err != nil {
			return err
		}
		return w.flush()
	})
}

func (w *writer) addAll(news []newItem) ([]Added, error) {
	known, err := w.known(news)
	if err != nil {
		return nil, err
	}
	if err := w.loadSets(news, known); err != nil {
		return nil, err
	}
	taken, err := w.takenIDs()
	if err != nil {
		return nil, err
	}
	added := make([]Added, len(news))
	for i := range news {
		n := &news[i]
		if before, ok := known[[16]byte(n.print)]; ok {
			added[i] = before
			continue
		}
		id, err := w.bank.newID(n.item.At, taken)
		if err != nil {
			return nil, err
		}
		if err := w.insert(id, &n.item, n.print, n.group); err != nil {
			return nil, err
		}
		added[i] = Added{id.String(), false, n.item.Standing}
		known[[16]byte(n.print)] = Added{id.String(), true, n.item.Standing}
	}
	return added, nil
}

// known finds those of the items, by their prints, that are in the bank.
func (w *writer) known(news []newItem) (map[[16]byte]Added, error) {
	prints := make([][]byte, len(news))
	for i := range news {
		prints[i] = news[i].print
	}
	slices.SortFunc(prints, bytes.Compare)
	here, err := w.GetAll(fingerprintBucket, prints)
	if err != nil {
		return nil, err
	}
	known := make(map[[16]byte]Added, len(news))
	var ids []ulid.ULID
	var of [][16]byte
	for i, id := range here {
		if id != nil {
			ids, of = append(ids, ulid.ULID(id)), append(of, [16]byte(prints[i]))
		}
	}
	records, err := recordsOf(w, ids)
	if err != nil {
		return nil, err
	}
	for i, id := range ids {
		var it Item
		if records[i] == nil {
			return nil, w.bank.unknown(id.String())
		}
		if err := w.bank.unsealItem(id[:], records[i], &it); err != nil {
			return nil, err
		}
		known[of[i]] = Added{it.ID, true, it.Standing}
	}
	return known, nil
}

// loadSets reads the sets that the new ones among the items will be in.
func (w *writer) loadSets(news []newItem, known map[[16]byte]Added) error {
	var groups, origins [][]byte
	for i := range news {
		if _, ok := known[[16]byte(news[i].print)]; !ok {
			groups = append(groups, news[i].group)
			origins = append(origins, originName(news[i].item.Origin))
		}
	}
	if err := w.groups.load(groups); err != nil {
		return err
	}
	return w.origins.load(origins)
}

// takenIDs makes a function that says whether an ID is in the bank.
func (w *writer) takenIDs() (func(ulid.ULID) (bool, error), error) {
	var last []byte
	for e, err := range w.Scan(itemsBucket, store.Range{Backward: true, Limit: 1}) {
		if err != nil {
			return nil, err
		}
		last = e.Key
	}
	return func(id ulid.ULID) (bool, error) {
		if bytes.Compare(id[:], last) > 0 {
			return false, nil
		}
		record, err := w.Get(itemsBucket, id[:])
		return record != nil, err
	}, nil
}

// Has finds the item that asks what the fingerprint stands for.
func (b *Bank) Has(fingerprint string) (id string, ok bool, err error) {
	err = b.view(func(r store.Reader) error {
		here, err := r.Get(fingerprintBucket, printKey(fingerprint))
		if ok = here != nil; ok {
			id = ulid.ULID(here).String()
		}
		return err
	})
	return id, ok, err
}
