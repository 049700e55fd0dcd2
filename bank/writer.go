package bank

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"
)

// writer changes items and keeps every index in step, within one transaction.
type writer struct {
	bank                                *Bank
	items, revisions, uses, fingerprint *bbolt.Bucket
	groups, origins                     *sets
	name                                []byte // of a group; used again and again
}

func (b *Bank) writer(tx *bbolt.Tx) *writer {
	w := &writer{
		bank:        b,
		items:       tx.Bucket(itemsBucket),
		revisions:   tx.Bucket(revisionsBucket),
		uses:        tx.Bucket(usesBucket),
		fingerprint: tx.Bucket(fingerprintBucket),
		groups:      groupSets(tx),
		origins:     originSets(tx),
	}
	w.items.FillPercent = 0.95 // IDs grow, so that full pages stay full
	w.origins.members.FillPercent = 0.95
	return w
}

// flush ends the batch: it writes what was gathered.
func (w *writer) flush() error {
	if err := w.groups.flush(); err != nil {
		return err
	}
	return w.origins.flush()
}

// get reads an item as it stands.
func (w *writer) get(id ulid.ULID, it *Item) error {
	record := w.items.Get(id[:])
	if record == nil {
		return w.bank.unknown(id.String())
	}
	return w.bank.unsealItem(id[:], record, it)
}

// insert keeps a new item.
func (w *writer) insert(id ulid.ULID, it *Item, print []byte) error {
	if err := w.items.Put(id[:], sealItem(id[:], it)); err != nil {
		return err
	}
	if err := w.fingerprint.Put(print, id[:]); err != nil {
		return err
	}
	if err := w.origins.add(originName(it.Origin), id[:], nil); err != nil {
		return err
	}
	return w.join(id, it, usage{})
}

// replace keeps the item's old revision and puts the new one in its place. The
// origin of an item never changes.
func (w *writer) replace(id ulid.ULID, old, new *Item) error {
	if err := w.ungroup(id, old); err != nil {
		return err
	}
	key := revisionKey(id, old.Revision)
	if err := w.revisions.Put(key, sealItem(key, old)); err != nil {
		return err
	}
	if err := w.items.Put(id[:], sealItem(id[:], new)); err != nil {
		return err
	}
	return w.group(id, new)
}

// group puts an item into the group that its fields and uses make.
func (w *writer) group(id ulid.ULID, it *Item) error {
	return w.join(id, it, usageOf(w.uses, id))
}

func (w *writer) join(id ulid.ULID, it *Item, uses usage) error {
	g := newGroup(it, uses)
	w.name = g.appendName(w.name[:0])
	return w.groups.add(w.name, memberRest(id), appendMember(nil, it))
}

// ungroup takes it out again, before its fields or uses change.
func (w *writer) ungroup(id ulid.ULID, it *Item) error {
	g := newGroup(it, usageOf(w.uses, id))
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
