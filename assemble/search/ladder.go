package search

import (
	"cmp"
	"slices"
	"sort"
)

// ladder holds the candidates for a row, places in items: those that count alike in the rules beside each other,
// and among them by what a typical pupil can expect of them. A step along it changes little.
type ladder struct {
	items []int32
	at    []int32 // where each of all items stands here, or −1
	first []int32 // where those begin that count like the one that stands here
	last  []int32 // and one more than where they end
}

// sort puts the candidates in order.
func (l *ladder) sort(items []compact, p *problem) {
	set := func(i int32) uint64 { return p.Items[items[i].item].set() }
	slices.SortFunc(l.items, func(x, y int32) int {
		return cmp.Or(cmp.Compare(set(x), set(y)), cmp.Compare(items[x].points[typical], items[y].points[typical]), int(x-y))
	})
	l.items = slices.Compact(l.items)
	l.at = make([]int32, len(items))
	for i := range l.at {
		l.at[i] = -1
	}
	l.first, l.last = make([]int32, len(l.items)), make([]int32, len(l.items))
	for k, i := range l.items {
		l.at[i] = int32(k)
		if l.first[k] = int32(k); k > 0 && set(l.items[k-1]) == set(i) {
			l.first[k] = l.first[k-1]
		}
	}
	for k := len(l.items) - 1; k >= 0; k-- {
		if l.last[k] = int32(k + 1); k+1 < len(l.items) && l.first[k+1] == l.first[k] {
			l.last[k] = l.last[k+1]
		}
	}
}

// anyFor is any item for a seat, or −1.
func (c *chain) anyFor(a *seat) int32 {
	l := &c.rows[a.row]
	if len(l.items) == 0 {
		return -1
	}
	return l.items[c.below(len(l.items))]
}

// likeFor is any item that counts like the one on a seat, or −1.
func (c *chain) likeFor(a *seat) int32 {
	l := &c.rows[a.row]
	at := l.at[a.item]
	if at < 0 {
		return -1
	}
	first, last := l.first[at], l.last[at]
	return l.items[int(first)+c.below(int(last-first))]
}

// nearFor is an item that counts like the one on a seat and gives about so many points, or −1.
func (c *chain) nearFor(a *seat, points int) int32 {
	l := &c.rows[a.row]
	at := l.at[a.item]
	if at < 0 {
		return -1
	}
	first, last := int(l.first[at]), int(l.last[at])
	k := first + sort.Search(last-first, func(i int) bool { return c.points(l.items[first+i]) >= points })
	width := 2 << c.below(widestStep)
	if k += c.below(2*width+1) - width; k < first || k >= last {
		return -1
	}
	return l.items[k]
}

// free is the item, or −1 if it is taken or none.
func (c *chain) free(item int32) int32 {
	if item < 0 || c.seatOf[item] >= 0 {
		return -1
	}
	return item
}
