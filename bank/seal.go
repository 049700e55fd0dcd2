package bank

import (
	"encoding/binary"
	"encoding/json"
	"hash/crc32"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// What can't be computed anew, a name, a reason, a time, is kept under a seal: the
// CRC-32C of key and value, 4 bytes after the value. A byte that a disk or a copy
// has changed is noticed when it is read.

const sealSize = 4

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// Seal appends the sum of a key and its value to the value.
func Seal(key, value []byte) []byte {
	return binary.BigEndian.AppendUint32(value, sum(key, value))
}

// Unseal is the value without its sum; ok is false if that is wrong.
func Unseal(key, sealed []byte) (value []byte, ok bool) {
	if len(sealed) < sealSize {
		return nil, false
	}
	end := len(sealed) - sealSize
	value = sealed[:end:end]
	return value, binary.BigEndian.Uint32(sealed[end:]) == sum(key, value)
}

func sum(key, value []byte) uint32 {
	return crc32.Update(crc32.Checksum(key, castagnoli), castagnoli, value)
}

// unsealJSON reads a value that putSealed wrote.
func unsealJSON(key, sealed []byte, value any) error {
	text, ok := Unseal(key, sealed)
	if !ok || json.Unmarshal(text, value) != nil {
		return errRecord
	}
	return nil
}

func putSealed(w store.Writer, bucket string, key []byte, value any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	return w.Put(bucket, key, Seal(key, text))
}

// sealItem is a revision of an item as it is kept under the key.
func sealItem(key []byte, it *Item) []byte {
	return Seal(key, encode(make([]byte, 0, recordSize), it))
}

// unsealItem reads what sealItem made. The first bytes of the key are the ID.
func (b *Bank) unsealItem(key, sealed []byte, it *Item) error {
	id := ulid.ULID(key[:len(ulid.ULID{})])
	record, ok := Unseal(key, sealed)
	if ok && len(record) > 0 && record[0] > recordFormat {
		return words.Errorf("%s: item %s was written by a newer evenhand; use that one, or bring this one up to date", b.Path(), id)
	}
	if !ok || decode(record, it) != nil {
		return b.damaged("item %s can't be read", id)
	}
	it.ID = id.String()
	return nil
}
