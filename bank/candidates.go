package bank

import (
	"cmp"
	"encoding/binary"
	"fmt"
	"maps"
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

// choice is the only items that a query can want, in order. Where these are more than a half of all, ids is nil
// and narrow false: then it is faster to read all items in their order.
type choice struct {
	ids    []rank
	narrow bool
}

// candidates lists the only items that a query can want, by the index that leaves fewer.
func (b *Bank) candidates(r store.Reader, q *Query) (choice, error) {
	known, now, err := b.allGroups(r)
	if err != nil {
		return choice{}, err
	}
	asked := asking{what: q.indexed()}
	if q.byOrigin() {
		if asked.origins, err = r.Sequence(originMembers); err != nil {
			return choice{}, err
		}
	}
	if made, ok := b.groups.choice(now, asked); ok {
		return made, nil
	}
	made, err := b.choose(r, q, known, now)
	if err == nil {
		b.groups.keepChoice(now, asked, made)
	}
	return made, err
}

func (b *Bank) choose(r store.Reader, q *Query, known []sized, now uint64) (made choice, err error) {
	best, all := q.chooseGroups(known)
	if q.byOrigin() {
		origins, err := q.chooseOrigins(r)
		if err != nil {
			return made, err
		}
		if origins.size < best.size {
			best = origins
		}
	}
	switch {
	case best.size > all/2:
		return made, nil
	case best.members == groupMembers:
		made.ids, err = b.inGroups(r, best, now)
	default:
		var read map[uint32][]rank
		read, err = best.read(r)
		made.ids = slices.Concat(slices.Collect(maps.Values(read))...)
	}
	made.narrow = true
	slices.SortFunc(made.ids, rank.compare)
	return made, err
}

// indexed is all of a query that the indexes know of, as text: queries with the same text have the same choice.
func (q *Query) indexed() string {
	text := fmt.Sprintf("%q %q %q %q %q %q %q %q %q", q.Skills, q.Where, q.Standings, q.Looks, q.Bands, q.Unused, q.Kind, q.File, q.Author)
	if q.Difficulty != nil {
		text += fmt.Sprintf(" from %d to %d", q.Difficulty.From, q.Difficulty.To)
	}
	if q.ByHand != nil {
		text += fmt.Sprint(" by hand ", *q.ByHand)
	}
	return text
}

// byOrigin says whether the query asks how items came.
func (q *Query) byOrigin() bool { return q.Kind+q.File+q.Author != "" }

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

// read reads the IDs of all members, which end their keys, by the numbers of their sets. Sets whose
// numbers follow each other are one range.
func (want *chosen) read(r store.Reader) (map[uint32][]rank, error) {
	slices.SortFunc(want.sets, func(a, b set) int { return cmp.Compare(a.number, b.number) })
	var ranges []store.Range
	for i, s := range want.sets {
		if i > 0 && want.sets[i-1].number+1 == s.number {
			last := &ranges[len(ranges)-1]
			last.To, last.Limit = store.After(s.prefix()), last.Limit+int(s.size)
			continue
		}
		next := store.Prefix(s.prefix())
		next.Limit = int(s.size)
		ranges = append(ranges, next)
	}
	ids := make(map[uint32][]rank, len(want.sets))
	for e, err := range r.Scan(want.members, ranges...) {
		if err != nil {
			return nil, err
		}
		number := binary.BigEndian.Uint32(e.Key)
		ids[number] = append(ids[number], rankOf(e.Key[len(e.Key)-len(ulid.ULID{}):]))
	}
	return ids, nil
}
