package words_test

import (
	"testing"

	"evenhand/standards/words"
)

// Every minute of the day, and of a dial alone, reads back from its words in both languages.
func TestTimesReadBackFromTheirWords(t *testing.T) {
	for minute := range 12 * 60 {
		for _, half := range []words.Half{"", words.Morning, words.Afternoon} {
			at := words.Time{Hour: (minute/60+11)%12 + 1, Minute: minute % 60, Half: half}
			for _, lang := range []string{"en", "es"} {
				got, err := words.ParseTime(at.Words(lang))
				if err != nil || got != at {
					t.Errorf("%s is said as %q, which reads as %s (%v)", at, at.Words(lang), got, err)
				}
			}
			if got, err := words.ParseTime(at.Printed()); err != nil || got != at {
				t.Errorf("%s is printed as %q, which reads as %s (%v)", at, at.Printed(), got, err)
			}
		}
	}
}

// How times are said in the United States and in Mexico: the Diccionario panhispánico de dudas,
// "hora" (America: un cuarto para las cinco), and common practice, from memory.
func TestTimesAreSaidAsPeopleDo(t *testing.T) {
	for text, want := range map[string][2]string{
		"4:00": {"4 o'clock", "las 4 en punto"}, "5:45": {"quarter to 6", "un cuarto para las 6"}, "6:50": {"10 minutes to 7", "10 para las 7"},
		"3:13": {"13 minutes past 3", "las 3 y 13"}, "2:59": {"1 minute to 3", "1 para las 3"}, "12:45": {"quarter to 1", "un cuarto para la 1"},
		"9:15 pm": {"quarter past 9 at night", "las 9 y cuarto de la noche"}, "6:15 pm": {"quarter past 6 in the evening", "las 6 y cuarto de la tarde"},
		"11:45 am": {"quarter to 12 noon", "un cuarto para las 12 del mediodía"}, "11:45 pm": {"quarter to 12 midnight", "un cuarto para las 12 de la noche"},
		"12:00 pm": {"12 o'clock noon", "las 12 en punto del mediodía"}, "12:00 am": {"12 o'clock midnight", "las 12 en punto de la noche"},
		"12:15 am": {"quarter past 12 at night", "las 12 y cuarto de la noche"}, "8:30 am": {"half past 8 in the morning", "las 8 y media de la mañana"},
	} {
		at, err := words.ParseTime(text)
		if got := [2]string{at.Words("en"), at.Words("es")}; err != nil || got != want {
			t.Errorf("%s is said as %q, want %q (%v)", text, got, want, err)
		}
	}
}

// "Quarter to 12" belongs to the hour that comes.
func TestHalvesOfSaidTimes(t *testing.T) {
	for text, want := range map[string]string{
		"quarter to 12 pm": "11:45 am", "quarter to noon": "11:45 am", "quarter to midnight": "11:45 pm", "quarter to 12 a.m.": "11:45 pm",
		"quarter to 12 in the morning": "11:45 am", "quarter to 1 pm": "12:45 pm", "12 noon": "12:00 pm", "12 midnight": "12:00 am",
		"ten to five in the afternoon": "4:50 pm", "las 8 y media de la noche": "8:30 pm", "half past 12 at night": "12:30 am", "cuarto para las cinco": "4:45",
	} {
		if got, err := words.ParseTime(text); err != nil || got.String() != want {
			t.Errorf("%q reads as %s (%v), want %s", text, got, err, want)
		}
	}
}
