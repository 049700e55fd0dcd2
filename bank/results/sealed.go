package results

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"slices"
	"strconv"

	"evenhand/bank"
	"evenhand/bank/store"
	"evenhand/standards/words"
)

// A record is JSON under a seal (bank.Seal) that covers its bucket, its key and its
// value, so that no byte of it changes unseen. That no record gets lost unseen is seen
// from an account of them all: how many there are and the exclusive or of their seals.

// damage is what is wrong with a file, without its name.
type damage struct{ *words.Told }

func damaged(format string, args ...any) error { return damage{words.Sayf(format, args...)} }

// account is of all records of the file.
type account struct {
	Records int
	Seals   uint32
}

var accountKey = []byte("account")

// take counts a record in or out.
func (a *account) take(sealed []byte, one int) {
	a.Records += one
	a.Seals ^= binary.BigEndian.Uint32(sealed[len(sealed)-4:])
}

func (a account) put(w store.Writer) error {
	return w.Put(aboutBucket, accountKey, bank.Seal(sealKey(aboutBucket, accountKey), a.bytes()))
}

func (a account) bytes() []byte {
	return binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint64(nil, uint64(a.Records)), a.Seals)
}

func readAccount(r store.Reader) (a account, err error) {
	record, err := r.Get(aboutBucket, accountKey)
	if err != nil {
		return a, err
	}
	value, ok := bank.Unseal(sealKey(aboutBucket, accountKey), record)
	if !ok || len(value) != 12 {
		return a, damaged("the account of its records can't be read")
	}
	return account{int(binary.BigEndian.Uint64(value)), binary.BigEndian.Uint32(value[8:])}, nil
}

// sealKey is what a seal covers beside the value.
func sealKey(bucket string, key []byte) []byte { return slices.Concat([]byte(bucket), []byte{0}, key) }

// isSealed says whether the file's records have seals.
func isSealed(r store.Reader) (bool, error) {
	written, err := r.Get(aboutBucket, schemaKey)
	return string(written) != "1", err
}

// put writes a value as JSON.
func put(w store.Writer, bucket string, key []byte, value any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	return replace(w, bucket, key, bank.Seal(sealKey(bucket, key), text))
}

// remove takes a record away.
func remove(w store.Writer, bucket string, key []byte) error { return replace(w, bucket, key, nil) }

// replace puts a sealed record, or none, in the place of what stands under the key.
func replace(w store.Writer, bucket string, key, sealed []byte) error {
	all, err := readAccount(w)
	if err != nil {
		return err
	}
	before, err := w.Get(bucket, key)
	if err != nil {
		return err
	}
	if before != nil {
		if _, err := unsealed(w, bucket, key, before); err != nil {
			return err
		}
		all.take(before, -1)
	}
	if sealed == nil {
		err = w.Delete(bucket, key)
	} else {
		all.take(sealed, 1)
		err = w.Put(bucket, key, sealed)
	}
	if err != nil {
		return err
	}
	return all.put(w)
}

// get reads a value; ok is false when there is none.
func get(r store.Reader, bucket string, key []byte, value any) (ok bool, err error) {
	record, err := r.Get(bucket, key)
	if record == nil || err != nil {
		return false, err
	}
	return true, decode(r, bucket, key, record, value)
}

// decode reads a record.
func decode(r store.Reader, bucket string, key, record []byte, value any) error {
	text, err := unsealed(r, bucket, key, record)
	if err == nil && json.Unmarshal(text, value) != nil {
		err = unreadable(bucket, key)
	}
	return err
}

// unsealed is a record without its seal, which is proved.
func unsealed(r store.Reader, bucket string, key, record []byte) ([]byte, error) {
	if sealed, err := isSealed(r); err != nil || !sealed {
		return record, err
	}
	text, ok := bank.Unseal(sealKey(bucket, key), record)
	if !ok {
		return nil, unreadable(bucket, key)
	}
	return text, nil
}

func unreadable(bucket string, key []byte) error {
	return damaged("a record of its part %q can't be read: %q", bucket, bytes.ReplaceAll(bytes.TrimRight(key, "\x00"), []byte{0}, []byte(" ")))
}

// prove says what is damaged: a record that isn't as it was written, or one that is lost.
func prove(r store.Reader) error {
	if sealed, err := isSealed(r); err != nil || !sealed {
		return err
	}
	want, err := readAccount(r)
	if err != nil {
		return err
	}
	var have account
	err = records(r, func(bucket string, key, record []byte) error {
		_, err := unsealed(r, bucket, key, record)
		if err == nil {
			have.take(record, 1)
		}
		return err
	})
	if err == nil && have != want {
		err = damaged("it holds %d records, but %d were written", have.Records, want.Records)
	}
	return err
}

// records visits every record.
func records(r store.Reader, visit func(bucket string, key, record []byte) error) error {
	for _, bucket := range dataBuckets {
		for e, err := range r.Scan(bucket, store.Range{}) {
			if err != nil {
				return err
			}
			if err := visit(bucket, e.Key, e.Value); err != nil {
				return err
			}
		}
	}
	return nil
}

// adopt seals and counts the records of a file of format 1.
func (s *Store) adopt() error {
	done := true
	err := s.view(func(r store.Reader) (err error) {
		done, err = isSealed(r)
		return err
	})
	if err != nil || done {
		return err
	}
	return s.update(func(w store.Writer) error {
		type record struct {
			bucket    string
			key, text []byte
		}
		var all []record
		err := records(w, func(bucket string, key, text []byte) error {
			if !json.Valid(text) {
				return unreadable(bucket, key)
			}
			all = append(all, record{bucket, key, text})
			return nil
		})
		if err != nil {
			return err
		}
		var sum account
		for _, r := range all {
			sealed := bank.Seal(sealKey(r.bucket, r.key), r.text)
			sum.take(sealed, 1)
			if err := w.Put(r.bucket, r.key, sealed); err != nil {
				return err
			}
		}
		if err := sum.put(w); err != nil {
			return err
		}
		return w.Put(aboutBucket, schemaKey, strconv.AppendInt(nil, schema, 10))
	})
}
