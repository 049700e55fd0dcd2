package results

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"

	"go.etcd.io/bbolt"

	"evenhand/bank"
)

// A record is JSON under a seal (bank.Seal) that covers its bucket, its key and its
// value, so that no byte of it changes unseen. That no record gets lost unseen is seen
// from an account of them all: how many there are and the exclusive or of their seals.

// damage is what is wrong with a file, without its name.
type damage string

func (d damage) Error() string { return string(d) }

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

func (a account) put(tx *bbolt.Tx) error {
	value := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint64(nil, uint64(a.Records)), a.Seals)
	return tx.Bucket(aboutBucket).Put(accountKey, bank.Seal(sealKey(aboutBucket, accountKey), value))
}

func readAccount(tx *bbolt.Tx) (a account, err error) {
	value, ok := bank.Unseal(sealKey(aboutBucket, accountKey), tx.Bucket(aboutBucket).Get(accountKey))
	if !ok || len(value) != 12 {
		return a, damage("the account of its records can't be read")
	}
	return account{int(binary.BigEndian.Uint64(value)), binary.BigEndian.Uint32(value[8:])}, nil
}

// sealKey is what a seal covers beside the value.
func sealKey(bucket, key []byte) []byte { return slices.Concat(bucket, []byte{0}, key) }

// isSealed says whether the file's records have seals.
func isSealed(tx *bbolt.Tx) bool {
	return string(tx.Bucket(aboutBucket).Get(schemaKey)) != "1"
}

// put writes a value as JSON.
func put(tx *bbolt.Tx, bucket, key []byte, value any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	return replace(tx, bucket, key, bank.Seal(sealKey(bucket, key), text))
}

// remove takes a record away.
func remove(tx *bbolt.Tx, bucket, key []byte) error { return replace(tx, bucket, key, nil) }

// replace puts a sealed record, or none, in the place of what stands under the key.
func replace(tx *bbolt.Tx, bucket, key, sealed []byte) error {
	all, err := readAccount(tx)
	if err != nil {
		return err
	}
	b := tx.Bucket(bucket)
	if before := b.Get(key); before != nil {
		if _, err := unsealed(tx, bucket, key, before); err != nil {
			return err
		}
		all.take(before, -1)
	}
	if sealed == nil {
		err = b.Delete(key)
	} else {
		all.take(sealed, 1)
		err = b.Put(key, sealed)
	}
	if err != nil {
		return err
	}
	return all.put(tx)
}

// get reads a value; ok is false when there is none.
func get(tx *bbolt.Tx, bucket, key []byte, value any) (ok bool, err error) {
	record := tx.Bucket(bucket).Get(key)
	if record == nil {
		return false, nil
	}
	return true, decode(tx, bucket, key, record, value)
}

// decode reads a record.
func decode(tx *bbolt.Tx, bucket, key, record []byte, value any) error {
	text, err := unsealed(tx, bucket, key, record)
	if err == nil && json.Unmarshal(text, value) != nil {
		err = unreadable(bucket, key)
	}
	return err
}

// unsealed is a record without its seal, which is proved.
func unsealed(tx *bbolt.Tx, bucket, key, record []byte) ([]byte, error) {
	if !isSealed(tx) {
		return record, nil
	}
	text, ok := bank.Unseal(sealKey(bucket, key), record)
	if !ok {
		return nil, unreadable(bucket, key)
	}
	return text, nil
}

func unreadable(bucket, key []byte) error {
	return damage(fmt.Sprintf("a record of its part %q can't be read: %q", bucket, bytes.ReplaceAll(bytes.TrimRight(key, "\x00"), []byte{0}, []byte(" "))))
}

// prove says what is damaged: a record that isn't as it was written, or one that is lost.
func prove(tx *bbolt.Tx) error {
	if !isSealed(tx) {
		return nil
	}
	want, err := readAccount(tx)
	if err != nil {
		return err
	}
	var have account
	err = records(tx, func(bucket, key, record []byte) error {
		_, err := unsealed(tx, bucket, key, record)
		if err == nil {
			have.take(record, 1)
		}
		return err
	})
	if err == nil && have != want {
		err = damage(fmt.Sprintf("it holds %d records, but %d were written", have.Records, want.Records))
	}
	return err
}

// records visits every record.
func records(tx *bbolt.Tx, visit func(bucket, key, record []byte) error) error {
	for _, bucket := range dataBuckets {
		err := tx.Bucket(bucket).ForEach(func(key, record []byte) error { return visit(bucket, key, record) })
		if err != nil {
			return err
		}
	}
	return nil
}

// adopt seals and counts the records of a file of format 1.
func (s *Store) adopt() error {
	done := true
	if err := s.view(func(tx *bbolt.Tx) error { done = isSealed(tx); return nil }); err != nil || done {
		return err
	}
	return s.update(func(tx *bbolt.Tx) error {
		type record struct{ bucket, key, text []byte }
		var all []record
		err := records(tx, func(bucket, key, text []byte) error {
			if !json.Valid(text) {
				return unreadable(bucket, key)
			}
			all = append(all, record{bucket, bytes.Clone(key), bytes.Clone(text)})
			return nil
		})
		if err != nil {
			return err
		}
		var sum account
		for _, r := range all {
			sealed := bank.Seal(sealKey(r.bucket, r.key), r.text)
			sum.take(sealed, 1)
			if err := tx.Bucket(r.bucket).Put(r.key, sealed); err != nil {
				return err
			}
		}
		if err := sum.put(tx); err != nil {
			return err
		}
		return tx.Bucket(aboutBucket).Put(schemaKey, strconv.AppendInt(nil, schema, 10))
	})
}
