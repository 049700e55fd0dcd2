package sheet

import (
	"strings"
	"testing"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// A dial and the part of the day together settle the half: no time has the same hint in the
// morning and in the afternoon.
func TestDayHintsSettleTheHalf(t *testing.T) {
	for minute := range 12 * 60 {
		am := words.Time{Hour: (minute/60+11)%12 + 1, Minute: minute % 60, Half: words.Morning}
		pm := am
		pm.Half = words.Afternoon
		for _, lang := range []string{"en", "es"} {
			if am.DayHint(lang) == pm.DayHint(lang) {
				t.Errorf("%s and %s are both told as %q", am, pm, am.DayHint(lang))
			}
		}
	}
}

// Merriam-Webster and the dictionary of the Real Academia Española, from memory: morning ends at
// noon, afternoon at sunset, evening comes before bedtime; "tarde" lasts from noon to
// nightfall and "madrugada" from midnight to dawn.
func TestDayHintsAreTrue(t *testing.T) {
	for text, want := range map[string][2]string{
		"12:00 am": {"It is night.", "Es de noche."}, "2:15 am": {"It is night.", "Es de madrugada."}, "5:45 am": {"It is early morning.", "Es de madrugada."},
		"6:00 am": {"It is morning.", "Es de mañana."}, "11:45 am": {"It is morning.", "Es de mañana."}, "12:00 pm": {"It is daytime.", "Es de día."},
		"12:15 pm": {"It is afternoon.", "Es de tarde."}, "4:59 pm": {"It is afternoon.", "Es de tarde."}, "6:15 pm": {"It is evening.", "Es de tarde."},
		"9:15 pm": {"It is night.", "Es de noche."}, "11:59 pm": {"It is night.", "Es de noche."}, "4:30": {"", ""},
	} {
		at, err := words.ParseTime(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := [2]string{at.DayHint("en"), at.DayHint("es")}; got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// Wherever a half of the day is asked for, the sheet has the two to choose from, the direction
// says to circle one, the key has one ring, and no answer to choose gives the half away.
func TestHalvesAreAskedFor(t *testing.T) {
	for _, text := range []string{"read 7:25 pm", "read 11:45 am", "read 12:00 pm"} {
		asked := task.MustParse(text)
		for _, look := range asked.Looks() {
			said := directionOf(Question{Task: asked, Look: look})
			if !strings.Contains(said.en, "Circle a.m. or p.m.") || !strings.Contains(said.es, "Encierra a.m. o p.m.") {
				t.Errorf("%s as %s: the direction is %q", text, look, said)
			}
			sheet, key := recordText(t, false, text, look), recordText(t, true, text, look)
			spoken := strings.Join(sheet.words(), " ")
			if strings.Count(spoken, "a.m.") != 1 || strings.Count(spoken, "p.m.") != 1 || strings.Contains(spoken, " am") || strings.Contains(spoken, " pm") {
				t.Errorf("%s as %s: the sheet reads %q", text, look, spoken)
			}
			if rings := len(key.polygons) - len(sheet.polygons); rings != 1 {
				t.Errorf("%s as %s: %d rings on the key", text, look, rings)
			}
		}
	}
}
