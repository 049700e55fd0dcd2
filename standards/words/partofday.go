package words

import "strings"

// dayPart is a part of the day from a minute after midnight on, in one language.
type dayPart struct {
	from int    // minutes after midnight
	said string // after a time: "in the evening"
	hint string // a sentence of its own: "It is evening."
}

// dayParts are the parts of the day in the order of the clock. Where one ends and the next
// begins differs from house to house; these bounds are such that nobody would call the
// sentence false (common practice, no source). The hint at noon doesn't say noon, which
// would be the answer.
var dayParts = map[string][]dayPart{
	"en": {
		{0, "midnight", "It is night."},
		{1, "at night", "It is night."},
		{4 * 60, "early in the morning", "It is early morning."},
		{6 * 60, "in the morning", "It is morning."},
		{12 * 60, "noon", "It is daytime."},
		{12*60 + 1, "in the afternoon", "It is afternoon."},
		{17 * 60, "in the evening", "It is evening."},
		{21 * 60, "at night", "It is night."},
	},
	"es": {
		{0, "de la noche", "Es de noche."},
		{60, "de la madrugada", "Es de madrugada."},
		{6 * 60, "de la mañana", "Es de mañana."},
		{12 * 60, "del mediodía", "Es de día."},
		{12*60 + 1, "de la tarde", "Es de tarde."},
		{19 * 60, "de la noche", "Es de noche."},
	},
}

// sinceMidnight is the time in minutes after midnight, for a time whose half is known.
func (t Time) sinceMidnight() int {
	minutes := t.Hour%12*60 + t.Minute
	if t.Half == Afternoon {
		minutes += 12 * 60
	}
	return minutes
}

func partAt(minute int, lang string) dayPart {
	parts, ok := dayParts[lang]
	if !ok {
		parts = dayParts["en"]
	}
	last := parts[0]
	for _, part := range parts {
		if part.from <= minute {
			last = part
		}
	}
	return last
}

// PartOfDay is what follows the time as it is said: "in the evening", "de la noche". A time
// said by the hour that comes belongs to noon or midnight where that hour does: 11:45 am is
// "quarter to 12 noon". Empty where the half of the day isn't known.
func (t Time) PartOfDay(lang string) string {
	if t.Half == "" {
		return ""
	}
	minute := t.sinceMidnight()
	if t.Hour == 11 && t.Minute > 30 {
		minute = (minute/60*60 + 60) % (24 * 60)
	}
	return partAt(minute, lang).said
}

// DayHint is a sentence that tells the part of the day, which a dial can't show; with the
// dial it settles whether the time is a.m. or p.m. Empty where nobody knows.
func (t Time) DayHint(lang string) string {
	if t.Half == "" {
		return ""
	}
	return partAt(t.sinceMidnight(), lang).hint
}

// Printed is the time as a sheet prints it: "4:30", "4:30 p.m."
func (t Time) Printed() string {
	switch t.Half {
	case Morning:
		return t.Dial() + " a.m."
	case Afternoon:
		return t.Dial() + " p.m."
	}
	return t.Dial()
}

// dayEnding is what may follow a time as it is said, and the half of the day it tells.
type dayEnding struct {
	text  string
	half  Half // of every hour, or of those before the turn
	turns int  // where not 0, the hour from which on it tells the other half; 12 counts as 0
	keeps bool // "quarter to 12 in the morning" is before noon all the same
}

// dayEndings are read from the first that fits on, without accents.
var dayEndings = []dayEnding{
	{text: " am", half: Morning}, {text: " a.m.", half: Morning}, {text: " pm", half: Afternoon}, {text: " p.m.", half: Afternoon},
	{text: " early in the morning", half: Morning, keeps: true}, {text: " in the morning", half: Morning, keeps: true},
	{text: " de la manana", half: Morning, keeps: true}, {text: " de la madrugada", half: Morning, keeps: true},
	{text: " in the afternoon", half: Afternoon}, {text: " in the evening", half: Afternoon}, {text: " de la tarde", half: Afternoon},
	{text: " at night", half: Morning, turns: 6}, {text: " de la noche", half: Morning, turns: 6},
	{text: " midnight", half: Morning, turns: 12}, {text: " de la medianoche", half: Morning, turns: 12},
	{text: " noon", half: Afternoon, turns: 12}, {text: " del mediodia", half: Afternoon, turns: 12},
}

// cutPartOfDay takes the part of the day off the end. "Quarter to noon" names an hour, too.
func cutPartOfDay(text string) (string, dayEnding) {
	for _, name := range []string{" noon", " midnight"} {
		for _, before := range []string{" to", " past"} {
			if rest, ok := strings.CutSuffix(text, before+name); ok {
				text = rest + before + " 12" + name
			}
		}
	}
	for _, ending := range dayEndings {
		if rest, ok := strings.CutSuffix(text, ending.text); ok {
			return rest, ending
		}
	}
	return text, dayEnding{}
}

// halfOf is the half of the day that the ending tells of an hour.
func (e dayEnding) halfOf(hour int) Half {
	if e.turns != 0 && hour%12 >= e.turns {
		return e.half.other()
	}
	return e.half
}

// other is the other half of the day; of none, none.
func (h Half) other() Half {
	switch h {
	case Morning:
		return Afternoon
	case Afternoon:
		return Morning
	}
	return ""
}
