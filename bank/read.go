package bank

import (
	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Get reads an item as it stands.
func (b *Bank) Get(id string) (it Item, err error) {
	key, err := parseID(id)
	if err != nil {
		return it, err
	}
	items, err := b.getAll([]ulid.ULID{key})
	if err != nil {
		return it, err
	}
	return items[0], nil
}

// getAll reads items as they stand, by any ID that they were ever known by; all must be there.
func (b *Bank) getAll(ids []ulid.ULID) ([]Item, error) {
	items := make([]Item, len(ids))
	return items, b.view(func(r store.Reader) error {
		ids, err := headsOf(r, ids)
		if err != nil {
			return err
		}
		records, err := recordsOf(r, ids)
		if err != nil {
			return err
		}
		for i, id := range ids {
			if records[i] == nil {
				return b.unknown(id.String())
			}
			if err := b.unsealItem(id[:], records[i], &items[i]); err != nil {
				return err
			}
		}
		return nil
	})
}

// recordsOf reads the records of items, nil for one that isn't there.
func recordsOf(r store.Reader, ids []ulid.ULID) ([][]byte, error) {
	keys := make([][]byte, len(ids))
	for i := range ids {
		keys[i] = ids[i][:]
	}
	return r.GetAll(itemsBucket, keys)
}

// History lists all revisions of an item, the first one first and the one that
// stands last.
func (b *Bank) History(id string) (list []Item, err error) {
	key, err := parseID(id)
	if err != nil {
		return nil, err
	}
	err = b.view(func(r store.Reader) error {
		head, err := headOf(r, key)
		if err != nil {
			return err
		}
		list, err = b.historyOf(r, head)
		return err
	})
	return list, err
}

func (b *Bank) historyOf(r store.Reader, id ulid.ULID) (list []Item, err error) {
	for e, err := range r.Scan(revisionsBucket, store.Prefix(id[:])) {
		if err != nil {
			return nil, err
		}
		var it Item
		if err := b.unsealItem(e.Key, e.Value, &it); err != nil {
			return nil, err
		}
		list = append(list, it)
	}
	record, err := r.Get(itemsBucket, id[:])
	if err != nil {
		return nil, err
	}
	if record == nil {
		return nil, b.unknown(id.String())
	}
	list = append(list, Item{})
	return list, b.unsealItem(id[:], record, &list[len(list)-1])
}
