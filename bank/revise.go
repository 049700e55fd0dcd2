package bank

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"
)

// Revise changes an item and keeps what it was. change gets the item as it stands
// and may change its task, wording, look, standing, notes, difficulty and, for an
// item by hand, key, skill, codes and seconds; the rest is computed or fixed. An
// error of change is returned and nothing is written. Who and why are required.
// change is called again if somebody else was faster.
//
// A new task is predicted anew and loses the measured difficulty, which was the
// old one's. If nothing is different in the end, there is no new revision.
func (b *Bank) Revise(id, by, reason string, at time.Time, change func(*Item) error) (Item, error) {
	if _, err := b.ReviseAll([]string{id}, by, reason, at, change); err != nil {
		return Item{}, err
	}
	return b.Get(id)
}

// ReviseAll changes items as Revise does, in batches of 10,000 of which each is
// written whole or not at all, and returns how many got a new revision. On an
// error this is the number in the batches before.
func (b *Bank) ReviseAll(ids []string, by, reason string, at time.Time, change func(*Item) error) (revised int, err error) {
	if by == "" || reason == "" {
		return 0, errors.New("a change needs a name and a reason, so that colleagues can follow it")
	}
	table, err := b.Table()
	if err != nil {
		return 0, err
	}
	for chunk := range slices.Chunk(ids, batch) {
		n, err := b.reviseBatch(chunk, table, by, reason, at.UTC().Round(0), change)
		for errors.Is(err, errMoved) {
			n, err = b.reviseBatch(chunk, table, by, reason, at.UTC().Round(0), change)
		}
		if err != nil {
			return revised, err
		}
		revised += n
	}
	return revised, nil
}

// revision is an item before and after a change.
type revision struct {
	old, next   Item
	fingerprint string // of the next
}

// reviseBatch changes a batch. change is called before the transaction begins, so
// that it may use the bank; whether the items are still the same is seen to in it.
func (b *Bank) reviseBatch(ids []string, table Table, by, reason string, at time.Time, change func(*Item) error) (int, error) {
	var revisions []revision
	seen := map[string]bool{}
	for _, id := range ids {
		old, err := b.Get(id)
		if err != nil {
			return 0, err
		}
		if seen[old.ID] {
			continue
		}
		seen[old.ID] = true
		r, err := revise(old, table, by, reason, at, change)
		if err != nil {
			return 0, fmt.Errorf("item %s: %w", old.ID, err)
		}
		if !r.same() {
			revisions = append(revisions, r)
		}
	}
	if len(revisions) == 0 {
		return 0, nil
	}
	return len(revisions), b.update(func(tx *bbolt.Tx) error {
		w := b.writer(tx)
		for i := range revisions {
			if err := w.revise(&revisions[i]); err != nil {
				return err
			}
		}
		return w.flush()
	})
}

// Retire takes an item out of use; it stays in the bank with its history.
func (b *Bank) Retire(id, by, reason string, at time.Time) (Item, error) {
	return b.Revise(id, by, reason, at, func(it *Item) error {
		it.Standing = Retired
		return nil
	})
}

// revise makes the next revision of an item.
func revise(old Item, table Table, by, reason string, at time.Time, change func(*Item) error) (r revision, err error) {
	next := old.clone()
	if err := change(&next); err != nil {
		return r, err
	}
	predicted := next.Predicted
	next.ID, next.Origin, next.Revision = old.ID, old.Origin, old.Revision+1
	next.By, next.At, next.Reason = by, at, reason
	fingerprint, err := next.settle()
	if next.Task != old.Task && !next.ByHand() {
		next.Measured = nil
		if predicted == old.Predicted {
			next.Predicted = table.Predict(next.Skill, next.Traits)
		}
	}
	return revision{old, next, fingerprint}, err
}

// same says whether the change left all as it was, but for who and why.
func (r revision) same() bool {
	next := r.next
	next.Revision, next.By, next.At, next.Reason = r.old.Revision, r.old.By, r.old.At, r.old.Reason
	return bytes.Equal(encode(nil, &r.old), encode(nil, &next))
}

// errMoved says that somebody else revised an item in between.
var errMoved = errors.New("an item was revised in between")

func (w *writer) revise(r *revision) error {
	id := ulid.MustParse(r.old.ID)
	var now Item
	if err := w.get(id, &now); err != nil {
		return err
	}
	if now.Revision != r.old.Revision {
		return errMoved
	}
	if err := w.reprint(id, r.old.Fingerprint(), r.fingerprint); err != nil {
		return err
	}
	return w.replace(id, &r.old, &r.next)
}

// reprint moves the item's fingerprint, if no other item has the new one.
func (w *writer) reprint(id ulid.ULID, old, next string) error {
	if old == next {
		return nil
	}
	if here := w.fingerprint.Get(printKey(next)); here != nil {
		var other Item
		if err := w.get(ulid.ULID(here), &other); err != nil {
			return err
		}
		return fmt.Errorf("item %s: item %s (%s) asks the same already; change that one, or keep this as it is", id, other.ID, other.Standing)
	}
	if err := w.fingerprint.Delete(printKey(old)); err != nil {
		return err
	}
	return w.fingerprint.Put(printKey(next), id[:])
}
