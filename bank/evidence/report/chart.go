package report

import (
	"fmt"
	"math"
	"strings"
)

// The pictures are plain SVG in black and grey, so that they print in grey and nothing
// is told by colour alone. Here are only the numbers; page.html draws.

// bar is a share with its range on a scale from none to all.
type bar struct {
	Low, High, At        string // x of the range and of the share
	Width                string // of the range
	Expected             string // x of what was expected; empty for none
	ExpectedL, ExpectedR string // left and right corner of its mark
}

const (
	barLeft, barWidth = 10.0, 220.0
	markSize          = 6.0
)

func barX(share float64) float64 { return barLeft + barWidth*share }

func px(x float64) string { return fmt.Sprintf("%.1f", x) }

// barOf draws a part; expected is NaN for none.
func barOf(p Part, expected float64) bar {
	var b bar
	if p.Of > 0 {
		s := p.Share()
		b.Low, b.High, b.At, b.Width = px(barX(s.Low)), px(barX(s.High)), px(barX(s.Value)), px(barWidth*(s.High-s.Low))
	}
	if !math.IsNaN(expected) {
		x := barX(expected)
		b.Expected, b.ExpectedL, b.ExpectedR = px(x), px(x-markSize), px(x+markSize)
	}
	return b
}

// line is a pupil's weeks, beside those of the class.
type line struct {
	Class string // points of the class's line
	Own   string // points of the pupil's line
	Dots  []dot
}

// dot is one week: its place, and the range it could be in.
type dot struct {
	X, Y, Top, Bottom string
	Few               bool
}

const (
	lineLeft, lineWidth = 12.0, 176.0
	lineTop, lineHeight = 8.0, 48.0
)

func lineX(week, weeks int) float64 {
	if weeks == 1 {
		return lineLeft + lineWidth/2
	}
	return lineLeft + lineWidth*float64(week)/float64(weeks-1)
}

func lineY(share float64) float64 { return lineTop + lineHeight*(1-share) }

func points(parts []Part) string {
	var list []string
	for i, p := range parts {
		if p.Of > 0 {
			list = append(list, px(lineX(i, len(parts)))+","+px(lineY(p.Share().Value)))
		}
	}
	return strings.Join(list, " ")
}

// lineOf draws a pupil's weeks.
func lineOf(p Pupil, class []Part) line {
	l := line{Class: points(class), Own: points(p.Weeks)}
	for i, week := range p.Weeks {
		if week.Of > 0 {
			s := week.Share()
			l.Dots = append(l.Dots, dot{px(lineX(i, len(p.Weeks))), px(lineY(s.Value)), px(lineY(s.High)), px(lineY(s.Low)), week.Few()})
		}
	}
	return l
}
