package bank

import (
	"bytes"
	"cmp"
	"slices"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Items of two banks are one if they have an ID in common, as in copies, or if both banks
// added them, each by itself, asking the same. What an item asked when it was added never
// changes. A bank may have several items that asked the same when they were added, as the
// first may have been changed before the second came: then the first of one bank is the first
// of the other, and so on.

// birth is an item by what it asked when it was added.
type birth struct {
	print [16]byte
	id    ulid.ULID
}

// births lists the items by what they asked when they were added, then by ID.
func (b *Bank) births() (list []birth, err error) {
	var some []Item
	take := func() error {
		keys := make([][]byte, len(some))
		for i, it := range some {
			keys[i] = revisionKey(ulid.MustParse(it.ID), 1)
		}
		return b.view(func(r store.Reader) error {
			found, err := r.GetAll(revisionsBucket, keys)
			if err != nil {
				return err
			}
			for i, first := range some {
				id := ulid.MustParse(first.ID)
				if first.Revision > 1 {
					if found[i] == nil {
						return b.damaged("the first revision of item %s is missing", id)
					}
					if err := b.unsealItem(keys[i], found[i], &first); err != nil {
						return err
					}
				}
				list = append(list, birth{[16]byte(printKey(first.Fingerprint())), id})
			}
			return nil
		})
	}
	for it, err := range b.Find(Query{}) {
		if err != nil {
			return nil, err
		}
		if some = append(some, it); len(some) < together {
			continue
		}
		if err := take(); err != nil {
			return nil, err
		}
		some = some[:0]
	}
	if err := take(); err != nil {
		return nil, err
	}
	slices.SortFunc(list, func(x, y birth) int {
		return cmp.Or(bytes.Compare(x.print[:], y.print[:]), x.id.Compare(y.id))
	})
	return list, nil
}

// classes says which IDs name one item.
type classes map[ulid.ULID]ulid.ULID // an ID that leads on to another one

func (c classes) root(id ulid.ULID) ulid.ULID {
	for {
		next, ok := c[id]
		if !ok {
			return id
		}
		id = next
	}
}

// join makes one item of two; the lowest ID names it.
func (c classes) join(a, b ulid.ULID) {
	a, b = c.root(a), c.root(b)
	switch a.Compare(b) {
	case -1:
		c[b] = a
	case 1:
		c[a] = b
	}
}

// group is the items of both banks that asked the same when they were added.
type group struct{ ours, theirs []ulid.ULID }

// sameBirths goes through two lists and gives each print's items together.
func sameBirths(ours, theirs []birth, visit func(group)) {
	for len(theirs) > 0 {
		print := theirs[0].print
		for len(ours) > 0 && bytes.Compare(ours[0].print[:], print[:]) < 0 {
			ours = ours[1:]
		}
		var g group
		for ; len(ours) > 0 && ours[0].print == print; ours = ours[1:] {
			g.ours = append(g.ours, ours[0].id)
		}
		for ; len(theirs) > 0 && theirs[0].print == print; theirs = theirs[1:] {
			g.theirs = append(g.theirs, theirs[0].id)
		}
		visit(g)
	}
}

// aliasesOf reads the other IDs of a bank's items.
func (b *Bank) aliasesOf() (aliases map[ulid.ULID][]ulid.ULID, err error) {
	err = b.view(func(r store.Reader) error {
		aliases = map[ulid.ULID][]ulid.ULID{}
		for e, err := range r.Scan(joinedBucket, store.Range{}) {
			if err != nil {
				return err
			}
			if len(e.Key) != len(ulid.ULID{}) || len(e.Value) != len(ulid.ULID{}) {
				return b.damaged("an ID that an item was known by can't be read")
			}
			head := ulid.ULID(e.Value)
			aliases[head] = append(aliases[head], ulid.ULID(e.Key))
		}
		return nil
	})
	return aliases, err
}
