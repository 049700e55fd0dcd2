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
func (b *Bank) candidates(r store.Reader, q *Query) (ids []rank, narrow bool, err error) {
	known, err := b.allGroups(r)
	if err != nil {
		return nil, false, err
	}
	best, all := q.chooseGroups(known)
	if q.Kind+q.File+q.Author != "" {
		origins, err := q.chooseOrigins(r)
		if err != nil {
			return nil, false, err
		}
		if origins.size < best.size {
			best = origins
		}
	}
	if narrow = best.size <= all/2; narrow {
		ids, err = best.ids(r)
	}
	return ids, narrow, err
}

func (q *Query) chooseGroups(known []sized) (want chosen, all int) {
	want.members = groupMembers
	for i := range known {
		all += known[i].Size
		if q.wantsGroup(&known[i].Group) {
			want.add(known[i].set)
		}
	}
	return want, all
}

func (q *Query) chooseOrigins(r store.Reader) (want chosen, err error) {
	want.members = originMembers
	for e, err := range r.Scan(originsBucket, store.Range{}) {
		if err != nil {
			return want, err
		}
		if q.wantsOrigin(readOrigin(e.Key)) {
			want.add(readSet(e.Value))
		}
	}
	return want, nil
}

func (want *chosen) add(s set) {
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
		ranges[i].Limit = int(s.size)
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
