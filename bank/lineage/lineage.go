// Package lineage joins two histories of one thing that was changed in two places.
//
// A history is a line of entries, each made on the one before it. Joined, two lines hold
// every entry of both once, in one order; the last is what stands. The order is by time
// where times tell, and keeps each line's own. It is the same whichever line comes first,
// when a line is joined again, and for three lines in any order: where an entry stands
// follows from the line that it was made on and from nothing that came later.
package lineage

import (
	"cmp"
	"slices"
	"strings"
)

// Entry is one state in a history.
type Entry[T any] struct {
	Value T
	Body  string // what tells entries apart, beside their place
	At    int64  // when it was made, in nanoseconds

	Human bool // a person changed something, which no later working out may undo
	Born  bool // how the thing was first: any change of it counts as later

	Place  int64 // in the order; filled in by Places unless Placed
	Early  bool  // it goes before all changes by people; filled in with it
	Placed bool  // Place and Early were kept from an earlier join
	Apart  bool  // a change made while another was made elsewhere; kept from join to join
}

// Line is a history, the first entry first.
type Line[T any] []Entry[T]

// Places finds each entry's place. A change by a person stands by its time, but always after
// the entry that it was made on; one that was only worked out stands right behind that.
func (l Line[T]) Places() {
	for i := range l {
		e := &l[i]
		if e.Placed {
			continue
		}
		e.Place, e.Early = e.At, e.Born
		if i == 0 {
			continue
		}
		before := &l[i-1]
		if !e.Human && !e.Born {
			e.Place, e.Early = before.Place+1, before.Early
		}
		if compare(before, e) >= 0 {
			e.Place, e.Early = before.Place+1, before.Early
		}
	}
}

func compare[T any](a, b *Entry[T]) int {
	if a.Early != b.Early {
		if a.Early {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(a.Place, b.Place), strings.Compare(a.Body, b.Body))
}

// Join joins two lines whose places are known. Where one holds all of the other it is the
// answer as it is; else joined is new, all its entries are Placed, and apart says that a
// person made changes on both sides.
func Join[T any](a, b Line[T]) (joined Line[T], apart bool) {
	onlyA, onlyB := a.without(b), b.without(a)
	switch {
	case len(onlyA) == 0 && len(onlyB) == 0:
		return a.orPlaced(b), false
	case len(onlyB) == 0:
		return a, false
	case len(onlyA) == 0:
		return b, false
	}
	apart = changed(onlyA) && changed(onlyB)
	joined = append(slices.Clone(a), onlyB...)
	for i := range joined {
		e := &joined[i]
		e.Placed = true
		if apart && e.change() && (onlyA.has(e) || onlyB.has(e)) {
			e.Apart = true
		}
		if at, ok := b.find(e); ok && b[at].Apart {
			e.Apart = true
		}
	}
	slices.SortFunc(joined, func(x, y Entry[T]) int { return compare(&x, &y) })
	return joined, apart
}

// change says that a person changed what was there before.
func (e *Entry[T]) change() bool { return e.Human && !e.Born }

func changed[T any](l Line[T]) bool {
	return slices.ContainsFunc(l, func(e Entry[T]) bool { return e.change() })
}

// orPlaced is one of two lines with the same entries: one that an earlier join made.
func (l Line[T]) orPlaced(other Line[T]) Line[T] {
	if len(other) > 0 && other[0].Placed && !(len(l) > 0 && l[0].Placed) {
		return other
	}
	return l
}

func (l Line[T]) find(e *Entry[T]) (int, bool) {
	return slices.BinarySearchFunc(l, e, func(x Entry[T], e *Entry[T]) int { return compare(&x, e) })
}

func (l Line[T]) has(e *Entry[T]) bool {
	_, ok := l.find(e)
	return ok
}

func (l Line[T]) without(other Line[T]) (rest Line[T]) {
	for _, e := range l {
		if !other.has(&e) {
			rest = append(rest, e)
		}
	}
	return rest
}
