package sheet

import (
	"hash/fnv"
	"math/rand/v2"

	"evenhand/standards"
)

// Sizes of a matching item in millimetres.
const (
	matchRadius = 14.0
	matchPitch  = 33.0 // from one clock to the next
	matchReach  = 55.0 // from the dots at the clocks to those at the times
	joinRadius  = 1.1
)

// match sets clock faces on the left and their times, in another order, on the
// right, each with a dot to join.
func match(k kit, task standards.Task) (drawing, bool) {
	m, ok := task.(standards.Match)
	if !ok {
		return drawing{}, false
	}
	order := shuffled(m)
	from, to := 2*matchRadius+4, 2*matchRadius+4+matchReach
	height := 2*matchRadius + matchPitch*float64(m.N-1)
	d := drawing{w: to + 6*k.size, h: height, axis: k.size / 2}
	d.paint = func(c canvas, at point) {
		level := func(i int) float64 { return at.y + matchRadius + matchPitch*float64(i) }
		for i, t := range m.List() {
			k.dial(matchRadius, &t).paint(c, point{at.x, level(i) - matchRadius})
			c.circle(point{at.x + from, level(i)}, joinRadius, style{fill: black})
		}
		for place, i := range order {
			c.circle(point{at.x + to, level(place)}, joinRadius, style{fill: black})
			print := k.text(m.Times[i].String())
			print.paint(c, point{at.x + to + 4, level(place) - print.axis})
			if k.key {
				c.line(point{at.x + from, level(i)}, point{at.x + to, level(place)}, thick)
			}
		}
	}
	return d, true
}

// shuffled is the order of the times on the right: the same for the same task, and
// never the order on the left.
func shuffled(m standards.Match) []int {
	hash := fnv.New64a()
	_, _ = hash.Write([]byte(m.String()))
	order := rand.New(rand.NewPCG(hash.Sum64(), 0)).Perm(m.N)
	for i, place := range order {
		if i != place {
			return order
		}
	}
	return append(order[1:], order[0])
}
