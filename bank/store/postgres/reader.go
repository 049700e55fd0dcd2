package postgres

import (
	"bytes"
	"context"
	"iter"
	"slices"

	"github.com/jackc/pgx/v5"

	"evenhand/bank/store"
)

// reader is a store.Reader.
type reader struct {
	ctx    context.Context
	store  *Store
	tx     asker
	failed error // the first fault, not of the caller's making, after which nothing can be read
}

// asker is a transaction, as far as reading needs it.
type asker interface {
	Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error)
}

// fail notes a fault and hands it on.
func (r *reader) fail(err error) error {
	if err != nil && r.failed == nil {
		r.failed = err
	}
	return err
}

func (r *reader) list() ([]bucket, error) {
	rows, err := r.tx.Query(r.ctx, r.store.sql.buckets, r.store.number)
	if err != nil {
		return nil, r.fail(err)
	}
	list, err := pgx.CollectRows(rows, rowOf)
	return list, r.fail(err)
}

func (r *reader) Buckets() ([]string, error) {
	list, err := r.list()
	return namesOf(list), err
}

func namesOf(list []bucket) (names []string) {
	for _, b := range list {
		names = append(names, b.name)
	}
	slices.Sort(names)
	return names
}

func (r *reader) Sequence(name string) (uint64, error) {
	list, err := r.list()
	for _, b := range list {
		if b.name == name {
			return b.sequence, nil
		}
	}
	return 0, err
}

// number is that of a bucket; there is false where there is no such bucket.
func (r *reader) number(name string) (number int16, there bool, err error) {
	if number, known := r.store.known.number(name); known {
		return number, true, nil
	}
	list, err := r.list()
	if err != nil {
		return 0, false, err
	}
	r.store.known.learn(list)
	number, there = r.store.known.number(name)
	return number, there, nil
}

func (r *reader) Get(name string, key []byte) ([]byte, error) {
	values, err := r.GetAll(name, [][]byte{key})
	if err != nil {
		return nil, err
	}
	return values[0], nil
}

func (r *reader) GetAll(name string, keys [][]byte) ([][]byte, error) {
	values := make([][]byte, len(keys))
	number, there, err := r.number(name)
	if err != nil || !there {
		return values, err
	}
	found, err := r.fetch(number, keys)
	for i, key := range keys {
		values[i] = found[string(key)]
	}
	return values, err
}

// fetch reads the values of those of the keys that are there.
func (r *reader) fetch(bucket int16, keys [][]byte) (map[string][]byte, error) {
	if len(keys) == 0 {
		return nil, nil
	}
	rows, err := r.tx.Query(r.ctx, r.store.sql.getAll, r.store.number, bucket, keys)
	if err != nil {
		return nil, r.fail(err)
	}
	defer rows.Close()
	found := make(map[string][]byte, len(keys))
	for rows.Next() {
		var key, value []byte
		if err := rows.Scan(&key, &value); err != nil {
			return nil, r.fail(err)
		}
		found[string(key)] = value
	}
	return found, r.fail(rows.Err())
}

func (r *reader) Scan(name string, ranges ...store.Range) iter.Seq2[store.Entry, error] {
	return func(yield func(store.Entry, error) bool) {
		number, there, err := r.number(name)
		if err != nil {
			yield(store.Entry{}, err)
		}
		if err == nil && there {
			r.scan(number, ranges, yield)
		}
	}
}

func (r *reader) scan(bucket int16, ranges []store.Range, yield func(store.Entry, error) bool) {
	s := scan{reader: r, bucket: bucket, yield: yield}
	for len(ranges) > 0 && !s.over {
		n := asOne(ranges)
		if n > 1 {
			s.many(ranges[:n])
		} else {
			s.one(ranges[0])
		}
		ranges = ranges[n:]
	}
}

// highest is above every key.
var highest = bytes.Repeat([]byte{0xFF}, store.MaxKey+1)

// bounds are those of a range as statements want them: neither is open.
func bounds(r store.Range) (lowest, above []byte) {
	lowest, above = r.From, r.To
	if lowest == nil {
		lowest = []byte{}
	}
	if above == nil {
		above = highest
	}
	return lowest, above
}
