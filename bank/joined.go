package bank

import (
	"encoding/binary"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/lineage"
	"evenhand/bank/store"
)

// After a merge an item may have been known by other IDs, which still name it, and its
// revisions have places that their times alone don't tell.
//
//	joined  other ID: the ID of the item
//	places  ID, revision (4 bytes): the place of the revision (lineage.Entry)
const (
	joinedBucket = "joined"
	placesBucket = "places"
)

// headOf is the item that an ID names now.
func headOf(r store.Reader, id ulid.ULID) (ulid.ULID, error) {
	head, err := r.Get(joinedBucket, id[:])
	if err != nil || head == nil {
		return id, err
	}
	return ulid.ULID(head), nil
}

// headsOf is headOf for many.
func headsOf(r store.Reader, ids []ulid.ULID) ([]ulid.ULID, error) {
	keys := make([][]byte, len(ids))
	for i := range ids {
		keys[i] = ids[i][:]
	}
	found, err := r.GetAll(joinedBucket, keys)
	heads := make([]ulid.ULID, len(ids))
	copy(heads, ids)
	for i, head := range found {
		if head != nil {
			heads[i] = ulid.ULID(head)
		}
	}
	return heads, err
}

type line = lineage.Line[Item]

// lineOf reads an item's history, with the places of its revisions.
func (b *Bank) lineOf(r store.Reader, id ulid.ULID) (line, error) {
	items, err := b.historyOf(r, id)
	if err != nil {
		return nil, err
	}
	l := make(line, len(items))
	for i, it := range items {
		body := it
		body.Revision = 0
		l[i] = lineage.Entry[Item]{
			Value: it, Body: string(encode(nil, &body)), At: it.At.UnixNano(), Born: it.Reason == "",
			Human: i == 0 || it.Reason == "" || saysOther(items[i-1], it),
		}
	}
	for e, err := range r.Scan(placesBucket, store.Prefix(id[:])) {
		if err != nil {
			return nil, err
		}
		i := int(binary.BigEndian.Uint32(e.Key[len(id):])) - 1
		value, ok := Unseal(e.Key, e.Value)
		if !ok || i < 0 || i >= len(l) {
			return nil, b.damaged("the place of a revision of item %s can't be read", id)
		}
		p := reader{raw: value}
		l[i].Place, l[i].Early, l[i].Human, l[i].Apart, l[i].Placed = p.number(), p.flag(), p.flag(), p.flag(), true
		if p.end() != nil {
			return nil, b.damaged("the place of a revision of item %s can't be read", id)
		}
	}
	l.Places()
	return l, nil
}

// putPlace keeps the place of a revision.
func putPlace(w store.Writer, id ulid.ULID, revision int, e *lineage.Entry[Item]) error {
	key := revisionKey(id, revision)
	value := binary.AppendVarint(nil, e.Place)
	for _, flag := range []bool{e.Early, e.Human, e.Apart} {
		value = appendFlag(value, flag)
	}
	return w.Put(placesBucket, key, Seal(key, value))
}

// saysOther says that a person, not only a program, changed something between two revisions.
func saysOther(old, now Item) bool {
	for _, it := range []*Item{&old, &now} {
		it.Revision, it.By, it.Reason, it.At = 0, "", "", now.At
		it.Predicted, it.Measured = 0, nil
		if !it.ByHand() {
			it.Task = respelled(it.Task)
			it.Key, it.Skill, it.Codes, it.Traits, it.Seconds = "", "", nil, now.Traits, 0
		}
	}
	return string(encode(nil, &old)) != string(encode(nil, &now))
}
