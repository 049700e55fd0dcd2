package bank

import (
	"bytes"
	"errors"
	"slices"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
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
		return 0, words.Errorf("a change needs a name and a reason, so that colleagues can follow it")
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
	id            ulid.ULID
	old, next     Item
	before, after string // their fingerprints
}

// reviseBatch changes a batch. change is called before the transaction begins, so
// that it may use the bank; whether the items are still the same is seen to in it.
func (b *Bank) reviseBatch(ids []string, table Table, by, reason string, at time.Time, change func(*Item) error) (int, error) {
	keys, err := parseIDs(ids)
	if err != nil {
		return 0, err
	}
	items, err := b.getAll(keys)
	if err != nil {
		return 0, err
	}
	var revisions []revision
	seen := map[string]bool{}
	for _, old := range items {
		if seen[old.ID] { // it was named by two of its IDs
			continue
		}
		seen[old.ID] = true
		r, err := revise(old, table, by, reason, at, change)
		if err == nil {
			err = b.mayLetIn(r.old, r.next)
		}
		if err != nil {
			return 0, words.Errorf("item %s: %w", old.ID, err)
		}
		if !r.same() {
			r.id = ulid.MustParse(old.ID)
			revisions = append(revisions, r)
		}
	}
	if len(revisions) == 0 {
		return 0, nil
	}
	return len(revisions), b.update(func(tx store.Writer) error { return b.writer(tx).reviseAll(revisions) })
}

// parseIDs reads IDs as people give them, each once.
func parseIDs(texts []string) (ids []ulid.ULID, err error) {
	seen := make(map[ulid.ULID]bool, len(texts))
	for _, text := range texts {
		id, err := parseID(text)
		if err != nil {
			return nil, err
		}
		if !seen[id] {
			seen[id] = true
			ids = append(ids, id)
		}
	}
	return ids, nil
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
	if !next.ByHand() && next.Task != old.Task && next.Task != respelled(old.Task) {
		next.Measured = nil
		if predicted == old.Predicted {
			next.Predicted = table.PredictItem(next)
		}
	}
	if next.ByHand() && next.Skill != old.Skill {
		next.followSkill(old, table)
	}
	return revision{old: old, next: next, before: old.Fingerprint(), after: fingerprint}, err
}

// followSkill gives an item by hand what is usual for its new skill, where it had what is usual
// for its old one.
func (it *Item) followSkill(old Item, table Table) {
	was, is := NewHandItem("", "", old.Skill, "", Origin{}), NewHandItem("", "", it.Skill, "", Origin{})
	if slices.Equal(it.Codes, was.Codes) {
		it.Codes = is.Codes
	}
	if it.Seconds == was.Seconds {
		it.Seconds = is.Seconds
	}
	if it.Predicted == old.Predicted && table.PredictedBySkill(old, standards.CatalogueNumber) {
		it.Predicted = table.PredictItem(*it)
	}
}

// respelled is a task as this program writes it.
func respelled(text string) string {
	asked, err := task.Parse(text)
	if err != nil {
		return text
	}
	return asked.String()
}

// same says whether the change left all as it was, but for who and why.
func (r revision) same() bool {
	next := r.next
	next.Revision, next.By, next.At, next.Reason = r.old.Revision, r.old.By, r.old.At, r.old.Reason
	return bytes.Equal(encode(nil, &r.old), encode(nil, &next))
}

// errMoved says that somebody else revised an item in between.
var errMoved = errors.New("an item was revised in between")

func (w *writer) reviseAll(revisions []revision) error {
	ids := make([]ulid.ULID, len(revisions))
	for i := range revisions {
		ids[i] = revisions[i].id
	}
	if err := w.load(ids); err != nil {
		return err
	}
	if err := w.loadNext(revisions); err != nil {
		return err
	}
	prints, err := w.movedPrints(revisions)
	if err != nil {
		return err
	}
	for i := range revisions {
		if err := w.revise(&revisions[i], prints); err != nil {
			return err
		}
	}
	return w.flush()
}

// loadNext reads the groups that the items will be in.
func (w *writer) loadNext(revisions []revision) error {
	names := make([][]byte, len(revisions))
	for i := range revisions {
		g := newGroup(&revisions[i].next, usageIn(w.weeks[revisions[i].id]))
		names[i] = g.appendName(nil)
	}
	return w.groups.load(names)
}

// movedPrints finds the items that stand under the new fingerprints, where those change.
func (w *writer) movedPrints(revisions []revision) (map[string][]byte, error) {
	var keys [][]byte
	for i := range revisions {
		if r := &revisions[i]; r.before != r.after {
			keys = append(keys, printKey(r.after))
		}
	}
	here, err := w.GetAll(fingerprintBucket, keys)
	prints := make(map[string][]byte, len(keys))
	for i, key := range keys {
		if err == nil {
			prints[string(key)] = here[i]
		}
	}
	return prints, err
}

func (w *writer) revise(r *revision, prints map[string][]byte) error {
	var now Item
	if err := w.get(r.id, &now); err != nil {
		return err
	}
	if now.Revision != r.old.Revision {
		return errMoved
	}
	if err := w.reprint(r.id, r.before, r.after, prints); err != nil {
		return err
	}
	return w.replace(r.id, &r.old, &r.next)
}

// reprint moves the item's fingerprint, if no other item has the new one.
func (w *writer) reprint(id ulid.ULID, old, next string, prints map[string][]byte) error {
	if old == next {
		return nil
	}
	from, to := printKey(old), printKey(next)
	if here := prints[string(to)]; here != nil {
		other := ulid.ULID(here)
		if err := w.load([]ulid.ULID{other}); err != nil {
			return err
		}
		var it Item
		if err := w.get(other, &it); err != nil {
			return err
		}
		return words.Errorf("item %s: item %s (%s) asks the same already; change that one, or keep this as it is", id, it.ID, it.Standing)
	}
	prints[string(from)], prints[string(to)] = nil, id[:]
	if err := release(w, from, id); err != nil {
		return err
	}
	return claim(w, to, id)
}
