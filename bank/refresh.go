package bank

import (
	"bytes"
	"errors"
	"fmt"
	"iter"
	"strconv"
	"strings"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards"
)

// What is computed of items is kept with them. When the catalogue changes, a bank of an
// earlier one is brought along, item by item, as revisions.

var catalogueKey = []byte("catalogue")

// Catalogue is the number of the catalogue by which all items of the bank are computed:
// an older one than standards.CatalogueNumber means that Refresh has something to do.
func (b *Bank) Catalogue() (number int, err error) {
	err = b.view(func(r store.Reader) error {
		number, err = b.readCatalogue(r)
		return err
	})
	return number, err
}

// readCatalogue reads the number; banks of before there was one are of catalogue 1.
func (b *Bank) readCatalogue(r store.Reader) (int, error) {
	text, err := r.Get(aboutBucket, catalogueKey)
	if text == nil || err != nil {
		return 1, err
	}
	number, err := strconv.Atoi(string(text))
	if err != nil || number < 1 {
		return 0, b.damaged("the number of its catalogue can't be read")
	}
	return number, nil
}

func putCatalogue(w store.Writer, number int) error {
	if number == 1 { // as in banks of that time, so that merges in any order keep the same
		return w.Delete(aboutBucket, catalogueKey)
	}
	return w.Put(aboutBucket, catalogueKey, strconv.AppendInt(nil, int64(number), 10))
}

// recomputer computes items as this program does.
type recomputer struct {
	table     Table // of what still teaches something
	kept      Table // as the bank has it
	catalogue int   // of the bank
}

func (b *Bank) recomputer() (c recomputer, err error) {
	if c.kept, err = b.KeptTable(); err != nil {
		return c, err
	}
	c.table = c.kept.now()
	c.catalogue, err = b.Catalogue()
	return c, err
}

// item is the item with all that is computed of it. Of an item by hand that is only the
// difficulty usual for its skill, unless a person gave another.
func (c recomputer) item(it Item) (Item, error) {
	next := it.clone()
	if _, err := next.settle(); err != nil {
		return it, err
	}
	if !it.ByHand() || c.catalogue < standards.CatalogueNumber && c.kept.PredictedBySkill(it, c.catalogue) {
		next.Predicted = c.table.PredictItem(next)
	}
	return next, nil
}

// Outdated is an item as it stands and as this program computes it.
type Outdated struct {
	Old, New Item
	Err      error // it can't be computed any more, and stays as it is
}

// Changed names the fields that differ, with what they are and what they would be.
func (o Outdated) Changed() []Field {
	var changed []Field
	for _, f := range computed(o.Old, o.New) {
		if f.Old != f.New {
			changed = append(changed, f)
		}
	}
	return changed
}

// Field is a computed field of an item, in words.
type Field struct {
	Name string `json:"name"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// computed lists what is computed of an item, as it was and as it is now.
func computed(old, now Item) []Field {
	return []Field{
		{"task", old.Task, now.Task},
		{"key", old.Key, now.Key},
		{"skill", string(old.Skill), string(now.Skill)},
		{"traits", strings.Join(old.Traits.List(), " "), strings.Join(now.Traits.List(), " ")},
		{"standards", old.Standards(), now.Standards()},
		{"seconds", fmt.Sprint(old.Seconds), fmt.Sprint(now.Seconds)},
		{"difficulty", old.Predicted.String(), now.Predicted.String()},
	}
}

// Outdated gives the items that this program computes otherwise than they are kept.
func (b *Bank) Outdated() iter.Seq2[Outdated, error] {
	return func(yield func(Outdated, error) bool) {
		c, err := b.recomputer()
		if err != nil {
			yield(Outdated{}, err)
			return
		}
		for it, err := range b.Find(Query{}) {
			if err != nil {
				yield(Outdated{}, err)
				return
			}
			next, err := c.item(it)
			if err == nil && bytes.Equal(encode(nil, &it), encode(nil, &next)) {
				continue
			}
			if !yield(Outdated{it, next, err}, nil) {
				return
			}
		}
	}
}

// Refresh brings the bank along to this program's catalogue: each item that it computes
// otherwise gets a revision with the reason "catalogue N". An item that can't be computed
// any more stays as it is. Interrupted, it is finished by doing it again.
func (b *Bank) Refresh(by string, at time.Time, advance func(done int)) (revised int, err error) {
	c, err := b.recomputer()
	if err != nil {
		return 0, err
	}
	if c.catalogue > standards.CatalogueNumber {
		return 0, fmt.Errorf("%s was brought along by a newer evenhand (catalogue %d, this one has %d); use that evenhand, or bring this one up to date",
			b.Path(), c.catalogue, standards.CatalogueNumber)
	}
	if err := b.reindex(); err != nil {
		return 0, err
	}
	reason := fmt.Sprintf("catalogue %d", standards.CatalogueNumber)
	var ids []string
	revise := func() error {
		n, err := b.ReviseAll(ids, by, reason, at, func(it *Item) error {
			next, err := c.item(*it)
			*it = next
			return err
		})
		revised, ids = revised+n, ids[:0]
		return err
	}
	seen := 0
	for o, err := range b.Outdated() {
		if err != nil {
			return revised, err
		}
		if seen++; seen%together == 0 && advance != nil {
			advance(seen)
		}
		if o.Err != nil {
			continue
		}
		if ids = append(ids, o.Old.ID); len(ids) < batch {
			continue
		}
		if err := revise(); err != nil {
			return revised, err
		}
	}
	if err := revise(); err != nil || c.catalogue == standards.CatalogueNumber {
		return revised, err
	}
	return revised, b.update(func(w store.Writer) error { return putCatalogue(w, standards.CatalogueNumber) })
}

// reindex brings the index of fingerprints along, where an item's is computed otherwise.
func (b *Bank) reindex() error {
	var ids []ulid.ULID
	var prints [][]byte
	move := func() error {
		err := b.moveAll(ids, prints)
		ids, prints = ids[:0], prints[:0]
		return err
	}
	for it, err := range b.Find(Query{}) {
		if err != nil {
			return err
		}
		ids, prints = append(ids, ulid.MustParse(it.ID)), append(prints, printKey(it.Fingerprint()))
		if len(ids) < together {
			continue
		}
		if err := move(); err != nil {
			return err
		}
	}
	return move()
}

// moveAll moves those of the items whose prints are not where they should be.
func (b *Bank) moveAll(ids []ulid.ULID, prints [][]byte) error {
	missing := map[ulid.ULID][]byte{}
	err := b.view(func(r store.Reader) error {
		clear(missing)
		here, err := r.GetAll(fingerprintBucket, prints)
		if err != nil {
			return err
		}
		for i, id := range ids {
			if bytes.Equal(here[i], id[:]) {
				continue
			}
			double, err := r.Get(doublesBucket, doubleKey(prints[i], id))
			if err != nil {
				return err
			}
			if double == nil {
				missing[id] = prints[i]
			}
		}
		return nil
	})
	if err != nil || len(missing) == 0 {
		return err
	}
	return b.update(func(w store.Writer) error {
		old := map[ulid.ULID][]byte{}
		for e, err := range w.Scan(fingerprintBucket, store.Range{}) {
			if err != nil {
				return err
			}
			if id := ulid.ULID(e.Value); missing[id] != nil {
				old[id] = bytes.Clone(e.Key)
			}
		}
		for id, print := range missing {
			var released error
			if old[id] != nil {
				released = release(w, old[id], id)
			}
			if err := errors.Join(released, claim(w, print, id)); err != nil {
				return err
			}
		}
		return nil
	})
}
