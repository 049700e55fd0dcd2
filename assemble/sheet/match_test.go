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
