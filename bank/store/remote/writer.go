package remote

import (
	"maps"
	"slices"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// writer gathers what is to be sent. It is a store.Writer.
type writer struct{ *store.Draft }

func newWriter(base store.Reader) writer { return writer{store.NewDraft(base)} }

// written is all that was gathered, in order.
func (w writer) written() write {
	id := ulid.Make()
	made, pending, taken := w.Gathered()
	sent := write{ID: id[:], Make: made}
	for _, bucket := range slices.Sorted(maps.Keys(pending)) {
		put, gone := changed{Bucket: bucket}, changed{Bucket: bucket}
		for _, key := range slices.Sorted(maps.Keys(pending[bucket])) {
			if value := pending[bucket][key]; value != nil {
				put.Entries = append(put.Entries, entry{[]byte(key), value})
			} else {
				gone.Entries = append(gone.Entries, entry{Key: []byte(key)})
			}
		}
		if put.Entries != nil {
			sent.Put = append(sent.Put, put)
		}
		if gone.Entries != nil {
			sent.Delete = append(sent.Delete, gone)
		}
	}
	for _, bucket := range slices.Sorted(maps.Keys(taken)) {
		sent.Next = append(sent.Next, next{bucket, taken[bucket]})
	}
	return sent
}

// empty says that there is nothing to keep.
func (w write) empty() bool { return len(w.Make)+len(w.Put)+len(w.Delete)+len(w.Next) == 0 }
