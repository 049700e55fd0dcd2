package words

import (
	"regexp"
	"strings"
)

var (
	beforeTimes  = regexp.MustCompile(`^(?:the time is|it is|it's|at|a|son|es|las? son|la hora es)(?: about)? `)
	spacedColon  = regexp.MustCompile(`([0-9]) ?: ?([0-9])`)
	pairOfDigits = regexp.MustCompile(`^([0-9]{1,2})[ -]([0-5][0-9])\b`)
	dottedHalf   = regexp.MustCompile(`\b([ap]) ?\. ?m\b\.?|\b([ap]) m$`)
	oClock       = regexp.MustCompile(` o'? ?clock$`)
)

// timeText brings a time as people write it to fewer ways: without what leads in ("it is"), a
// full stop at the end, hyphens between words, or spaces at the colon.
func timeText(text string) string {
	s := strings.TrimRight(Plain(text), " !?,;")
	s = dottedHalf.ReplaceAllString(s, "${1}${2}m")
	s = strings.TrimRight(s, ". ")
	for {
		rest := beforeTimes.ReplaceAllString(s, "")
		if rest == s {
			break
		}
		s = rest
	}
	s = spacedColon.ReplaceAllString(s, "$1:$2")
	s = pairOfDigits.ReplaceAllString(s, "$1:$2")
	s = strings.ReplaceAll(s, "-", " ")
	s = oClock.ReplaceAllString(s, " o'clock")
	for _, row := range [][2]string{{"quarter of ", "quarter to "}, {" till ", " to "}, {" til ", " to "}} {
		s = strings.Replace(s, row[0], row[1], 1)
	}
	return s
}

// timeMarks are what makes a text a time: a colon between figures, o'clock, a half or a quarter
// of an hour, a half of the day, "past" an hour, the Spanish article of hours, "ten to six" in words.
var timeMarks = regexp.MustCompile(`[0-9] ?: ?[0-9]|\bo'? ?clock\b|\b(half|quarter|noon|midnight|midday|past|media|cuarto|mediodía|medianoche)\b|` +
	`\b[ap] ?\.? ?m\b|\b(in the (morning|afternoon|evening)|at night)\b|` +
	`\b(en punto|de la (mañana|tarde|noche|madrugada))\b|\bminutes? (to|before|after|of|till)\b|^(a |son |es )?las? |` +
	`\b(five|ten|twenty|twenty[ -]five) (to|till) (one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)$`)

// SaysTime says that a text calls itself a time; "8 menos 5" and "7 8" do not.
func SaysTime(text string) bool { return timeMarks.MatchString(Plain(text)) }

var figures = regexp.MustCompile(`[0-9] ?[:.h] ?[0-9]`)

// InFigures says that a time is written in figures, as 4:45, and not in words.
func InFigures(text string) bool { return figures.MatchString(Plain(text)) }
