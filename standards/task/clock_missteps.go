package task

import (
	"evenhand/standards/words"
)

const clockSource = "common practice; that the hour hand is the harder hand: Earnest, Gonzales & Plant (2018)"

// The missteps in clock reading and drawing.
var (
	handsSwapped = newMisstep("hands swapped",
		"takes the long hand for the hour and the short hand for the minutes",
		"toma la manecilla larga por la de la hora y la corta por la de los minutos",
		"the short hand says the hour: a clock with the hour hand alone",
		"la manecilla corta dice la hora: un reloj que solo tiene esa manecilla", clockSource)
	nextHour = newMisstep("next hour",
		"says the hour that the hour hand is going to",
		"dice la hora hacia la que va la manecilla corta",
		"the hour hand on its way: it has left one number and not come to the next",
		"la manecilla corta va en camino: ya dejó un número y no ha llegado al siguiente", clockSource)
	numeralMinutes = newMisstep("numeral as minutes",
		"reads the numeral at the long hand as minutes",
		"lee como minutos el número que señala la manecilla larga",
		"counting by fives around the dial",
		"contar de cinco en cinco alrededor del reloj", clockSource)
	minuteIgnored = newMisstep("long hand ignored",
		"reads the hour and not the minutes",
		"lee la hora y no los minutos",
		"what the long hand tells: half past and o'clock side by side",
		"qué dice la manecilla larga: comparar «en punto» y «y media»", clockSource)
	hourFromMinutes = newMisstep("hour from the long hand",
		"takes the hour from the long hand",
		"toma la hora de la manecilla larga",
		"the short hand says the hour: a clock with the hour hand alone",
		"la manecilla corta dice la hora: un reloj que solo tiene esa manecilla", clockSource)
)

// misread are the known misreadings of a time. Reading the long hand as if it stood at
// a numeral needs a multiple of five minutes.
func misread(t words.Time) []struct {
	kind *MisstepKind
	time words.Time
} {
	type misreading = struct {
		kind *MisstepKind
		time words.Time
	}
	at := (t.Minute/5+11)%12 + 1 // the numeral at the long hand
	var list []misreading
	if t.Minute%5 == 0 {
		list = append(list, misreading{handsSwapped, words.Time{Hour: at, Minute: t.Hour % 12 * 5, Half: t.Half}})
	}
	if t.Minute > 0 {
		list = append(list, misreading{nextHour, words.Time{Hour: t.Hour%12 + 1, Minute: t.Minute, Half: t.Half}})
	}
	if t.Minute%5 == 0 {
		list = append(list, misreading{numeralMinutes, words.Time{Hour: t.Hour, Minute: at, Half: t.Half}})
	}
	list = append(list, misreading{minuteIgnored, words.Time{Hour: t.Hour, Minute: 0, Half: t.Half}})
	if t.Minute%5 == 0 {
		list = append(list, misreading{hourFromMinutes, words.Time{Hour: at, Minute: t.Minute, Half: t.Half}})
	}
	return list
}

// Missteps of a clock task are the misread times, in digits or, for Say, in words.
func (c Clock) Missteps() []Misstep {
	var slips []slip
	for _, m := range misread(c.Time) {
		answer := m.time.String()
		if c.Verb == Say {
			answer = m.time.Words("en")
		}
		slips = append(slips, slip{m.kind, answer})
	}
	return gather(c, slips)
}
