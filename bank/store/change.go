package store

import (
	"bytes"
	"slices"
)

// Change is what a client of a desk wants to write in one Update, in no order.
type Change struct {
	Put    map[string][]Entry // by bucket
	Delete map[string][]Entry // by bucket; without values
	Next   []string           // the buckets whose sequences go on
}

// Putting is the value that the change puts under a key, or nil.
func (c Change) Putting(bucket string, key []byte) []byte { return find(c.Put[bucket], key) }

// Deleting says whether the change takes the key away.
func (c Change) Deleting(bucket string, key []byte) bool { return find(c.Delete[bucket], key) != nil }

// find is the value of a key, not nil where it is among the entries.
func find(entries []Entry, key []byte) []byte {
	at, found := slices.BinarySearchFunc(entries, key, func(e Entry, key []byte) int { return bytes.Compare(e.Key, key) })
	if !found {
		return nil
	}
	return append([]byte{}, entries[at].Value...)
}

// Sort brings the entries into order; Putting and Deleting need it.
func (c Change) Sort() {
	for _, part := range []map[string][]Entry{c.Put, c.Delete} {
		for _, entries := range part {
			slices.SortFunc(entries, func(a, b Entry) int { return bytes.Compare(a.Key, b.Key) })
		}
	}
}
