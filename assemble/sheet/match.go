package sheet

import (
	"fmt"
	"math"
	"strings"

	"evenhand/standards/task"
)

// Sizes of a matching item in millimetres.
const (
	matchRadius = 21.0 // of a clock, at most
	matchGap    = 4.0  // between clocks one below the other
	matchReach  = 60.0 // from the dots at the clocks to those at the times, at most
	leastReach  = 12.0
	joinSpace   = 4.0 // from a dot to its clock or its time
	joinRadius  = 1.2
	oneSided    = 2 // so many clocks stand on one side; more stand on both sides of their times
)

// match sets clock faces and their times, in another order, each with a dot to join. Two
// clocks stand on the left; more stand on both sides of their times, which saves half a page.
func match(k kit, asked task.Task) (drawing, bool) {
	m, ok := asked.(task.Match)
	if !ok {
		return drawing{}, false
	}
	times := 0.0
	for _, t := range m.List() {
		times = max(times, k.text(t.Printed()).w)
	}
	f := k.matchOf(m, times, 1)
	if both := k.matchOf(m, times, 2); m.N > oneSided && both.radius > .9*f.radius {
		f = both
	}
	if zigzag := k.zigzagOf(m, times); m.N > oneSided && zigzag.radius > worthZigzag*f.radius {
		f = zigzag
	}
	return drawing{w: f.width(), h: f.height(), axis: k.size / 2, paint: f.paint}, true
}

// worthZigzag is by how much larger clocks must be for standing in two columns by turns, as in large print.
const worthZigzag = 1.15

// zigzagOf lays out a matching item with the clocks in two columns by turns, each with a thin line that leads past
// its neighbours to its dot. Middles lie r + g/2 below each other and as far aside as keeps the gap g
// between neighbours: (r + g/2)·√3.
func (k kit) zigzagOf(m task.Match, times float64) matchField {
	const half = matchGap / 2
	n, middle := float64(m.N), times+joinSpace
	byHeight := (k.height - half*(n-1)) / (n + 1)
	byWidth := (k.width - middle - leastReach - joinSpace - half*math.Sqrt(3)) / (2 + math.Sqrt(3))
	radius := min(matchRadius, byHeight, byWidth)
	aside := (radius + half) * math.Sqrt(3)
	from := 2*radius + aside + joinSpace
	return matchField{k, m, 1, from, min(matchReach, k.width-middle-from), radius + half, radius, middle, aside}
}

// matchOf lays out a matching item with the clocks on one or on both sides of times so wide.
func (k kit) matchOf(m task.Match, times float64, sides int) matchField {
	rows := (m.N + sides - 1) / sides
	middle := times + float64(sides)*joinSpace
	radius := min(matchRadius, (k.height/float64(rows)-matchGap)/2, (k.width-middle-float64(sides)*(joinSpace+leastReach))/float64(2*sides))
	reach := min(matchReach, (k.width-middle)/float64(sides)-2*radius-joinSpace)
	return matchField{k, m, sides, 2*radius + joinSpace, reach, 2*radius + matchGap, radius, middle, 0}
}

// matchField is where things stand in a matching item: lengths in millimetres.
type matchField struct {
	kit
	m      task.Match
	sides  int
	from   float64 // from the edge to the dots at the clocks
	reach  float64 // from there to the dots at the times
	pitch  float64 // from one clock to the next below
	radius float64
	middle float64 // width of the times with the room to their dots
	aside  float64 // how far every other clock stands aside, 0 where all stand in line
}

// height is from the top of the first clock to the foot of the last.
func (f matchField) height() float64 {
	rows := (f.m.N + f.sides - 1) / f.sides
	return float64(rows-1)*f.pitch + 2*f.radius
}

func (f matchField) width() float64 { return float64(f.sides)*(f.from+f.reach) + f.middle }

// clock is the side, 0 or 1, and the height of a clock's middle.
func (f matchField) clock(i int) (side int, y float64) {
	return i % f.sides, f.radius + f.pitch*float64(i/f.sides)
}

// timeAt is the height of the middle of a time: they share the height of the clocks evenly.
func (f matchField) timeAt(place int) float64 {
	if f.sides == 1 {
		return f.radius + f.pitch*float64(place)
	}
	rows := (f.m.N + 1) / 2
	return (float64(rows)*f.pitch - matchGap) * (float64(place) + .5) / float64(f.m.N)
}

func (f matchField) paint(c canvas, at point) {
	order := shuffled(f.m)
	place := make([]int, f.m.N) // of each clock's time
	for p, i := range order {
		place[i] = p
	}
	left, right := at.x+f.from+f.reach, at.x+f.from+f.reach+f.middle
	for i, t := range f.m.List() {
		side, y := f.clock(i)
		corner, dot, goal := at.x, at.x+f.from, left
		if side == 1 {
			corner, dot, goal = at.x+f.width()-2*f.radius, at.x+f.width()-f.from, right
		}
		if f.aside > 0 {
			corner += f.aside * float64(i%2)
			c.line(point{corner + 2*f.radius, at.y + y}, point{dot, at.y + y}, style{line: thin})
		}
		f.dial(f.radius, &t).paint(c, point{corner, at.y + y - f.radius})
		c.circle(point{dot, at.y + y}, joinRadius, style{fill: black})
		if f.key {
			c.line(point{dot, at.y + y}, point{goal, at.y + f.timeAt(place[i])}, style{line: thick})
		}
	}
	for p, i := range order {
		y := at.y + f.timeAt(p)
		print := f.text(f.m.Times[i].Printed())
		print.paint(c, point{left + joinSpace, y - print.axis})
		c.circle(point{left, y}, joinRadius, style{fill: black})
		if f.sides == 2 {
			c.circle(point{right, y}, joinRadius, style{fill: black})
		}
	}
}

// shuffled is the order of the times on the right: the same for the same task, and
// never the order on the left.
func shuffled(m task.Match) []int {
	order := randomBy(m.String(), 0).Perm(m.N)
	for i, place := range order {
		if i != place {
			return order
		}
	}
	return append(order[1:], order[0])
}

var (
	timesSaid   = phrase{"The times: %s.", "Las horas: %s."}
	clockNumber = phrase{"Clock %d.", "Reloj %d."}
)

func matchAloud(k kit, asked task.Task) []string {
	m := asked.(task.Match)
	said := []string{m.Prompt(k.lang)}
	for i, t := range m.List() {
		said = append(said, fmt.Sprintf(k.say(clockNumber), i+1), k.handsAloud(t))
	}
	var times []string
	for _, i := range shuffled(m) {
		times = append(times, m.Times[i].Printed())
	}
	return append(said, fmt.Sprintf(k.say(timesSaid), strings.Join(times, ", ")))
}
