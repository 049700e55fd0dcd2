package bank

import (
	"bytes"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"
)

// Get reads an item as it stands.
func (b *Bank) Get(id string) (it Item, err error) {
	key, err := parseID(id)
	if err != nil {
		return it, err
	}
	err = b.view(func(tx *bbolt.Tx) error { return b.get(tx, key, &it) })
	return it, err
}

func (b *Bank) get(tx *bbolt.Tx, id ulid.ULID, it *Item) error {
	record := tx.Bucket(itemsBucket).Get(id[:])
	if record == nil {
		return b.unknown(id.String())
	}
	return b.unsealItem(id[:], record, it)
}

// History lists all revisions of an item, the first one first and the one that
// stands last.
func (b *Bank) History(id string) ([]Item, error) {
	key, err := parseID(id)
	if err != nil {
		return nil, err
	}
	var list []Item
	err = b.view(func(tx *bbolt.Tx) error {
		var it Item
		c := tx.Bucket(revisionsBucket).Cursor()
		for k, record := c.Seek(key[:]); bytes.HasPrefix(k, key[:]); k, record = c.Next() {
			if err := b.unsealItem(k, record, &it); err != nil {
				return err
			}
			list = append(list, it)
		}
		if err := b.get(tx, key, &it); err != nil {
			return err
		}
		list = append(list, it)
		return nil
	})
	return list, err
}
