package postgres

import (
	"maps"
	"slices"

	"github.com/jackc/pgx/v5"
)

// changes are entries as a statement takes them: in columns.
type changes struct {
	buckets      []int16
	keys, values [][]byte
}

// send writes what is gathered, in the order of the keys, as that is quickest for the server.
func (w *writer) send() error {
	var put, gone changes
	for _, number := range slices.Sorted(maps.Keys(w.pending)) {
		entries := w.pending[number]
		for _, key := range slices.Sorted(maps.Keys(entries)) {
			to := &put
			if entries[key] == nil {
				to = &gone
			}
			to.buckets = append(to.buckets, number)
			to.keys = append(to.keys, []byte(key))
			to.values = append(to.values, entries[key])
		}
	}
	clear(w.pending)
	w.size = 0
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
	return w.fail(w.tx.SendBatch(w.ctx, &batch).Close())
}
