package bank

import (
	"bytes"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Two items of one bank ask the same only after banks were merged, or after a catalogue
// sees as the same what an earlier one did not. The one with the lowest ID is found by what
// it asks; the others are doubles until a person retires or changes one.

const doublesBucket = "doubles"

func doubleKey(print []byte, id ulid.ULID) []byte { return append(bytes.Clone(print), id[:]...) }

// claim notes that the item asks what the print stands for.
func claim(w store.Writer, print []byte, id ulid.ULID) error {
	here, err := w.Get(fingerprintBucket, print)
	if err != nil {
		return err
	}
	if here == nil || bytes.Equal(here, id[:]) {
		return w.Put(fingerprintBucket, print, id[:])
	}
	first, second := ulid.ULID(here), id
	if second.Compare(first) < 0 {
		first, second = second, first
	}
	if err := w.Put(fingerprintBucket, print, first[:]); err != nil {
		return err
	}
	if err := w.Delete(doublesBucket, doubleKey(print, first)); err != nil {
		return err
	}
	return w.Put(doublesBucket, doubleKey(print, second), []byte{})
}

// release notes that it asks that no more; a double takes its place.
func release(w store.Writer, print []byte, id ulid.ULID) error {
	here, err := w.Get(fingerprintBucket, print)
	if err != nil {
		return err
	}
	if !bytes.Equal(here, id[:]) {
		return w.Delete(doublesBucket, doubleKey(print, id))
	}
	for e, err := range w.Scan(doublesBucket, store.Prefix(print)) {
		if err != nil {
			return err
		}
		next := ulid.ULID(e.Key[len(print):])
		if err := w.Delete(doublesBucket, doubleKey(print, next)); err != nil {
			return err
		}
		return w.Put(fingerprintBucket, print, next[:])
	}
	return w.Delete(fingerprintBucket, print)
}
