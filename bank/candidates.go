package bank

import (
	"cmp"
	"encoding/binary"
	"slices"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// chosen is the sets of an index that a query wants, and how many items they hold.
type chosen struct {
	members string // the bucket of members
	sets    []set
	size    int
}

// candidates lists, in order, the IDs of the only items that a query can want, by
// the index that leaves fewer. It says false where both leave more than a half:
// then it is faster to read all items in their order.
func (b *Bank) candidates(q *Query) (ids []rank, narrow bool, err error) {
	err = b.view(func(r store.Reader) error {
		groups, all, err := q.chooseGroups(r)
		if err != nil {
			return err
		}
		origins, err := q.chooseOrigins(r)
		if err != nil {
			return err
		}
		best := groups
		if origins.size < best.size {
			best = origins
		}
		if narrow = best.size <= all/2; narrow {
			ids, err = best.ids(r)
		}
		return err
	})
	return ids, narrow, err
}

func (q *Query) chooseGroups(r store.Reader) (want chosen, all int, err error) {
	want.members = groupMembers
	for e, err := range r.Scan(groupsBucket, store.Range{}) {
		if err != nil {
			return want, all, err
		}
		g, err := readGroup(e.Key, e.Value)
		if err != nil {
			return want, all, err
		}
		all += g.Size
		if q.wantsGroup(&g) {
			want.add(e.Value)
		}
	}
	return want, all, nil
}

func (q *Query) chooseOrigins(r store.Reader) (want chosen, err error) {
	want.members = originMembers
	for e, err := range r.Scan(originsBucket, store.Range{}) {
		if err != nil {
			return want, err
		}
		if q.wantsOrigin(readOrigin(e.Key)) {
			want.add(e.Value)
		}
	}
	return want, nil
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
func (want *chosen) ids(r store.Reader) ([]rank, error) {
	ids := make([]rank, 0, want.size)
	ranges := make([]store.Range, len(want.sets))
	for i, s := range want.sets {
		ranges[i] = store.Prefix(s.prefix())
	}
	for e, err := range r.Scan(want.members, ranges...) {
		if err != nil {
			return nil, err
		}
		ids = append(ids, rankOf(e.Key[len(e.Key)-len(ulid.ULID{}):]))
	}
	slices.SortFunc(ids, rank.compare)
	return ids, nil
}
