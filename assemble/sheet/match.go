package sheet

import (
	"hash/fnv"
	"math/rand/v2"

	"evenhand/standards/task"
)

// Sizes of a matching item in millimetres.
const (
	matchHeight = 200.0 // of all clocks together, at most
	matchPitch  = 44.0  // from one clock to the next, at most
	matchReach  = 60.0  // from the dots at the clocks to those at the times
	joinRadius  = 1.2
)

// match sets clock faces on the left and their times, in another order, on the
// right, each with a dot to join.
func match(k kit, asked task.Task) (drawing, bool) {
	m, ok := asked.(task.Match)
	if !ok {
		return drawing{}, false
	}
	order := shuffled(m)
	pitch := min(matchPitch, matchHeight/float64(m.N))
	radius := pitch/2 - 2
	from := 2*radius + 5
	to := from + matchReach
	d := drawing{w: to + 6*k.size, h: pitch*float64(m.N) - 4, axis: k.size / 2}
	d.paint = func(c canvas, at point) {
		level := func(i int) float64 { return at.y + radius + pitch*float64(i) }
		for i, t := range m.List() {
			k.dial(radius, &t).paint(c, point{at.x, level(i) - radius})
			c.circle(point{at.x + from, level(i)}, joinRadius, style{fill: black})
		}
		for place, i := range order {
			c.circle(point{at.x + to, level(place)}, joinRadius, style{fill: black})
			print := k.text(m.Times[i].Printed())
			print.paint(c, point{at.x + to + 4, level(place) - print.axis})
			if k.key {
				c.line(point{at.x + from, level(i)}, point{at.x + to, level(place)}, style{line: thick})
			}
		}
	}
	return d, true
}

// shuffled is the order of the times on the right: the same for the same task, and
// never the order on the left.
func shuffled(m task.Match) []int {
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
