package bank

import (
	"bytes"
	"errors"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/words"
)

// indexed looks items up in every index.
func (c *checker) indexed(items []Item) error {
	ids := make([]ulid.ULID, len(items))
	for i := range items {
		ids[i] = ulid.MustParse(items[i].ID)
	}
	weeks, err := weeksOf(c, ids)
	if errors.Is(err, errRecord) {
		c.found("a use can't be read")
	} else if err != nil {
		return err
	}
	if err := c.foundByWhatTheyAsk(items, ids); err != nil {
		return err
	}
	var members, origins lookups
	for i := range items {
		it, id := &items[i], ids[i]
		g := newGroup(it, usageIn(weeks[id]))
		members.expect(memberOf(c.groups, g.appendName(nil), memberRest(id)), appendMember(nil, it), "item %s is not found in its group", id)
		origins.expect(memberOf(c.origins, originName(it.Origin), id[:]), []byte{}, "item %s is not found by its origin", id)
	}
	for bucket, l := range map[string]*lookups{groupMembers: &members, originMembers: &origins} {
		if err := c.lookUp(bucket, l); err != nil {
			return err
		}
	}
	return nil
}

// foundByWhatTheyAsk looks for the items, or as doubles, under their fingerprints. An earlier
// catalogue may have told the same from other questions; Refresh sees to that.
func (c *checker) foundByWhatTheyAsk(items []Item, ids []ulid.ULID) error {
	prints := make([][]byte, len(items))
	for i := range items {
		prints[i] = printKey(items[i].Fingerprint())
	}
	here, err := c.GetAll(fingerprintBucket, prints)
	if err != nil {
		return err
	}
	for i, id := range ids {
		if bytes.Equal(here[i], id[:]) {
			continue
		}
		double, err := c.Get(doublesBucket, doubleKey(prints[i], id))
		switch {
		case err != nil:
			return err
		case double != nil && here[i] != nil:
		case c.compute.catalogue < standards.CatalogueNumber:
			c.older("item %s, %s: not found by what it asks", id, items[i].Question("en"))
		default:
			c.found("item %s is not found by what it asks", id)
		}
	}
	return nil
}

// memberOf is a member's key in a set that should have one item more than was counted.
func memberOf(sets map[string]*counted, name, rest []byte) []byte {
	s := sets[string(name)]
	if s == nil {
		s = &counted{}
		sets[string(name)] = s
	}
	s.want++
	return append(s.prefix(), rest...)
}

// lookups are keys with the values that should be under them, and what to say if not.
type lookups struct {
	keys, values [][]byte
	problems     []*words.Told
}

func (l *lookups) expect(key, value []byte, problem string, id ulid.ULID) {
	l.keys, l.values = append(l.keys, key), append(l.values, value)
	l.problems = append(l.problems, words.Sayf(problem, id))
}

func (c *checker) lookUp(bucket string, l *lookups) error {
	found, err := c.GetAll(bucket, l.keys)
	if err != nil {
		return err
	}
	for i, value := range found {
		if value == nil || !bytes.Equal(value, l.values[i]) {
			c.found("%s", l.problems[i])
		}
	}
	return nil
}

// indexes compares sizes: as every item was found in its places, an index that
// is as large as it should be holds nothing else.
func (c *checker) indexes() error {
	doubles, err := c.size(doublesBucket)
	if err != nil {
		return err
	}
	for _, index := range []struct {
		name, bucket string
		more         int
	}{
		{"fingerprints", fingerprintBucket, doubles},
		{"members of groups", groupMembers, 0},
		{"members of origins", originMembers, 0},
	} {
		size, err := c.size(index.bucket)
		if err != nil {
			return err
		}
		size += index.more
		if size != c.report.Items {
			c.found("the index of %s has %d entries, but should have %d", words.Term(index.name), size, c.report.Items)
		}
	}
	c.sizes("groups", c.groups)
	c.sizes("origins", c.origins)
	return nil
}

func (c *checker) size(bucket string) (size int, err error) {
	for _, err := range c.Scan(bucket, store.Range{}) {
		if err != nil {
			return size, err
		}
		size++
	}
	return size, nil
}

// sizes compares the sets that are kept, and the size that each says it has, with the
// items counted.
func (c *checker) sizes(index string, sets map[string]*counted) {
	here, should := 0, 0
	for _, s := range sets {
		if s.here {
			here++
		}
		if s.want > 0 {
			should++
		}
		if s.here && int(s.size) != s.want {
			c.found("an entry of the index of %s counts %d items where there are %d", words.Term(index), s.size, s.want)
		}
	}
	if here != should {
		c.found("the index of %s has %d entries, but should have %d", words.Term(index), here, should)
	}
}
