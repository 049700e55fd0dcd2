package bank

import (
	"bytes"
	"errors"
	"fmt"
	"time"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"

	"evenhand/standards"
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

// Revise changes an item and keeps what it was. change gets the item as it stands
// and may change its task, wording, look, standing, notes, difficulty and, for an
// item by hand, key, skill, codes and seconds; the rest is computed or fixed. An
// error of change is returned and nothing is written. Who and why are required.
//
// A new task is predicted anew and loses the measured difficulty, which was the
// old one's. If nothing is different in the end, there is no new revision.
func (b *Bank) Revise(id, by, reason string, at time.Time, change func(*Item) error) (Item, error) {
	key, err := parseID(id)
	if err != nil {
		return Item{}, err
	}
	if by == "" || reason == "" {
		return Item{}, errors.New("a change needs a name and a reason, so that colleagues can follow it")
	}
	for {
		old, err := b.Get(id)
		if err != nil {
			return old, err
		}
		next, fingerprint, err := revised(old, by, reason, at, change)
		if err != nil {
			return old, fmt.Errorf("item %s: %w", old.ID, err)
		}
		if same(old, next) {
			return old, nil
		}
		err = b.update(func(tx *bbolt.Tx) error { return b.writer(tx).revise(key, old, &next, fingerprint) })
		if !errors.Is(err, errMoved) {
			return next, err
		}
	}
}

// Retire takes an item out of use; it stays in the bank with its history.
func (b *Bank) Retire(id, by, reason string, at time.Time) (Item, error) {
	return b.Revise(id, by, reason, at, func(it *Item) error {
		it.Standing = Retired
		return nil
	})
}

// revised is the next revision of an item and its fingerprint.
func revised(old Item, by, reason string, at time.Time, change func(*Item) error) (next Item, fingerprint string, err error) {
	next = old.clone()
	if err := change(&next); err != nil {
		return next, "", err
	}
	predicted := next.Predicted
	next.ID, next.Origin, next.Revision = old.ID, old.Origin, old.Revision+1
	next.By, next.At, next.Reason = by, at.UTC().Round(0), reason
	if fingerprint, err = next.settle(); err != nil {
		return next, "", err
	}
	if next.Task != old.Task && !next.ByHand() {
		next.Measured = nil
		if predicted == old.Predicted {
			next.Predicted = standards.Predict(next.Skill, next.Traits)
		}
	}
	return next, fingerprint, nil
}

// same says whether a revision changed nothing but the notes of who and why.
func same(old, next Item) bool {
	next.Revision, next.By, next.At, next.Reason = old.Revision, old.By, old.At, old.Reason
	return bytes.Equal(encode(nil, &old), encode(nil, &next))
}

// errMoved says that somebody else revised the item in between.
var errMoved = errors.New("the item was revised in between")

func (w *writer) revise(id ulid.ULID, old Item, next *Item, fingerprint string) error {
	var now Item
	if err := w.get(id, &now); err != nil {
		return err
	}
	if now.Revision != old.Revision {
		return errMoved
	}
	if err := w.reprint(id, old.Fingerprint(), fingerprint); err != nil {
		return err
	}
	if err := w.replace(id, &now, next); err != nil {
		return err
	}
	return w.flush()
}

// reprint moves the item's fingerprint, if nobody else has the new one.
func (w *writer) reprint(id ulid.ULID, old, next string) error {
	if here := w.fingerprint.Get(printKey(next)); here != nil {
		if ulid.ULID(here) == id {
			return nil
		}
		return fmt.Errorf("item %s: item %s asks that already; retire one of them instead", id, ulid.ULID(here))
	}
	if err := w.fingerprint.Delete(printKey(old)); err != nil {
		return err
	}
	return w.fingerprint.Put(printKey(next), id[:])
}
