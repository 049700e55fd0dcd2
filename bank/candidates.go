package bank

import (
	"bytes"
	"slices"
	"strings"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"
)

// chosen is the sets of an index that a query wants, and how many items they hold.
type chosen struct {
	members []byte // the bucket of members
	sets    []set
	size    int
}

// candidates lists, in order, the IDs of the only items that a query can want, by
// the index that leaves fewer. It says false where both leave more than a half:
// then it is faster to read all items in their order.
func (b *Bank) candidates(q *Query) (ids []ulid.ULID, narrow bool, err error) {
	err = b.view(func(tx *bbolt.Tx) error {
		groups, all, err := q.chooseGroups(tx.Bucket(groupsBucket))
		if err != nil {
			return err
		}
		best := groups
		if origins := q.chooseOrigins(tx.Bucket(originsBucket)); origins.size < best.size {
			best = origins
		}
		if narrow = best.size <= all/2; narrow {
			ids = best.ids(tx)
		}
		return nil
	})
	return ids, narrow, err
}

func (q *Query) chooseGroups(names *bbolt.Bucket) (want chosen, all int, err error) {
	want.members = groupMembers
	return want, all, names.ForEach(func(name, value []byte) error {
		g, err := readGroup(name, value)
		if err != nil {
			return err
		}
		all += g.Size
		if q.wantsGroup(&g) {
			want.add(value)
		}
		return nil
	})
}

func (q *Query) chooseOrigins(names *bbolt.Bucket) (want chosen) {
	want.members = originMembers
	c := names.Cursor()
	for name, value := c.First(); name != nil; name, value = c.Next() {
		if fields := strings.Split(string(name), "\x00"); q.wantsOrigin(Origin{Kind: fields[0], File: fields[1], By: fields[2]}) {
			want.add(value)
		}
	}
	return want
}

func (want *chosen) add(value []byte) {
	s := readSet(value)
	want.sets = append(want.sets, s)
	want.size += int(s.size)
}

// ids reads the IDs of all members, which end their keys, and puts them in order.
func (want *chosen) ids(tx *bbolt.Tx) []ulid.ULID {
	ids := make([]ulid.ULID, 0, want.size)
	c := tx.Bucket(want.members).Cursor()
	for _, s := range want.sets {
		prefix := s.prefix()
		for key, _ := c.Seek(prefix); bytes.HasPrefix(key, prefix); key, _ = c.Next() {
			ids = append(ids, ulid.ULID(key[len(key)-len(ulid.ULID{}):]))
		}
	}
	slices.SortFunc(ids, ulid.ULID.Compare)
	return ids
}
