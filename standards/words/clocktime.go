package words

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Half says which half of the day a time is in; empty where nobody says.
type Half string

// The halves of the day.
const (
	Morning   Half = "am" // midnight to noon
	Afternoon Half = "pm" // noon to midnight
)

// Time is a time as a 12-hour dial shows it.
type Time struct {
	Hour   int // 1 to 12
	Minute int // 0 to 59
	Half   Half
}

// HourHand is the hour hand's angle in degrees clockwise from the 12:
// 30·(h mod 12) + m/2.
func (t Time) HourHand() float64 { return float64(t.Hour%12*30) + float64(t.Minute)/2 }

// MinuteHand is the minute hand's angle in degrees clockwise from the 12: 6m.
func (t Time) MinuteHand() float64 { return float64(t.Minute * 6) }

// Between is the smaller angle between the hands in degrees, 0 to 180.
func (t Time) Between() float64 {
	gap := t.HourHand() - t.MinuteHand()
	if gap < 0 {
		gap = -gap
	}
	return min(gap, 360-gap)
}

// String is "4:30", "4:30 am" or "4:30 pm".
func (t Time) String() string { return strings.TrimSpace(t.Dial() + " " + string(t.Half)) }

// Dial is the time without its half of the day.
func (t Time) Dial() string { return fmt.Sprintf("%d:%02d", t.Hour, t.Minute) }

// ClockSteps are the values of the trait clock_step from coarse to fine.
var ClockSteps = []string{"hour", "half-hour", "quarter-hour", "five-minute", "minute"}

// Step is the coarsest of hour, half-hour, quarter-hour, five-minute and minute
// that fits.
func (t Time) Step() string {
	for i, minutes := range []int{60, 30, 15, 5} {
		if t.Minute%minutes == 0 {
			return ClockSteps[i]
		}
	}
	return ClockSteps[4]
}

var timePattern = regexp.MustCompile(`^([0-9]{1,2})(?:[:.h]([0-9]{1,2}))?(?::00)? ?(am|pm|a\.m\.?|p\.m\.?|in the morning|in the afternoon|in the evening)?$`)

// ParseTime reads a time: "4:30", "4:30 pm", "16:30" (hours 00-23 and minutes
// of two digits as in RFC 3339, and 24:00 for the end of a day), "half past 4", "4 o'clock", "quarter to five",
// "twenty past 3", also in Spanish ("4 y media").
func ParseTime(text string) (Time, error) {
	clean := timeText(text)
	if t, ok := wordTime(clean); ok {
		return t, nil
	}
	m := timePattern.FindStringSubmatch(clean)
	if m == nil || m[2] == "" && m[3] == "" {
		return Time{}, Errorf("%q is not a time; write 4:30, 16:30, half past 4 or 4 o'clock", strings.TrimSpace(text))
	}
	hour, _ := strconv.Atoi(m[1])
	minute, _ := strconv.Atoi(m[2])
	if hour == 24 && m[2] == "00" {
		hour = 0
	}
	switch {
	case m[2] != "" && len(m[2]) != 2:
		return Time{}, Errorf("%q has one digit for the minutes; write two, as in %d:%02d", clean, hour, minute)
	case minute > 59:
		return Time{}, Errorf("%q has %d minutes; an hour has 60, so minutes go from 00 to 59", clean, minute)
	case hour > 23:
		return Time{}, Errorf("%q has hour %d; hours go from 00 to 23", clean, hour)
	}
	return halved(hour, minute, m[3])
}

// LooksLikeTime says that a text was meant as a time although it is none, such as 4:75.
func LooksLikeTime(text string) bool {
	m := timePattern.FindStringSubmatch(text)
	return m != nil && (m[3] != "" || m[2] != "" && strings.Contains(text, ":"))
}

// halved makes a time from an hour of 0 to 23 and what is said of the half of the day.
func halved(hour, minute int, said string) (Time, error) {
	t := Time{(hour+11)%12 + 1, minute, ""}
	switch {
	case strings.HasPrefix(said, "a") || said == "in the morning":
		t.Half = Morning
	case said != "":
		t.Half = Afternoon
	}
	switch {
	case hour > 12 && t.Half == Morning:
		return Time{}, Errorf("%d:%02d is not in the morning; write %s pm or %d:%02d", hour, minute, t.Dial(), hour, minute)
	case hour > 12:
		t.Half = Afternoon
	case hour == 0 && t.Half == Afternoon:
		return Time{}, Errorf("0:%02d is not in the afternoon; write 12:%02d pm", minute, minute)
	case hour == 0:
		t.Half = Morning
	}
	return t, nil
}

// SameDial says that two times put the hands in the same place and do not
// contradict each other about the half of the day.
func SameDial(a, b Time) bool {
	return a.Hour == b.Hour && a.Minute == b.Minute && (a.Half == b.Half || a.Half == "" || b.Half == "")
}
