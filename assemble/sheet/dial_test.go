package sheet

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// angle is the direction from the middle to a place, in degrees clockwise from the 12.
func angle(middle, p point) float64 {
	degrees := math.Atan2(p.x-middle.x, middle.y-p.y) * 180 / math.Pi
	return math.Mod(degrees+360, 360)
}

func distance(a, b point) float64 { return math.Hypot(a.x-b.x, a.y-b.y) }

// hands reads the angles of the short thick and the long thin hand off a dial.
func hands(t *testing.T, r *recorder) (hour, minute float64) {
	t.Helper()
	if len(r.polygons) != 2 {
		t.Fatalf("%d hands, want 2", len(r.polygons))
	}
	middle := r.circles[0].middle
	short, long := r.polygons[0], r.polygons[1]
	if distance(middle, short[2]) > .7*distance(middle, long[2]) || distance(short[1], short[3]) < 2*distance(long[1], long[3]) {
		t.Fatal("the hour hand is not clearly shorter and thicker than the minute hand")
	}
	return angle(middle, short[2]), angle(middle, long[2])
}

// Geometry of a 12-hour dial: hour hand 30(h mod 12) + m/2 degrees, minute hand 6m.
func TestHandsOfAllTimes(t *testing.T) {
	for hour := 1; hour <= 12; hour++ {
		for m := range 60 {
			r := recordText(t, false, fmt.Sprintf("read %d:%02d", hour, m), task.LookClockFace)
			gotHour, gotMinute := hands(t, r)
			wantHour, wantMinute := float64(hour%12*30)+float64(m)/2, float64(6*m)
			if math.Abs(gotHour-wantHour) > 1e-6 || math.Abs(gotMinute-wantMinute) > 1e-6 {
				t.Errorf("%d:%02d has its hands at %.2f and %.2f degrees, want %.2f and %.2f", hour, m, gotHour, gotMinute, wantHour, wantMinute)
			}
		}
	}
}

// Worked by hand from the same geometry: at half past four the hour hand is half
// way from the 4 (120) to the 5 (150), the minute hand on the 6 (180).
func TestHalfPastFour(t *testing.T) {
	if hour, minute := hands(t, recordText(t, false, "read 4:30", task.LookClockFace)); math.Abs(hour-135) > 1e-9 || math.Abs(minute-180) > 1e-9 {
		t.Errorf("hands at %v and %v degrees, want 135 and 180", hour, minute)
	}
}

func TestNumeralsAndTicks(t *testing.T) {
	r := recordText(t, false, "draw 4:30", task.LookBlankFace)
	middle, ticks, numerals := r.circles[0].middle, 0, 0
	for _, line := range r.lines {
		if math.Abs(angle(middle, line.from)-angle(middle, line.to)) > 1e-6 || math.Abs(angle(middle, line.to)-float64(6*ticks)) > 1e-6 {
			t.Errorf("tick %d does not stand at %d degrees", ticks, 6*ticks)
		}
		ticks++
	}
	for _, text := range r.texts {
		n, err := strconv.Atoi(text.s)
		if err != nil {
			continue // the time to draw
		}
		numerals++
		place := point{text.at.x, text.at.y - r.face.digit*text.size/2}
		if math.Abs(angle(middle, place)-float64(n*30%360)) > 1e-6 {
			t.Errorf("numeral %d stands at %v degrees", n, angle(middle, place))
		}
	}
	if ticks != 60 || numerals != 12 {
		t.Errorf("%d ticks and %d numerals, want 60 and 12", ticks, numerals)
	}
}

func TestBlankFaceGetsItsHandsOnTheKey(t *testing.T) {
	if r := recordText(t, false, "draw 7:20", task.LookBlankFace); len(r.polygons) != 0 {
		t.Error("the face to draw on already has hands")
	}
	// Geometry of a 12-hour dial: 7:20 is 220 and 120 degrees.
	if hour, minute := hands(t, recordText(t, true, "draw 7:20", task.LookBlankFace)); math.Abs(hour-220) > 1e-9 || math.Abs(minute-120) > 1e-9 {
		t.Errorf("hands at %v and %v degrees, want 220 and 120", hour, minute)
	}
}

func TestClockFaceKey(t *testing.T) {
	for asked, want := range map[string]string{"read 4:05": "[4 : 05]", "read 7:25 pm": "[7 : 25 It is evening. a.m. p.m.]", "say 4:15": "[quarter past 4]"} {
		r := recordText(t, true, asked, task.LookClockFace)
		if got := fmt.Sprint(r.words()[12:]); got != want {
			t.Errorf("%s: the key reads %s, want %s", asked, got, want)
		}
	}
}

// On any dial the numerals keep clear of rim, ticks and hands, and nothing of a hand points the other
// way: each corner lies within half a hand's width of the middle or on the side of its tip.
func TestNothingOnADialTouches(t *testing.T) {
	k := testKit(t, false)
	for _, radius := range []float64{16, 18, matchRadius, dialRadius} {
		parts := k.dialOf(radius)
		r := &recorder{face: k.face}
		k.dial(radius, &words.Time{Hour: 10, Minute: 50}).paint(r, point{})
		middle := r.circles[0].middle
		for _, text := range r.texts {
			if text.size < leastPrint {
				t.Errorf("a dial of %.0f mm has numerals of %.1f points", radius, text.size/pointSize)
			}
			for _, x := range []float64{text.at.x - text.w/2, text.at.x + text.w/2} {
				for _, y := range []float64{text.at.y, text.at.y - k.face.digit*text.size} {
					if d := distance(middle, point{x, y}); d < parts.ticks || d > radius {
						t.Errorf("on a dial of %.0f mm a corner of %s is %.2f mm from the middle, the ticks end at %.2f", radius, text.s, d, parts.ticks)
					}
				}
			}
		}
		for _, hand := range r.polygons {
			tip := hand[2]
			for _, corner := range hand {
				along := ((corner.x-middle.x)*(tip.x-middle.x) + (corner.y-middle.y)*(tip.y-middle.y)) / distance(tip, middle)
				if along < -1e-6 {
					t.Errorf("a hand reaches %.2f mm to the other side", -along)
				}
			}
			if distance(middle, tip) > parts.ticks-tickLength*radius {
				t.Error("a hand runs into the ticks")
			}
		}
	}
}
