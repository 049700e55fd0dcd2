package plan

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"evenhand/standards/words"
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
		return Week{}, words.Errorf("%q is no week; write the year and the number of the week, such as 2026-W48", text)
	}
	w := Week{year, number}
	if last := weeksIn(year); number < 1 || number > last {
		return Week{}, words.Errorf("there is no week %d in %d; its weeks are 1 to %d", number, year, last)
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

// Compare is negative when w is before other, 0 when they are the same, positive when it is after.
func (w Week) Compare(other Week) int { return w.Monday().Compare(other.Monday()) }

// Until is how many weeks it is from w to a later week, holidays counted; negative to an earlier one.
func (w Week) Until(later Week) int {
	const week = 7 * 24 * time.Hour // in UTC every week is as long
	return int(later.Monday().Sub(w.Monday()) / week)
}

// SchoolWeeks are the first n weeks with school from a week on; those in skip have none.
func SchoolWeeks(from Week, n int, skip []Week) (weeks []Week) {
	for week := from; len(weeks) < n; week = week.Add(1) {
		if !slices.Contains(skip, week) {
			weeks = append(weeks, week)
		}
	}
	return weeks
}

// SchoolWeeksUntil is how many weeks of school it is from one week to a later one: 1 from the last week before
// a holiday to the first one after it.
func SchoolWeeksUntil(from, to Week, skip []Week) int {
	n := from.Until(to)
	for _, week := range skip {
		if week.Compare(from) > 0 && week.Compare(to) < 0 {
			n--
		}
	}
	return n
}
