package task_test

import (
	"testing"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

func TestHands(t *testing.T) {
	// Geometry of a 12-hour dial: hour hand 30(h mod 12) + m/2 degrees, minute hand 6m.
	for _, row := range []struct {
		time                  string
		hour, minute, between float64
	}{{"3:30", 105, 180, 75}, {"9:15", 277.5, 90, 172.5}, {"7:20", 220, 120, 100}, {"12:30", 15, 180, 165}, {"4:30", 135, 180, 45}} {
		at, err := words.ParseTime(row.time)
		if err != nil {
			t.Fatal(err)
		}
		if at.HourHand() != row.hour || at.MinuteHand() != row.minute || at.Between() != row.between {
			t.Errorf("%s: %v / %v / %v, want %v / %v / %v", row.time, at.HourHand(), at.MinuteHand(), at.Between(), row.hour, row.minute, row.between)
		}
	}
}

func TestFiveMinuteFaces(t *testing.T) {
	// Full enumeration of the 144 faces: hands together only at 12:00, straight only at 6:00,
	// square only at 3:00 and 9:00.
	want := map[string]float64{"12:00": 0, "6:00": 180, "3:00": 90, "9:00": 90}
	for hour := 1; hour <= 12; hour++ {
		for minute := 0; minute < 60; minute += 5 {
			at := words.Time{Hour: hour, Minute: minute}
			angle, special := want[at.String()]
			between := at.Between()
			if isSpecial := between == 0 || between == 90 || between == 180; isSpecial != special || special && between != angle {
				t.Errorf("%s: %v degrees between the hands", at, between)
			}
			overlap := task.Clock{Verb: task.Read, Time: at}.Traits().Get(task.HandsOverlap)
			if (overlap == "true") != (at.String() == "12:00") {
				t.Errorf("%s: hands_overlap %s", at, overlap)
			}
		}
	}
}

func TestHandsMeet(t *testing.T) {
	// The hands meet 22 times in 24 hours, first after midnight at 1:05:27.27; found by
	// watching the minute hand pass the hour hand, second by second.
	passes, first, ahead := 0, 0, true
	for second := 1; second <= 24*3600; second++ {
		hour, minute := float64(second%43200)/120, float64(second%3600)/10
		now := minute >= hour && minute < hour+180 || minute < hour-180
		if now && !ahead {
			passes++
			if first == 0 {
				first = second
			}
		}
		ahead = now
	}
	if passes != 22 || first != 3928 { // the first whole second after 1:05:27.27
		t.Errorf("the hands meet %d times in 24 hours, first by second %d; want 22 and 3928", passes, first)
	}
}

func TestClockStep(t *testing.T) {
	for time, want := range map[string]string{
		"4:00": "hour", "4:30": "half-hour", "4:15": "quarter-hour", "4:45": "quarter-hour",
		"4:35": "five-minute", "4:37": "minute",
	} {
		if got := task.MustParse("read " + time).Traits().Get(task.ClockStep); got != want {
			t.Errorf("%s: %s, want %s", time, got, want)
		}
	}
}

func TestEveryTimeIsReadBackFromItsWords(t *testing.T) {
	for hour := 1; hour <= 12; hour++ {
		for minute := range 60 {
			for _, half := range []words.Half{"", words.Morning, words.Afternoon} {
				at := words.Time{Hour: hour, Minute: minute, Half: half}
				for _, text := range []string{at.String(), at.Words("en"), at.Words("es")} {
					if back, err := words.ParseTime(text); err != nil || back != at {
						t.Errorf("ParseTime(%q) = %v, %v; want %v", text, back, err, at)
					}
				}
			}
		}
	}
}
