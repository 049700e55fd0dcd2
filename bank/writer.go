package bank

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// writer changes items and keeps every index in step, within one transaction.
type writer struct {
	bank *Bank
	store.Writer
	groups, origins *sets
	records         map[ulid.ULID][]byte   // items as they stand now, of those that load has read
	weeks           map[ulid.ULID][]string // the weeks of their uses
}

func (b *Bank) writer(w store.Writer) *writer {
	return &writer{b, w, groupSets(w), originSets(w), map[ulid.ULID][]byte{}, map[ulid.ULID][]string{}}
}

// load reads items with their uses and groups, all together, so that a change of each
// costs no more questions. An ID that isn't there is none of its business.
func (w *writer) load(ids []ulid.ULID) error {
	records, err := recordsOf(w, ids)
	if err != nil {
		return err
	}
	weeks, err := weeksOf(w, ids)
	if err != nil {
		return err
	}
	var groups [][]byte
	for i, id := range ids {
		if records[i] == nil {
			continue
		}
		w.records[id], w.weeks[id] = records[i], weeks[id]
		var it Item
		if err := w.get(id, &it); err != nil {
			return err
		}
		g := newGroup(&it, usageIn(weeks[id]))
		groups = append(groups, g.appendName(nil))
	}
	return w.groups.load(groups)
}

// flush ends the batch: it writes what was gathered.
func (w *writer) flush() error {
	if err := w.groups.flush(); err != nil {
		return err
	}
	return w.origins.flush()
}

// get reads an item as it stands; it must have been loaded.
func (w *writer) get(id ulid.ULID, it *Item) error {
	record := w.records[id]
	if record == nil {
		return w.bank.unknown(id.String())
	}
	return w.bank.unsealItem(id[:], record, it)
}

// insert keeps a new item, whose group has the name.
func (w *writer) insert(id ulid.ULID, it *Item, print, group []byte) error {
	if err := w.Put(itemsBucket, id[:], sealItem(id[:], it)); err != nil {
		return err
	}
	if err := w.Put(fingerprintBucket, print, id[:]); err != nil {
		return err
	}
	if err := w.origins.add(originName(it.Origin), id[:], nil); err != nil {
		return err
	}
	return w.groups.add(group, memberRest(id), appendMember(nil, it))
}

// replace keeps the item's old revision and puts the new one in its place. The
// origin of an item never changes.
func (w *writer) replace(id ulid.ULID, old, new *Item) error {
	if err := w.ungroup(id, old); err != nil {
		return err
	}
	key := revisionKey(id, old.Revision)
	if err := w.Put(revisionsBucket, key, sealItem(key, old)); err != nil {
		return err
	}
	record := sealItem(id[:], new)
	w.records[id] = record
	if err := w.Put(itemsBucket, id[:], record); err != nil {
		return err
	}
	return w.group(id, new)
}

// group puts an item into the group that its fields and uses make.
func (w *writer) group(id ulid.ULID, it *Item) error {
	g := newGroup(it, usageIn(w.weeks[id]))
	return w.groups.add(g.appendName(nil), memberRest(id), appendMember(nil, it))
}

// ungroup takes it out again, before its fields or uses change.
func (w *writer) ungroup(id ulid.ULID, it *Item) error {
	g := newGroup(it, usageIn(w.weeks[id]))
	return w.groups.remove(g.appendName(nil), memberRest(id))
}

// printKey is a fingerprint's key in the index: half a SHA-256, far more than is
// needed to keep different questions apart.
func printKey(fingerprint string) []byte {
	sum := sha256.Sum256([]byte(fingerprint))
	return sum[:16]
}

// originName is the name of the set of items that came the same way.
func originName(o Origin) []byte {
	return appendText(appendText(appendText(nil, o.Kind), o.File), o.By)
}

func readOrigin(name []byte) Origin {
	r := reader{raw: name, text: string(name)}
	return Origin{Kind: r.string(), File: r.string(), By: r.string()}
}

func revisionKey(id ulid.ULID, revision int) []byte {
	return binary.BigEndian.AppendUint32(id[:], uint32(revision))
}

func (b *Bank) unknown(id string) error {
	return fmt.Errorf("%s has no item %s; evenhand list shows the IDs", b.Path(), id)
}
