package bolt

import (
	"bytes"
	"context"
	"errors"
	"iter"

	"go.etcd.io/bbolt"

	"evenhand/bank/store"
)

// transaction is a store.Writer, or a store.Reader where bbolt's transaction only reads.
type transaction struct {
	ctx     context.Context
	tx      *bbolt.Tx
	buckets map[string]*bucket // those used so far
	writes  int                // so many so far: a scan that sees it grow finds its place again
}

type bucket struct {
	*bbolt.Bucket
	written bool // in this transaction
}

func newTransaction(ctx context.Context, tx *bbolt.Tx) *transaction {
	return &transaction{ctx, tx, map[string]*bucket{}, 0}
}

// bucket is nil where there is none of the name.
func (t *transaction) bucket(name string) *bucket {
	if b := t.buckets[name]; b != nil {
		return b
	}
	found := t.tx.Bucket([]byte(name))
	if found == nil {
		return nil
	}
	t.buckets[name] = &bucket{Bucket: found}
	return t.buckets[name]
}

// made is the bucket, a new one if there is none.
func (t *transaction) made(name string) (*bucket, error) {
	t.writes++
	if b := t.bucket(name); b != nil {
		return b, nil
	}
	if _, err := t.tx.CreateBucket([]byte(name)); err != nil {
		return nil, err
	}
	return t.bucket(name), nil
}

func (t *transaction) Buckets() (names []string, err error) {
	err = t.tx.ForEach(func(name []byte, _ *bbolt.Bucket) error {
		names = append(names, string(name))
		return nil
	})
	return names, err
}

func (t *transaction) Get(name string, key []byte) ([]byte, error) {
	if b := t.bucket(name); b != nil {
		return b.Get(key), t.ctx.Err()
	}
	return nil, t.ctx.Err()
}

// aFewSteps of a cursor are as quick as a search from the root.
const aFewSteps = 8

// GetAll walks from key to key while they come in order.
func (t *transaction) GetAll(name string, keys [][]byte) ([][]byte, error) {
	values := make([][]byte, len(keys))
	b := t.bucket(name)
	if b == nil || len(keys) == 0 {
		return values, t.ctx.Err()
	}
	c := b.Cursor()
	at, value := c.Seek(keys[0])
	for i, key := range keys {
		ordered := i == 0 || bytes.Compare(keys[i-1], key) <= 0
		for step := 0; ordered && step < aFewSteps && at != nil && bytes.Compare(at, key) < 0; step++ {
			at, value = c.Next()
		}
		if !ordered || at != nil && bytes.Compare(at, key) < 0 {
			at, value = c.Seek(key)
		}
		if bytes.Equal(at, key) {
			values[i] = value
		}
	}
	return values, t.ctx.Err()
}

func (t *transaction) Scan(name string, ranges ...store.Range) iter.Seq2[store.Entry, error] {
	return func(yield func(store.Entry, error) bool) {
		if b := t.bucket(name); b != nil {
			c := b.Cursor()
			for _, r := range ranges {
				if !t.scan(walk{r, c}, yield) {
					return
				}
			}
		}
		if err := t.ctx.Err(); err != nil {
			yield(store.Entry{}, err)
		}
	}
}

// scan gives the entries of one range; it says false when no more are wanted.
func (t *transaction) scan(w walk, yield func(store.Entry, error) bool) bool {
	seen := t.writes
	key, value := w.first()
	for n := 0; key != nil && w.within(key) && (w.Limit == 0 || n < w.Limit); n++ {
		if err := t.ctx.Err(); err != nil {
			yield(store.Entry{}, err)
			return false
		}
		if !yield(store.Entry{Key: key, Value: value}, nil) {
			return false
		}
		if t.writes == seen {
			key, value = w.next()
			continue
		}
		seen = t.writes
		key, value = w.beyond(key)
	}
	return true
}

func (t *transaction) Sequence(name string) (uint64, error) {
	if b := t.bucket(name); b != nil {
		return b.Sequence(), nil
	}
	return 0, nil
}

func (t *transaction) Make(name string) error {
	if name == "" {
		return store.CheckEntry(name, nil, nil)
	}
	_, err := t.made(name)
	return err
}

// filled is how full a page gets where keys only grow, as nothing will ever come
// between them.
const filled = 0.95

func (t *transaction) Put(name string, key, value []byte) error {
	if err := store.CheckEntry(name, key, value); err != nil {
		return err
	}
	b, err := t.made(name)
	if err != nil {
		return err
	}
	if !b.written { // keys that begin behind all that are there are taken to grow
		b.written = true
		if last, _ := b.Cursor().Last(); bytes.Compare(key, last) > 0 {
			b.FillPercent = filled
		}
	}
	if value == nil {
		value = []byte{}
	}
	return b.Put(key, value)
}

func (t *transaction) Delete(name string, key []byte) error {
	t.writes++
	if b := t.bucket(name); b != nil {
		return b.Delete(key)
	}
	return nil
}

func (t *transaction) Next(name string, n uint64) (uint64, error) {
	b, err := t.made(name)
	if err != nil {
		return 0, err
	}
	last := b.Sequence() + n
	if last < n {
		return 0, errors.New("the numbers of a sequence are used up")
	}
	return last, b.SetSequence(last)
}
