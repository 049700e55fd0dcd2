package intake

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"

	"evenhand/standards/words"
)

// What spreadsheets do to lists: a time becomes a share of a day (3:30 is 0.1458333)
// or gets seconds and a half of the day (3:30:00 AM); 1-2 and 3/4 become dates, which
// a spreadsheet keeps as days since 30 December 1899 (2026-01-02 is 46024).

var (
	clockedTime = regexp.MustCompile(`^(\d{1,2}):(\d{2}):(\d{2})(?:\.0+)?\s*(?:([AaPp])\.?[Mm]\.?)?$`)
	dayShare    = regexp.MustCompile(`^0?[.,]\d+$`)
	sheetTime   = regexp.MustCompile(`^1899-12-3[01]T(\d{2}):(\d{2}):(\d{2})Z$`)
)

// restoreTime reads a time that a spreadsheet has changed, and gives it as it was
// most likely typed: 0.1458333, 3:30:00 and 3:30:00 AM are 3:30, 0.6458333 and
// 15:30:00 are 3:30 pm. What people type as 12:15 a spreadsheet calls PM; so noon's
// hour gets no half of the day, and midnight's gets "am".
func restoreTime(cell string) (typed string, ok bool) {
	cell = strings.TrimSpace(cell)
	if m := clockedTime.FindStringSubmatch(cell); m != nil {
		return restoreClocked(m)
	}
	if m := sheetTime.FindStringSubmatch(cell); m != nil {
		return typedTime(minutesOf(m[1], m[2], m[3]))
	}
	if dayShare.MatchString(cell) {
		share, _ := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64)
		minutes := share * 24 * 60
		if math.Abs(minutes-math.Round(minutes)) < wholeMinute && share > 0 {
			return typedTime(int(math.Round(minutes)))
		}
	}
	return "", false
}

// wholeMinute is how far, in minutes, a share of a day may be from a whole minute:
// shares of five decimals (0.14583) are up to 0.0072 off.
const wholeMinute = 0.02

// restoreClocked reads the parts of "3:30:00 AM".
func restoreClocked(m []string) (typed string, ok bool) {
	hour, _ := strconv.Atoi(m[1])
	minute, _ := strconv.Atoi(m[2])
	if m[3] != "00" || minute > 59 || hour > 23 || m[4] != "" && (hour < 1 || hour > 12) {
		return "", false
	}
	switch strings.ToLower(m[4]) {
	case "a":
		hour %= 12
	case "p":
		hour = hour%12 + 12
	}
	return typedTime(hour*60 + minute)
}

// minutesOf is the minute of the day, seconds rounded: a reader of workbooks may
// give 03:29:59 for 3:30.
func minutesOf(hour, minute, second string) int {
	h, _ := strconv.Atoi(hour)
	m, _ := strconv.Atoi(minute)
	s, _ := strconv.Atoi(second)
	return h*60 + m + (s+30)/60
}

// typedTime is a minute of the day as a person types it.
func typedTime(minutes int) (string, bool) {
	hour, minute := minutes/60%24, minutes%60
	switch {
	case hour == 0:
		return fmt.Sprintf("12:%02d am", minute), true
	case hour > 12:
		return fmt.Sprintf("%d:%02d pm", hour-12, minute), true
	}
	return fmt.Sprintf("%d:%02d", hour, minute), true
}

var (
	longDate  = regexp.MustCompile(`^(?:19|20)\d\d-\d{1,2}-\d{1,2}(?:[ T].*)?$`)
	shortDate = regexp.MustCompile(`^\d{1,2}([/.])\d{1,2}([/.])(?:19|20)?\d\d$`)
	namedDate = regexp.MustCompile(`(?i)^(?:\d{1,2}[-. /])?(?:jan|ene|feb|mar|apr|abr|may|jun|jul|aug|ago|sep|oct|nov|dec|dic)[a-z]*\.?[-. /]\d{1,4}$|` +
		`(?i)^\d{1,2}[-. /](?:jan|ene|feb|mar|apr|abr|may|jun|jul|aug|ago|sep|oct|nov|dec|dic)[a-z]*\.?$`)
	dayNumber = regexp.MustCompile(`^(?:[45]\d{4})$`)
)

// readDate says whether a whole cell is a date, or the number by which a spreadsheet
// keeps one (2009 to 2064), and explains it. What was typed can't be known: 1-2 and
// 2-1 both become 2026-01-02, in one country or the other.
func readDate(cell string) (explained *words.Told, ok bool) {
	cell = strings.TrimSpace(cell)
	if len(cell) < 4 || len(cell) > 30 || strings.ContainsAny(cell, "+=?") { // most cells, without trying
		return nil, false
	}
	switch {
	case dayNumber.MatchString(cell):
		days, _ := strconv.Atoi(cell)
		day := time.Date(1899, 12, 30+days, 0, 0, 0, 0, time.UTC)
		is := words.Sayf("%s is the date %s as a spreadsheet keeps it", cell, day.Format(time.DateOnly))
		return explainDate(is, day), true
	case longDate.MatchString(cell):
		day, err := time.Parse("2006-01-02", cell[:min(len(cell), 10)])
		if err != nil {
			return words.Sayf(isDate, cell), true
		}
		return explainDate(words.Sayf("%s is a date", cell), day), true
	case shortDate.MatchString(cell), namedDate.MatchString(cell):
		return words.Sayf(isDate, cell), true
	}
	return nil, false
}

const isDate = "%s is a date that a spreadsheet has made; write what was meant"

func explainDate(is *words.Told, day time.Time) *words.Told {
	m, d := int(day.Month()), day.Day()
	return words.Sayf("%s, which a spreadsheet may have made of %d-%d, %d-%d or %d/%d; write what was meant",
		is, m, d, d, m, m, d)
}

var (
	timeInText  = regexp.MustCompile(`\b\d{1,2}:\d{2}:\d{2}(?: ?[AaPp]\.?[Mm]\b\.?)?`)
	shareInText = regexp.MustCompile(`\b0?\.\d{2,}\b`)
	clockVerb   = regexp.MustCompile(`(?i)^(?:read|draw|say|match|show)\b`)
)

// mendTimes restores the times in a text: those with seconds anywhere, shares of a day
// where the text begins like a clock task or, when the text is nothing else, where it
// is known to be about a clock.
func mendTimes(text string, clock bool) (mended string, changed bool) {
	if !strings.ContainsAny(text, ":.,") || dayShare.MatchString(text) && !clock {
		return text, false
	}
	if typed, ok := restoreTime(text); ok {
		return typed, true
	}
	restore := func(part string) string {
		if typed, ok := restoreTime(part); ok {
			return typed
		}
		return part
	}
	mended = timeInText.ReplaceAllStringFunc(text, restore)
	if clockVerb.MatchString(text) {
		mended = shareInText.ReplaceAllStringFunc(mended, restore)
	}
	return mended, mended != text
}
