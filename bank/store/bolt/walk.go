package bolt

import (
	"bytes"

	"go.etcd.io/bbolt"

	"evenhand/bank/store"
)

// walk goes through the keys of a range with a cursor.
type walk struct {
	store.Range
	c *bbolt.Cursor
}

// first is the entry at which the range begins, if it has any.
func (w walk) first() (key, value []byte) {
	switch {
	case !w.Backward:
		return w.c.Seek(w.From)
	case w.To == nil:
		return w.c.Last()
	}
	return w.before(w.To)
}

// before is the last entry below a key.
func (w walk) before(key []byte) (k, v []byte) {
	if k, _ = w.c.Seek(key); k == nil {
		return w.c.Last()
	}
	return w.c.Prev()
}

func (w walk) next() (key, value []byte) {
	if w.Backward {
		return w.c.Prev()
	}
	return w.c.Next()
}

// beyond is the entry that comes after a key, which may be gone: it is looked for
// anew, as a cursor loses its place when something is written.
func (w walk) beyond(key []byte) (k, v []byte) {
	if w.Backward {
		return w.before(key)
	}
	if k, v = w.c.Seek(key); bytes.Equal(k, key) {
		return w.c.Next()
	}
	return k, v
}

// within says whether a key, reached in order, is still in the range.
func (w walk) within(key []byte) bool {
	if w.Backward {
		return bytes.Compare(key, w.From) >= 0
	}
	return w.To == nil || bytes.Compare(key, w.To) < 0
}
