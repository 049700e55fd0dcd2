package bank

import (
	"bytes"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Conflicts lists what merges left for a person to look at: items that people changed in two
// banks, until somebody changes them again, and items that ask the same as another.
func (b *Bank) Conflicts() (apart []Apart, doubles []Double, err error) {
	err = b.view(func(r store.Reader) error {
		apart = nil
		var ids []ulid.ULID
		for e, err := range r.Scan(placesBucket, store.Range{}) {
			if err != nil {
				return err
			}
			if id := ulid.ULID(e.Key[:len(ulid.ULID{})]); len(ids) == 0 || ids[len(ids)-1] != id {
				ids = append(ids, id)
			}
		}
		for _, id := range ids {
			l, err := b.lineOf(r, id)
			if err != nil {
				return err
			}
			if a, ok := apartOf(l, id.String()); ok {
				apart = append(apart, a)
			}
		}
		return nil
	})
	if err != nil {
		return nil, nil, err
	}
	doubles, err = b.Doubles()
	return apart, doubles, err
}

// apartOf tells of an item whose last change by a person was made while another was made in
// another bank that says something else.
func apartOf(l line, id string) (a Apart, ok bool) {
	last := len(l) - 1
	for last > 0 && !l[last].Human {
		last--
	}
	if !l[last].Apart {
		return a, false
	}
	for i := last - 1; i >= 0; i-- {
		if l[i].Apart && saysOther(l[i].Value, l[last].Value) {
			return Apart{ID: id, Question: l[last].Value.Asks(), Stands: changeOf(l, last), Other: changeOf(l, i)}, true
		}
	}
	return a, false
}

func changeOf(l line, at int) Change {
	it := l[at].Value
	return Change{Revision: at + 1, By: it.By, On: it.At.Format(time.DateOnly), Reason: it.Reason, Question: it.Asks(), Key: it.Key, Standing: it.Standing}
}

// Doubles lists the items that ask the same as another one of the bank, neither being retired.
func (b *Bank) Doubles() (doubles []Double, err error) {
	var pairs [][2]ulid.ULID
	err = b.view(func(r store.Reader) error {
		pairs = nil
		for e, err := range r.Scan(doublesBucket, store.Range{}) {
			if err != nil {
				return err
			}
			print := e.Key[:len(e.Key)-len(ulid.ULID{})]
			first, err := r.Get(fingerprintBucket, print)
			if err != nil {
				return err
			}
			if len(first) != len(ulid.ULID{}) {
				return b.damaged("an item that asks the same as another is found by nothing")
			}
			pairs = append(pairs, [2]ulid.ULID{ulid.ULID(bytes.Clone(e.Key[len(print):])), ulid.ULID(first)})
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	doubles = []Double{}
	for _, pair := range pairs {
		items, err := b.getAll(pair[:])
		if err != nil {
			return nil, err
		}
		if items[0].Standing != Retired && items[1].Standing != Retired {
			doubles = append(doubles, Double{ID: items[0].ID, Other: items[1].ID, Question: items[0].Asks()})
		}
	}
	return doubles, nil
}
