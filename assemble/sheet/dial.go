package sheet

import (
	"math"
	"strconv"

	"evenhand/standards/words"
)

// The parts of a dial as shares of its radius. The numerals stand outside the
// ticks and the hands end inside them, so that no hand ever hides a numeral.
const (
	numeralAt    = .855
	numeralSize  = .19
	tickOuter    = .715
	tickInner    = .68
	hourTick     = .65
	hourLength   = .43 // short and thick
	minuteLength = .66 // long and thin
	hourWidth    = .085
	minuteWidth  = .036
	rimWidth     = .03
	hubRadius    = .055
)

// dial is a clock face with its hands, or without when the time is nil.
func (k kit) dial(radius float64, t *words.Time) drawing {
	return drawing{2 * radius, 2 * radius, k.size / 2, func(c canvas, at point) {
		middle := point{at.x + radius, at.y + radius}
		c.circle(middle, radius, style{line: rimWidth * radius, fill: white})
		for minute := range 60 {
			drawTick(c, middle, radius, minute)
		}
		l := lettering{size: numeralSize * radius, align: centre}
		for hour := 1; hour <= 12; hour++ {
			p := polar(middle, numeralAt*radius, float64(30*hour))
			c.text(point{p.x, p.y + k.face.digit*l.size/2}, strconv.Itoa(hour), l)
		}
		if t != nil {
			drawHand(c, middle, hourLength*radius, hourWidth*radius, t.HourHand())
			drawHand(c, middle, minuteLength*radius, minuteWidth*radius, t.MinuteHand())
		}
		c.circle(middle, hubRadius*radius, style{fill: black})
	}}
}

func drawTick(c canvas, middle point, radius float64, minute int) {
	inner, width := tickInner, thin
	if minute%5 == 0 {
		inner, width = hourTick, max(thin, .026*radius)
	}
	degrees := float64(6 * minute)
	c.line(polar(middle, inner*radius, degrees), polar(middle, tickOuter*radius, degrees), style{line: width})
}

// drawHand is a bar with a point, its third corner the tip. It reaches a little over
// the middle.
func drawHand(c canvas, middle point, length, width, degrees float64) {
	tail, neck := polar(middle, -width, degrees), polar(middle, length-1.5*width, degrees)
	c.polygon([]point{
		polar(tail, width/2, degrees-90),
		polar(neck, width/2, degrees-90),
		polar(middle, length, degrees),
		polar(neck, width/2, degrees+90),
		polar(tail, width/2, degrees+90),
	}, style{fill: black})
}

// polar is the point at a distance from the middle, at an angle in degrees
// clockwise from the 12.
func polar(middle point, distance, degrees float64) point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return point{middle.x + distance*sin, middle.y - distance*cos}
}
