package sheet

import (
	"math"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// A time in words stands over boxes for its digits, or over a face on which the key draws its
// hands, where the geometry of the dial puts them.
func TestTimesInWords(t *testing.T) {
	// Common practice, no source: how times are said.
	for text, want := range map[string]string{
		"read 4:30":    "half past 4 4 : 30",
		"read 9:45":    "quarter to 10 9 : 45",
		"read 2:05 pm": "5 minutes past 2 2 : 05 It is afternoon. a.m. p.m.",
	} {
		if got := strings.Join(recordText(t, true, text, task.LookSaidTime).words(), " "); got != want {
			t.Errorf("%s: the key reads %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"draw 4:30": "half past 4", "draw 9:45": "quarter to 10", "draw 12:00": "12 o'clock"} {
		said, digits := recordText(t, true, text, task.LookSaidFace), recordText(t, true, text, task.LookBlankFace)
		if said.words()[0] != want {
			t.Errorf("%s: the sheet gives %q, want %q", text, said.words()[0], want)
		}
		if len(said.polygons) != 2 || len(digits.polygons) != 2 || len(recordText(t, false, text, task.LookSaidFace).polygons) != 0 {
			t.Errorf("%s: %d hands on the key, want 2, and none on the sheet", text, len(said.polygons))
		}
		asked := task.MustParse(text).(task.Clock)
		hour, minute := hands(t, said)
		if math.Abs(hour-asked.Time.HourHand()) > .01 || math.Abs(minute-asked.Time.MinuteHand()) > .01 {
			t.Errorf("%s: the hands stand at %v and %v degrees", text, hour, minute)
		}
	}
}
