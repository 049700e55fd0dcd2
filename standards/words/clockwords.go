package words

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// numberWords are the words for 0 to 20 in English; index is the number.
var numberWords = strings.Fields("zero one two three four five six seven eight nine ten " +
	"eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty")

// spanishHours are the words for 0 to 12 in Spanish, as hours are said.
var spanishHours = strings.Fields("cero una dos tres cuatro cinco seis siete ocho nueve diez once doce")

// spanishMinutes are the words for minutes in Spanish, by number.
var spanishMinutes = map[string]int{"diez": 10, "cinco": 5, "veinte": 20, "veinticinco": 25}

// wordNumber reads a number in digits or in words up to 59.
func wordNumber(text string) (int, bool) {
	if n, err := strconv.Atoi(text); err == nil && n >= 0 {
		return n, true
	}
	if n := slices.Index(numberWords, text); n >= 0 {
		return n, true
	}
	if n := slices.Index(spanishHours, text); n >= 0 {
		return n, true
	}
	if n, ok := spanishMinutes[text]; ok {
		return n, true
	}
	tens, ones, _ := strings.Cut(strings.ReplaceAll(text, "-", " "), " ")
	base, ok := map[string]int{"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50}[tens]
	if !ok {
		return 0, false
	}
	n := slices.Index(numberWords, ones)
	if ones == "" {
		n = 0
	}
	return base + n, n >= 0 && n <= 9
}

// wordTime reads a time said in words: "half past 4", "four o'clock", "ten to
// five", "quarter past 4 pm", "four thirty", "las 4 y media", "noon", "quarter to noon",
// "un cuarto para las 6 de la tarde".
func wordTime(text string) (Time, bool) {
	text = Unaccented(text)
	switch text {
	case "noon", "mediodia":
		return Time{12, 0, Afternoon}, true
	case "midnight", "medianoche":
		return Time{12, 0, Morning}, true
	}
	text, ending := cutPartOfDay(text)
	text = strings.TrimPrefix(strings.TrimPrefix(text, "las "), "la ")
	hour, minute, ok := saidTime(text)
	if !ok && ending.turns != 0 && text == "12" {
		hour, ok = 12, true
	}
	if !ok || hour < 1 || hour > 12 || minute > 59 {
		return Time{}, false
	}
	half := ending.halfOf(hour)
	if minute < 0 {
		if hour == 12 && !ending.keeps {
			half = half.other() // a quarter to 12 noon is before noon
		}
		hour, minute = (hour+10)%12+1, minute+60
	}
	return Time{hour, minute, half}, true
}

// saidTime reads the words; minute is negative for "to".
func saidTime(text string) (hour, minute int, ok bool) {
	for _, ending := range []string{" o'clock", " oclock", " o' clock", " en punto"} {
		if rest, found := strings.CutSuffix(text, ending); found {
			hour, ok = wordNumber(rest)
			return hour, 0, ok
		}
	}
	for _, row := range []struct {
		between string
		sign    int
		first   bool // minutes are said before the hour
	}{{" past ", 1, true}, {" after ", 1, true}, {" to ", -1, true}, {" before ", -1, true}, {" para ", -1, true}, {" y ", 1, false}, {" menos ", -1, false}} {
		a, b, found := strings.Cut(text, row.between)
		if !found {
			continue
		}
		if !row.first {
			a, b = b, a
		}
		minute, okMinute := wordMinutes(a)
		hour, okHour := wordNumber(strings.TrimPrefix(strings.TrimPrefix(b, "las "), "la "))
		return hour, row.sign * minute, okMinute && okHour
	}
	a, b, found := strings.Cut(text, " ") // "four thirty"
	if !found {
		return 0, 0, false
	}
	hour, okHour := wordNumber(a)
	rest, oh := strings.CutPrefix(b, "oh ")
	minute, okMinute := wordNumber(rest)
	return hour, minute, okHour && okMinute && (minute > 9 || oh && minute > 0) // "seven eight" is no time
}

func wordMinutes(text string) (int, bool) {
	for _, unit := range []string{" minutes", " minute", " minutos", " minuto"} {
		text = strings.TrimSuffix(text, unit)
	}
	switch text {
	case "half", "media":
		return 30, true
	case "quarter", "a quarter", "cuarto", "un cuarto":
		return 15, true
	}
	n, ok := wordNumber(text)
	return n, ok && n > 0 && n < 60
}

// Words is the time as it is said, with the numbers as digits: "4 o'clock", "half past
// 4", "quarter to 5", "20 minutes past 3"; in Spanish, as in Mexico and the United States,
// "las 4 y media", "un cuarto para las 5". The part of the day is added where it is known:
// "quarter past 6 in the evening", "quarter to 12 noon".
func (t Time) Words(lang string) string {
	said, next := t.englishWords, t.Hour%12+1
	if lang == "es" {
		said = t.spanishWords
	}
	return strings.TrimSpace(said(next) + " " + t.PartOfDay(lang))
}

func (t Time) englishWords(next int) string {
	switch {
	case t.Minute == 0:
		return fmt.Sprintf("%d o'clock", t.Hour)
	case t.Minute == 15:
		return fmt.Sprintf("quarter past %d", t.Hour)
	case t.Minute == 30:
		return fmt.Sprintf("half past %d", t.Hour)
	case t.Minute == 45:
		return fmt.Sprintf("quarter to %d", next)
	case t.Minute < 30:
		return fmt.Sprintf("%s past %d", minutes(t.Minute), t.Hour)
	}
	return fmt.Sprintf("%s to %d", minutes(60-t.Minute), next)
}

func minutes(n int) string {
	if n == 1 {
		return "1 minute"
	}
	return fmt.Sprintf("%d minutes", n)
}

func (t Time) spanishWords(next int) string {
	las := func(hour int) string {
		if hour == 1 {
			return "la 1"
		}
		return "las " + strconv.Itoa(hour)
	}
	switch {
	case t.Minute == 0:
		return las(t.Hour) + " en punto"
	case t.Minute == 15:
		return las(t.Hour) + " y cuarto"
	case t.Minute == 30:
		return las(t.Hour) + " y media"
	case t.Minute == 45:
		return "un cuarto para " + las(next)
	case t.Minute < 30:
		return fmt.Sprintf("%s y %d", las(t.Hour), t.Minute)
	}
	return fmt.Sprintf("%d para %s", 60-t.Minute, las(next))
}
