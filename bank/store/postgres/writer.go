package postgres

import (
	"errors"
	"fmt"
	"iter"
	"maps"
	"math"
	"slices"

	"github.com/jackc/pgx/v5"

	"evenhand/bank/store"
)

// writer is a store.Writer. It gathers what is to be written and sends it when there is
// much of it, when a scan must see it, and at the end.
type writer struct {
	reader
	tx      pgx.Tx
	buckets map[string]*bucket // those that are there
	added   []*bucket          // those of them that this transaction made
	moved   map[*bucket]bool   // those whose sequence went on
	pending map[int16]*pending // what is gathered, by bucket
	size    int                // of it in bytes, about
	sent    changes            // the new entries that were sent last
	there   map[spot]bool      // entries that were read or sent
	met     bool               // an entry that was there and not known to be
	changed map[string][]byte  // by the name of a bucket: one of the keys that were put or deleted
}

// spot is the place of an entry.
type spot struct {
	bucket int16
	key    string
}

// gathered is how many bytes are gathered at most.
const gathered = 8 << 20

// begin locks the bank and reads its buckets, which is one question to the server.
func (w *writer) begin() error {
	var batch pgx.Batch
	batch.Queue(w.store.sql.lock, w.store.number)
	batch.Queue(w.store.sql.buckets, w.store.number)
	answers := w.tx.SendBatch(w.ctx, &batch)
	defer answers.Close()
	tag, err := answers.Exec()
	if err != nil {
		return err
	}
	if tag.RowsAffected() == 0 {
		return asked(fmt.Errorf("%s is no more in the database", w.store.Name()))
	}
	rows, err := answers.Query()
	if err != nil {
		return err
	}
	list, err := pgx.CollectRows(rows, rowOf)
	if err != nil {
		return err
	}
	w.buckets, w.moved = map[string]*bucket{}, map[*bucket]bool{}
	for i := range list {
		w.buckets[list[i].name] = &list[i]
	}
	w.store.known.learn(list)
	return answers.Close()
}

// made is the bucket of a name, a new one if there is none.
func (w *writer) made(name string) (*bucket, error) {
	if b := w.buckets[name]; b != nil {
		return b, nil
	}
	if name == "" {
		return nil, store.CheckEntry(name, nil, nil)
	}
	if len(w.buckets) == math.MaxInt16 {
		return nil, errors.New("a store can't have more buckets")
	}
	b := &bucket{number: int16(len(w.buckets)), name: name}
	w.buckets[name] = b
	w.added = append(w.added, b)
	return b, nil
}

func (w *writer) Buckets() ([]string, error) {
	return slices.Sorted(maps.Keys(w.buckets)), nil
}

func (w *writer) Sequence(name string) (uint64, error) {
	if b := w.buckets[name]; b != nil {
		return b.sequence, nil
	}
	return 0, nil
}

func (w *writer) Make(name string) error {
	_, err := w.made(name)
	return err
}

func (w *writer) Put(name string, key, value []byte) error {
	if err := store.CheckEntry(name, key, value); err != nil {
		return err
	}
	b, err := w.made(name)
	if err != nil {
		return err
	}
	return w.change(b, key, append([]byte{}, value...))
}

func (w *writer) Delete(name string, key []byte) error {
	if b := w.buckets[name]; b != nil && len(key) > 0 {
		return w.change(b, key, nil)
	}
	return nil
}

func (w *writer) change(b *bucket, key, value []byte) error {
	if w.changed[b.name] == nil {
		w.changed[b.name] = append([]byte{}, key...)
	}
	changes := w.pending[b.number]
	if changes == nil {
		changes = &pending{at: map[string]int{}}
		w.pending[b.number] = changes
	}
	changes.set(string(key), value)
	if w.size += len(key) + len(value) + 16; w.size < gathered {
		return nil
	}
	if err := w.send(); err != nil {
		return err
	}
	w.remember()
	return nil
}

func (w *writer) Next(name string, n uint64) (uint64, error) {
	b, err := w.made(name)
	if err != nil {
		return 0, err
	}
	if b.sequence+n < n {
		return 0, errors.New("the numbers of a sequence are used up")
	}
	b.sequence += n
	w.moved[b] = true
	return b.sequence, nil
}

func (w *writer) Get(name string, key []byte) ([]byte, error) {
	values, err := w.GetAll(name, [][]byte{key})
	if err != nil {
		return nil, err
	}
	return values[0], nil
}

// GetAll asks the server for what isn't gathered here.
func (w *writer) GetAll(name string, keys [][]byte) ([][]byte, error) {
	values := make([][]byte, len(keys))
	b := w.buckets[name]
	if b == nil {
		return values, nil
	}
	changes := w.pending[b.number]
	ask := keys
	if changes != nil {
		ask = nil
		for _, key := range keys {
			if _, here := changes.get(key); !here {
				ask = append(ask, key)
			}
		}
	}
	found, err := w.fetch(b.number, ask)
	if err != nil {
		return nil, err
	}
	for key := range found {
		w.there[spot{b.number, key}] = true
	}
	for i, key := range keys {
		value, here := changes.get(key)
		if !here {
			value = found[string(key)]
		}
		values[i] = value
	}
	return values, nil
}

// Scan sends what is gathered, so that the server knows it.
func (w *writer) Scan(name string, ranges ...store.Range) iter.Seq2[store.Entry, error] {
	return func(yield func(store.Entry, error) bool) {
		b := w.buckets[name]
		if b == nil {
			return
		}
		if w.pending[b.number] != nil {
			if err := w.send(); err != nil {
				yield(store.Entry{}, err)
				return
			}
			w.remember()
		}
		w.scan(b.number, ranges, yield)
	}
}
