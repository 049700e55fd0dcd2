package sheet

import (
	"fmt"
	"math"
	"strconv"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// The parts of a dial as shares of its radius. The numerals stand outside the
// ticks and the hands end inside them, so that no hand ever hides a numeral; where the
// ticks lie follows from the room that the numerals take.
const (
	rimWidth    = .03
	numeralSize = .18
	numeralGap  = .016 // between a numeral and the rim, and a numeral and a tick
	tickLength  = .035 // of a minute; an hour's is twice as long
	hourShare   = .68  // of the minute hand's length; and the hour hand is thick
	hourWidth   = .085
	minuteWidth = .036
	hubRadius   = .055
)

// leastPrint is the smallest type that a child reads: 12 points, and 18 in large print.
const leastPrint = 12 * pointSize

// dialParts are the lengths of a dial in millimetres from its middle.
type dialParts struct {
	numeral    lettering
	numeralAt  float64 // middle of a numeral
	ticks      float64 // outer end of the ticks
	minuteHand float64
	hourHand   float64
}

// dialOf lays out a dial: the numeral that reaches furthest along its own direction decides.
func (k kit) dialOf(radius float64) dialParts {
	l := lettering{size: max(numeralSize*radius, leastPrint), align: centre}
	reach := 0.0
	for hour := 1; hour <= 12; hour++ {
		sin, cos := math.Sincos(float64(hour) * math.Pi / 6)
		reach = max(reach, math.Abs(sin)*k.face.width(strconv.Itoa(hour), l)/2+math.Abs(cos)*k.face.digit*l.size/2)
	}
	at := radius*(1-rimWidth/2-numeralGap) - reach
	ticks := at - reach - numeralGap*radius
	hand := ticks - 2*tickLength*radius
	return dialParts{l, at, ticks, hand, hourShare * hand}
}

// dial is a clock face with its hands, or without when the time is nil.
func (k kit) dial(radius float64, t *words.Time) drawing {
	parts := k.dialOf(radius)
	return drawing{w: 2 * radius, h: 2 * radius, axis: k.size / 2, paint: func(c canvas, at point) {
		middle := point{at.x + radius, at.y + radius}
		c.circle(middle, radius, style{line: rimWidth * radius, fill: white})
		for minute := range 60 {
			drawTick(c, middle, radius, parts.ticks, minute)
		}
		for hour := 1; hour <= 12; hour++ {
			p := polar(middle, parts.numeralAt, float64(30*hour))
			c.text(point{p.x, p.y + k.face.digit*parts.numeral.size/2}, strconv.Itoa(hour), parts.numeral)
		}
		if t != nil {
			drawHand(c, middle, parts.hourHand, hourWidth*radius, t.HourHand())
			drawHand(c, middle, parts.minuteHand, minuteWidth*radius, t.MinuteHand())
		}
		c.circle(middle, hubRadius*radius, style{fill: black})
	}}
}

func drawTick(c canvas, middle point, radius, outer float64, minute int) {
	length, width := tickLength*radius, thin
	if minute%5 == 0 {
		length, width = 2*length, max(thin, .026*radius)
	}
	degrees := float64(6 * minute)
	c.line(polar(middle, outer-length, degrees), polar(middle, outer, degrees), style{line: width})
}

// drawHand is a bar with a point, its third corner the tip. It begins at the middle: no end of it
// points the other way.
func drawHand(c canvas, middle point, length, width, degrees float64) {
	neck := polar(middle, length-1.5*width, degrees)
	c.polygon([]point{
		polar(middle, width/2, degrees-90),
		polar(neck, width/2, degrees-90),
		polar(middle, length, degrees),
		polar(neck, width/2, degrees+90),
		polar(middle, width/2, degrees+90),
	}, style{fill: black})
}

// polar is the point at a distance from the middle, at an angle in degrees
// clockwise from the 12.
func polar(middle point, distance, degrees float64) point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return point{middle.x + distance*sin, middle.y - distance*cos}
}

// What is said of clocks: where the hands are, not what time that is.
var (
	handAt      = phrase{"The short hand points to the %d.", "La manecilla corta apunta al %d."}
	handBetween = phrase{"The short hand is between the %d and the %d.", "La manecilla corta está entre el %d y el %d."}
	longAt      = phrase{"The long hand points to the %d.", "La manecilla larga apunta al %d."}
	longPast    = phrase{"The long hand is %d small marks past the %d.", "La manecilla larga está %d rayitas después del %d."}
	clockSaid   = phrase{"A clock face.", "Un reloj."}
	blankClock  = phrase{"A clock face without hands.", "Un reloj sin manecillas."}
)

func clockAloud(k kit, asked task.Task) []string {
	t := asked.(task.Clock)
	return []string{k.say(clockSaid), k.handsAloud(t.Time), t.Prompt(k.lang)}
}

func blankFaceAloud(k kit, asked task.Task) []string {
	return []string{k.say(blankClock), asked.(task.Clock).Time.Printed() + "."}
}

func saidFaceAloud(k kit, asked task.Task) []string {
	return []string{k.say(blankClock), asked.(task.Clock).Time.Words(k.lang) + "."}
}

func saidTimeAloud(k kit, asked task.Task) []string {
	t := asked.(task.Clock).Time
	return []string{t.DayHint(k.lang), sayWithoutHalf(t, k.lang) + "."}
}

func sayWithoutHalf(t words.Time, lang string) string {
	t.Half = ""
	return t.Words(lang)
}

func (k kit) handsAloud(t words.Time) string {
	short := fmt.Sprintf(k.say(handAt), t.Hour)
	if t.Minute > 0 {
		short = fmt.Sprintf(k.say(handBetween), t.Hour, t.Hour%12+1)
	}
	numeral := (t.Minute/5+11)%12 + 1
	long := fmt.Sprintf(k.say(longAt), numeral)
	if past := t.Minute % 5; past > 0 {
		long = fmt.Sprintf(k.say(longPast), past, numeral)
	}
	return short + " " + long
}
