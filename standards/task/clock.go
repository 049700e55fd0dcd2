package task

import (
	"fmt"
	"regexp"
	"strings"

	"evenhand/standards/words"
)

// ClockVerb is what is to be done with a clock.
type ClockVerb string

// The clock verbs.
const (
	Read ClockVerb = "read" // a dial is shown: write the time in digits
	Draw ClockVerb = "draw" // the time is given: draw the hands
	Say  ClockVerb = "say"  // a dial is shown: write the time in words
)

// Clock is a task about one clock face: "read 4:30", "draw 4:30", "say 4:30 pm".
type Clock struct {
	Verb ClockVerb
	Time words.Time
}

// clockVerbs are the words people begin a clock task with.
var clockVerbs = []struct {
	word string
	verb ClockVerb
}{
	{"read", Read}, {"read the clock", Read}, {"what time is it", Read}, {"write the time", Read}, {"time", Read},
	{"draw", Draw}, {"draw the hands", Draw}, {"draw the hands for", Draw}, {"show", Draw}, {"show the time", Draw},
	{"draw the hands to show", Draw}, {"draw hands to show", Draw}, {"draw hands for", Draw}, {"draw the time", Draw},
	{"draw the hands at", Draw}, {"show the time on the clock", Draw},
	{"draw the clock hands for", Draw}, {"write the time in words", Say}, {"read the time", Read}, {"tell the time", Read},
	{"say", Say}, {"say in words", Say}, {"write in words", Say},
}

// signInText finds a sign of arithmetic, with which no text is a time; the hyphen of half-past is
// none.
var signInText = regexp.MustCompile(`[+=<>]|[0-9?] ?-|- ?[0-9?]| - `)

// readClock reads a verb and a time, or a time alone, which asks to read it.
func readClock(text string) (Task, error) {
	if signInText.MatchString(text) {
		return nil, errOther
	}
	verb, rest := Read, text
	cut := 0
	for _, row := range clockVerbs {
		if after, ok := strings.CutPrefix(text, row.word); ok && len(row.word) > cut && (after == "" || strings.ContainsAny(after[:1], " :?")) {
			verb, rest, cut = row.verb, after, len(row.word)
		}
	}
	rest = strings.Trim(rest, " :?,")
	if cut == 0 && !words.SaysTime(rest) {
		return nil, errOther
	}
	switch t, err := words.ParseTime(rest); {
	case err == nil && !twoNumbers.MatchString(rest):
		return Clock{verb, t}, nil
	case err != nil && words.LooksLikeTime(rest):
		return nil, err
	}
	return nil, errOther
}

func (c Clock) String() string { return string(c.Verb) + " " + c.Time.String() }

// Key is the time in digits, or in words for Say.
func (c Clock) Key() string {
	if c.Verb == Say {
		return c.Time.Words("en")
	}
	return c.Time.String()
}

// Judge accepts the time in any form that puts the hands in the same place; for Say only one
// in words.
func (c Clock) Judge(answer string) bool {
	t, ok := readTime(answer)
	return ok && words.SameDial(t, c.Time) && (c.Verb != Say || !words.InFigures(answer))
}

// Possible takes times, also an hour alone.
func (c Clock) Possible(answer string) bool { _, ok := readTime(answer); return ok }

// readTime reads a time as the answer to a clock, where "7" or "seven" is an hour.
func readTime(answer string) (words.Time, bool) {
	t, err := words.ParseTime(answer)
	if err == nil {
		return t, true
	}
	if n, ok := oneNumber(trimmed(words.Tokens(answer)), noWords); ok && n >= 1 && n <= 12 {
		return words.Time{Hour: n}, true
	}
	return t, false
}

// Prompt asks for the time or the hands. For reading it does not give the time away.
func (c Clock) Prompt(lang string) string {
	es := lang == "es"
	switch {
	case c.Verb == Draw && es:
		return fmt.Sprintf("Dibuja las manecillas: %s", c.Time)
	case c.Verb == Draw:
		return fmt.Sprintf("Draw the hands: %s", c.Time)
	case c.Verb == Say && es:
		return "Escribe la hora con palabras." + c.halfHint(lang)
	case c.Verb == Say:
		return "Write the time in words." + c.halfHint(lang)
	case es:
		return "¿Qué hora es?" + c.halfHint(lang)
	}
	return "What time is it?" + c.halfHint(lang)
}

// halfHint tells the half of the day, which a dial can't show.
func (c Clock) halfHint(lang string) string {
	if c.Time.Half == "" {
		return ""
	}
	return " " + c.Time.DayHint(lang)
}

// Traits of a clock task.
func (c Clock) Traits() Traits {
	ts := clockTraits(c.Time)
	ts[Asks] = string(c.Verb)
	return ts
}

// clockTraits are those of the finest step among the times.
func clockTraits(times ...words.Time) Traits {
	var ts Traits
	finest, overlap, past := 0, false, false
	for _, t := range times {
		for i, step := range words.ClockSteps {
			if t.Step() == step {
				finest = max(finest, i)
			}
		}
		overlap = overlap || t.Between() <= overlapDegrees
		past = past || t.Minute > 30
	}
	ts[ClockStep] = words.ClockSteps[finest]
	ts.setFlag(HandsOverlap, overlap)
	ts.setFlag(PastHalf, past)
	if half := times[0].Half; half != "" {
		ts.setFlag(PastNoon, half == words.Afternoon)
	}
	return ts
}

// overlapDegrees is the angle up to which one hand hides the other: among the
// five-minute faces that is 12:00 alone.
const overlapDegrees = 1

// Codes: hours and half hours are grade 1, five minutes grade 2; single minutes
// come later.
func (c Clock) Codes() []Code { return clockCodes(c.Traits()) }

func clockCodes(ts Traits) []Code {
	switch ts[ClockStep] {
	case "hour", "half-hour":
		return []Code{"1.MD.B.3"}
	case "quarter-hour", "five-minute":
		return []Code{"2.MD.C.7"}
	}
	return nil
}

// Clashes of a clock task: its place on the dial.
func (c Clock) Clashes() []string { return []string{"time:" + c.Time.Dial()} }

// Fingerprint of a clock task is its text.
func (c Clock) Fingerprint() string { return c.String() }

// Looks of a clock task.
func (c Clock) Looks() []Look {
	switch c.Verb {
	case Draw:
		return []Look{LookBlankFace, LookSaidFace}
	case Say:
		return []Look{LookClockFace}
	}
	return withChoice(c, LookClockFace, LookSaidTime)
}

// Short tells the time that a dial shows.
func (c Clock) Short(lang string) string {
	if c.Verb == Draw {
		return c.Prompt(lang)
	}
	return shown(c, lang, c.Time.Printed())
}
