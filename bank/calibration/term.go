package calibration

import "fmt"

// The last weeks of the three terms of a year: common practice, no source. A class is a year
// older in August.
const (
	lastOfWinter = 13
	lastOfSpring = 31
	lastOfAutumn = 53
)

// Term is the third of a year that an ISO week such as 2026-W48 lies in, as people read it; a
// text that is no week is a term of its own.
func Term(week string) string {
	var year, number int
	if n, err := fmt.Sscanf(week, "%d-W%d", &year, &number); n != 2 || err != nil {
		return week
	}
	first, last := lastOfSpring+1, lastOfAutumn
	switch {
	case number <= lastOfWinter:
		first, last = 1, lastOfWinter
	case number <= lastOfSpring:
		first, last = lastOfWinter+1, lastOfSpring
	}
	return fmt.Sprintf("%d, weeks %02d to %d", year, first, last)
}
