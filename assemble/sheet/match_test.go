package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// The line from each clock ends at the time that the clock's hands show.
func TestLinesJoinWhatBelongsTogether(t *testing.T) {
	for _, asked := range []string{"match 4:00, 7:00", "match 4:00, 7:00, 11:00, 2:30", "match 1:05, 2:10, 3:15, 4:20, 5:25, 6:30"} {
		m := task.MustParse(asked).(task.Match)
		r := record(t, testKit(t, true), m, task.LookMatch)
		joined := 0
		for _, line := range r.lines {
			if math.Abs(line.to.x-line.from.x) < 12 {
				continue // a tick
			}
			minutes := dialAt(r, line.from)
			if got := textAt(r, line.to); got != fmt.Sprintf("%d:%02d", (minutes/60+11)%12+1, minutes%60) {
				t.Errorf("%s: a clock showing minute %d of the half day is joined with %s", asked, minutes, got)
			}
			joined++
		}
		if joined != m.N {
			t.Errorf("%s: %d lines, want %d", asked, joined, m.N)
		}
	}
}

// dialAt reads the clock beside a dot: minutes since 12.
func dialAt(r *recorder, dot point) int {
	for i := 0; i < len(r.polygons); i += 2 {
		short, long := r.polygons[i], r.polygons[i+1]
		for _, c := range r.circles {
			if c.radius > 5 && math.Abs(c.middle.y-dot.y) < 1 && math.Abs(c.middle.x-dot.x) < c.radius+joinSpace+1 && distance(c.middle, short[4]) < hourWidth*c.radius {
				hour := int(angle(c.middle, short[2])/30 + 1e-9)
				return hour*60 + int(math.Round(angle(c.middle, long[2])/6))
			}
		}
	}
	return -1
}

// textAt is the time beside a dot.
func textAt(r *recorder, dot point) string {
	for _, text := range r.texts {
		if strings.Contains(text.s, ":") && math.Abs(math.Abs(text.at.x-dot.x)-text.w/2) < 3*joinSpace && math.Abs(text.at.y-dot.y) < text.size {
			return text.s
		}
	}
	return ""
}

func TestTimesAreShuffledTheSameWayEachTime(t *testing.T) {
	for minute := range 60 {
		m := task.MustParse(fmt.Sprintf("match 4:%02d, 7:00, 11:00", minute)).(task.Match)
		order := shuffled(m)
		if fmt.Sprint(order) != fmt.Sprint(shuffled(m)) {
			t.Fatalf("%s is shuffled in two ways", m)
		}
		if order[0] == 0 && order[1] == 1 {
			t.Errorf("%s: the times stand in the order of the clocks", m)
		}
	}
}

// In large print clocks to match are about as large as in usual print or larger, none touches another, and the line to its dot crosses no
// other clock.
func TestLargeClocksToMatch(t *testing.T) {
	for _, asked := range []string{"match 4:00, 7:00", "match 4:00, 7:00, 11:00", "match 4:00, 7:00, 11:00, 2:30", "match 1:05, 2:10, 3:15, 4:20, 5:25, 6:30"} {
		for _, paper := range []string{"letter", "a4"} {
			radius := map[bool]float64{}
			for _, large := range []bool{false, true} {
				s, err := Options{PaperSize: paper, Large: large, Font: BuiltInFont}.settle()
				if err != nil {
					t.Fatal(err)
				}
				k := s.kit
				k.width -= s.label()
				r := record(t, k, task.MustParse(asked), task.LookMatch)
				var dials []drawnCircle
				for _, c := range r.circles {
					if c.radius > 5 {
						dials = append(dials, c)
						radius[large] = s.scale * c.radius
					}
				}
				for i, dial := range dials {
					for _, other := range dials[:i] {
						if distance(dial.middle, other.middle) < dial.radius+other.radius {
							t.Errorf("%s, large %v: two clocks touch", asked, large)
						}
					}
					for _, line := range r.lines {
						level := line.from.y == line.to.y && line.to.x > line.from.x+1
						through := line.from.x < dial.middle.x && line.to.x > dial.middle.x+dial.radius
						if y := math.Abs(line.from.y - dial.middle.y); level && y > .01 && y < dial.radius && through {
							t.Errorf("%s, large %v: a line crosses a clock", asked, large)
						}
					}
				}
			}
			if radius[true] < .95*radius[false] {
				t.Errorf("%s on %s: clocks of %.1f mm in large print, of %.1f in usual", asked, paper, radius[true], radius[false])
			}
		}
	}
}
