package bank

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"slices"

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
func (b *Bank) candidates(q *Query) (ids []rank, narrow bool, err error) {
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
		if q.wantsOrigin(readOrigin(name)) {
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

// rank is an ID as two whole numbers, which are put in order much faster.
type rank struct{ high, low uint64 }

func rankOf(id []byte) rank {
	return rank{binary.BigEndian.Uint64(id), binary.BigEndian.Uint64(id[8:])}
}

func (r rank) id() (id ulid.ULID) {
	binary.BigEndian.PutUint64(id[:], r.high)
	binary.BigEndian.PutUint64(id[8:], r.low)
	return id
}

func (r rank) compare(to rank) int {
	if r.high != to.high {
		return cmp.Compare(r.high, to.high)
	}
	return cmp.Compare(r.low, to.low)
}

// ids reads the IDs of all members, which end their keys, and puts them in order.
func (want *chosen) ids(tx *bbolt.Tx) []rank {
	ids := make([]rank, 0, want.size)
	c := tx.Bucket(want.members).Cursor()
	for _, s := range want.sets {
		prefix := s.prefix()
		for key, _ := c.Seek(prefix); bytes.HasPrefix(key, prefix); key, _ = c.Next() {
			ids = append(ids, rankOf(key[len(key)-len(ulid.ULID{}):]))
		}
	}
	slices.SortFunc(ids, rank.compare)
	return ids
}
