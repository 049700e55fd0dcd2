package plan

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Week is a week of ISO 8601: it begins on Monday and belongs to the year that
// holds its Thursday. A year has 52 or 53 of them.
type Week struct{ Year, Number int }

// WeekOf is the week of a day.
func WeekOf(day time.Time) Week {
	year, number := day.ISOWeek()
	return Week{year, number}
}

// ParseWeek reads a week such as 2026-W48.
func ParseWeek(text string) (Week, error) {
	clean := strings.ToUpper(strings.TrimSpace(text))
	y, n, ok := strings.Cut(clean, "-W")
	year, yearErr := strconv.Atoi(y)
	number, numberErr := strconv.Atoi(n)
	if !ok || yearErr != nil || numberErr != nil || len(y) != 4 || len(n) != 2 || year < 1 || number < 0 {
		return Week{}, fmt.Errorf("%q is no week; write the year and the number of the week, such as 2026-W48", text)
	}
	w := Week{year, number}
	if last := weeksIn(year); number < 1 || number > last {
		return Week{}, fmt.Errorf("there is no week %d in %d; its weeks are 1 to %d", number, year, last)
	}
	return w, nil
}

// weeksIn is the number of weeks of a year; 28 December always lies in the last.
func weeksIn(year int) int {
	return WeekOf(time.Date(year, time.December, 28, 0, 0, 0, 0, time.UTC)).Number
}

// String is the week as ParseWeek reads it.
func (w Week) String() string { return fmt.Sprintf("%04d-W%02d", w.Year, w.Number) }

// Monday is the first day of the week. Week 1 holds 4 January.
func (w Week) Monday() time.Time {
	fourth := time.Date(w.Year, time.January, 4, 0, 0, 0, 0, time.UTC)
	sinceMonday := (int(fourth.Weekday()) + 6) % 7
	return fourth.AddDate(0, 0, 7*(w.Number-1)-sinceMonday)
}

// Add is the week n weeks later, or earlier when n is negative.
func (w Week) Add(n int) Week { return WeekOf(w.Monday().AddDate(0, 0, 7*n)) }
