package postgres

import (
	"maps"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5"
)

// pending is what is gathered of a bucket, in the order in which it came. A nil value stands
// for a key taken away.
type pending struct {
	changes []change
	at      map[string]int // where a key stands
}

type change struct {
	key   string
	value []byte
}

func (p *pending) set(key string, value []byte) {
	if i, here := p.at[key]; here {
		p.changes[i].value = value
		return
	}
	p.at[key] = len(p.changes)
	p.changes = append(p.changes, change{key, value})
}

func (p *pending) get(key []byte) (value []byte, here bool) {
	if p == nil {
		return nil, false
	}
	i, here := p.at[string(key)]
	if here {
		value = p.changes[i].value
	}
	return value, here
}

// sorted is what is gathered, in the order of the keys. Nothing can be found any more after it.
func (p *pending) sorted() []change {
	slices.SortFunc(p.changes, func(a, b change) int { return strings.Compare(a.key, b.key) })
	return p.changes
}

// changes are entries as a statement takes them: in columns.
type changes struct {
	buckets      []int16
	keys, values [][]byte
}

func (c *changes) add(bucket int16, one change) {
	c.buckets, c.keys, c.values = append(c.buckets, bucket), append(c.keys, []byte(one.key)), append(c.values, one.value)
}

// send writes what is gathered, in the order of the keys, as that is quickest for the server.
func (w *writer) send() error {
	var gone, put, fresh changes
	for _, number := range slices.Sorted(maps.Keys(w.pending)) {
		for _, one := range w.pending[number].sorted() {
			switch {
			case one.value == nil:
				gone.add(number, one)
			case w.there[spot{number, one.key}]:
				put.add(number, one)
			default:
				fresh.add(number, one)
			}
		}
	}
	clear(w.pending)
	w.size, w.sent = 0, fresh
	if len(fresh.keys) < worthCopying || w.met || !w.copied(fresh) {
		put.buckets = append(put.buckets, fresh.buckets...)
		put.keys = append(put.keys, fresh.keys...)
		put.values = append(put.values, fresh.values...)
	}
	if w.failed != nil {
		return w.failed
	}
	var batch pgx.Batch
	if len(gone.keys) > 0 {
		batch.Queue(w.store.sql.erase, w.store.number, gone.buckets, gone.keys)
	}
	if len(put.keys) > 0 {
		batch.Queue(w.store.sql.put, w.store.number, put.buckets, put.keys, put.values)
	}
	if batch.Len() == 0 {
		return nil
	}
	return w.fail(w.tx.SendBatch(w.ctx, &batch).Close())
}

// remember notes that what was sent is there, for a transaction that goes on.
func (w *writer) remember() {
	for i, key := range w.sent.keys {
		w.there[spot{w.sent.buckets[i], string(key)}] = true
	}
	w.sent = changes{}
}

// worthCopying is from how many entries on COPY, which takes several questions, is quicker.
const worthCopying = 1000

// copied writes entries by COPY, which is quickest but can only bring new ones: when it meets
// one that is there it says false, nothing of it is written, and it isn't tried again.
func (w *writer) copied(c changes) bool {
	tx, err := w.tx.Begin(w.ctx) // a savepoint
	if err != nil {
		w.fail(err)
		return false
	}
	next := 0
	rows := pgx.CopyFromFunc(func() ([]any, error) {
		if next == len(c.keys) {
			return nil, nil
		}
		next++
		return []any{w.store.number, c.buckets[next-1], c.keys[next-1], c.values[next-1]}, nil
	})
	_, err = tx.CopyFrom(w.ctx, pgx.Identifier{w.store.schema, "entries"}, []string{"bank", "bucket", "key", "value"}, rows)
	if hasCode(err, uniqueViolation) {
		w.met = true
		w.fail(tx.Rollback(w.ctx))
		return false
	}
	if err == nil {
		err = tx.Commit(w.ctx)
	}
	return w.fail(err) == nil
}

// finish writes all that is left, and the number of the write, by which settle knows it.
func (w *writer) finish() error {
	if err := w.send(); err != nil {
		return err
	}
	s := w.store
	var batch pgx.Batch
	for _, b := range w.added {
		batch.Queue(s.sql.newBucket, s.number, b.number, b.name, int64(b.sequence))
		delete(w.moved, b)
	}
	for b := range w.moved {
		batch.Queue(s.sql.moved, s.number, b.number, int64(b.sequence))
	}
	batch.Queue(s.sql.wrote, s.number, s.writer[:], s.writes)
	news, err := w.news()
	if err != nil {
		return err
	}
	batch.Queue(s.sql.told, channel, news)
	return w.fail(w.tx.SendBatch(w.ctx, &batch).Close())
}
