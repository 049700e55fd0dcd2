package search

import (
	"math"

	"evenhand/assemble/search/lp"
)

// asRoom is the form of the column that tells how much room there is.
const asRoom = -7

// A unit of room is paid as tenths of a use, and the most that there can be is more than any plan has.
const (
	roomCost = 10
	mostRoom = 1000
)

// makeRoom lets a tree that has not begun only ask whether there is a choice that is better than the best. That such
// a choice costs less is a rule then, and what its programs look for is the one farthest from the limits: with the
// most room in the time and at the mark, in standard deviations of an item's seconds and points. So a branch shows what
// it takes away long before there is nothing left, and what is fixed follows from the same, where all choices asked for
// cost about as much as each other. (The centre of a polyhedron: Elzinga and Moore, Mathematical Programming 8, 1975,
// from memory.)
func (t *tree) makeRoom() {
	t.most = int(t.atMost(t.best.objective - 1))
	for j := range t.Cols {
		if c := &t.Cols[j]; c.Cost > 0 {
			c.Up, c.Cost = min(c.Up, (t.best.objective-1)/c.Cost), 0
		}
	}
	seconds, points := t.spread()
	room := lp.Column{Up: mostRoom, Cost: -roomCost}
	for b := range t.blocks {
		row := int32(b*t.stride() + len(t.p.Rows) + len(t.p.Quotas) + len(t.p.Same))
		room.Entries = append(room.Entries, at(row, seconds), at(row+1, points), at(row+2, points))
	}
	t.add(room, about{form: asRoom})
	t.roomy = true
}

// spread gives the standard deviations of seconds and of a typical pupil's points among the groups, at least 1.
func (t *tree) spread() (seconds, points int32) {
	var n, s, ss, p, pp float64
	for i := range t.groups {
		g := &t.groups[i]
		x, y := float64(g.fits[0].Seconds), float64(g.points[typical])
		n, s, ss, p, pp = n+1, s+x, ss+x*x, p+y, pp+y*y
	}
	deviation := func(sum, squares float64) int32 {
		return int32(max(1, math.Round(math.Sqrt(max(0, squares/n-sum/n*sum/n)))))
	}
	return deviation(s, ss), deviation(p, pp)
}

// hopeless says that no choice is better than the best where programs of the tree are proved to cost so much, in the
// proof's units.
func (t *tree) hopeless(total int64) bool {
	if t.roomy {
		return total > 0
	}
	return t.p.round(t.proof.Ceil(total)) >= t.best.objective
}
