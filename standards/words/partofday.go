package words

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
