package sheet

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
	"strings"

	"evenhand/standards/task"
)

// Sizes of dots to count in millimetres. They are rings, so that a pencil can mark
// each one.
const (
	ringRadius  = 3.2
	ringPitch   = 9.0
	fieldCell   = 11.0
	fieldEdge   = 1.5
	fieldWidth  = 4*fieldCell + 2*fieldEdge
	fieldHeight = 3*fieldCell + 2*fieldEdge
)

// dots draws things to count, in rows of five or scattered, or an empty frame, and a box for how many.
func dots(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.HowMany)
	if !ok {
		return drawing{}, false
	}
	things := rings(t.Number, 5)
	if t.Number == 0 {
		things = framed(field(nil))
	}
	if t.Circle {
		things = circled(t.Number)
	}
	if t.Scattered {
		things = field(scattered(t.Number, asked.String()))
	}
	return row(4*k.gap(), things, k.answerBox(2, t.Key())), true
}

// rings are dots in rows of so many.
func rings(n, each int) drawing {
	var middles []point
	for i := range n {
		middles = append(middles, point{ringPitch * (float64(i%each) + .5), ringPitch * (float64(i/each) + .5)})
	}
	return ringsAt(ringPitch*float64(min(n, each)), ringPitch*float64((n+each-1)/each), middles)
}

// ringsAt are dots at places in a room of the given size.
func ringsAt(w, h float64, middles []point) drawing {
	return drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		for _, m := range middles {
			c.circle(point{at.x + m.x, at.y + m.y}, ringRadius, style{line: plain})
		}
	}}
}

// circled are dots in a circle, as far apart as those in rows.
func circled(n int) drawing {
	radius := ringPitch / (2 * math.Sin(math.Pi/float64(n)))
	side := 2*radius + ringPitch
	var middles []point
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		middles = append(middles, point{side/2 + radius*sin, side/2 - radius*cos})
	}
	return ringsAt(side, side, middles)
}

// field is the room for up to twelve dots that lie here and there.
func field(middles []point) drawing {
	return ringsAt(fieldWidth, fieldHeight, middles)
}

// scattered puts up to twelve dots in the cells of a field, each a little off the middle of
// its cell; the same seed gives the same places.
func scattered(n int, seed string) []point {
	return strewn(n, lattice{across: 4, down: 3, side: fieldCell, edge: fieldEdge, radius: ringRadius}, randomBy(seed, 1))
}

// lattice is squares in rows, for one round thing each; the edge lies around all. Lengths are in millimetres.
type lattice struct {
	across, down       int
	side, edge, radius float64
}

// strewn are the middles of so many things, each a little off the middle of a cell of its own.
func strewn(n int, in lattice, random *rand.Rand) (middles []point) {
	off := func() float64 { return (random.Float64() - .5) * (in.side - 2*in.radius - 1) }
	for _, cell := range random.Perm(in.across * in.down)[:n] {
		x, y := float64(cell%in.across)+.5, float64(cell/in.across)+.5
		middles = append(middles, point{in.edge + in.side*x + off(), in.edge + in.side*y + off()})
	}
	return middles
}

// randomBy is chance that falls the same way for the same text; of one text, each stream falls another way.
func randomBy(text string, stream uint64) *rand.Rand {
	hash := fnv.New64a()
	_, _ = hash.Write([]byte(text))
	return rand.New(rand.NewPCG(hash.Sum64(), stream))
}

var emptyFrameSaid = phrase{"An empty frame.", "Un marco vacío."}

var dotSaid = phrase{"dot", "punto"}

func dotsAloud(k kit, asked task.Task) []string {
	t := asked.(task.HowMany)
	if t.Number == 0 {
		return []string{t.Prompt(k.lang), k.say(emptyFrameSaid)}
	}
	return []string{t.Prompt(k.lang), k.things(dotSaid, t.Number, 5)}
}

// things names each of so many things, to be counted by ear, with a stop after each row of so many.
func (k kit) things(name phrase, n, each int) string {
	var b strings.Builder
	for i := 1; i <= n; i++ {
		b.WriteString(k.say(name))
		switch {
		case i == n:
			b.WriteString(".")
		case each > 0 && i%each == 0:
			b.WriteString("; ")
		default:
			b.WriteString(", ")
		}
	}
	return b.String()
}
