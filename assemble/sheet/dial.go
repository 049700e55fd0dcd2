package sheet

import (
	"math"
	"strconv"

	"evenhand/standards"
)

// The parts of a dial as shares of its radius. The numerals stand outside the
// ticks and the hands end inside them, so that no hand ever hides a numeral.
const (
	numeralAt    = .845
	numeralSize  = .2
	tickOuter    = .70
	tickInner    = .65
	hourTick     = .61
	hourLength   = .38 // short and thick
	minuteLength = .63 // long and thin
	hourWidth    = .11
	minuteWidth  = .055
	tailLength   = .1
)

// dial is a clock face with its hands, or without when the time is nil.
func (k kit) dial(radius float64, t *standards.Time) drawing {
	return drawing{2 * radius, 2 * radius, k.size / 2, func(c canvas, at point) {
		middle := point{at.x + radius, at.y + radius}
		c.circle(middle, radius, style{line: thick, fill: white})
		for minute := range 60 {
			drawTick(c, middle, radius, minute)
		}
		l := lettering{size: numeralSize * radius, align: centre}
		for hour := 1; hour <= 12; hour++ {
			p := polar(middle, numeralAt*radius, float64(30*hour))
			c.text(point{p.x, p.y + k.face.caps*l.size/2}, strconv.Itoa(hour), l)
		}
		if t != nil {
			drawHand(c, middle, hourLength*radius, hourWidth*radius, t.HourHand())
			drawHand(c, middle, minuteLength*radius, minuteWidth*radius, t.MinuteHand())
		}
		c.circle(middle, .045*radius, style{fill: black})
	}}
}

func drawTick(c canvas, middle point, radius float64, minute int) {
	inner, width := tickInner, thin
	if minute%5 == 0 {
		inner, width = hourTick, thick
	}
	degrees := float64(6 * minute)
	c.line(polar(middle, inner*radius, degrees), polar(middle, tickOuter*radius, degrees), width)
}

// drawHand is a slim kite: tail, side, tip, side.
func drawHand(c canvas, middle point, length, width, degrees float64) {
	c.polygon([]point{
		polar(middle, tailLength*length, degrees+180),
		polar(polar(middle, .15*length, degrees), width/2, degrees+90),
		polar(middle, length, degrees),
		polar(polar(middle, .15*length, degrees), width/2, degrees-90),
	}, style{line: thin, fill: black})
}

// polar is the point at a distance from the middle, at an angle in degrees
// clockwise from the 12.
func polar(middle point, distance, degrees float64) point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return point{middle.x + distance*sin, middle.y - distance*cos}
}
