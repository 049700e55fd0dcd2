package evidence

import (
	"fmt"
	"math"
)

// The limits of the flags are common practice, without a published source.
const (
	fewAnswers  = 20   // below this an item's statistics are a hint
	nearlyAll   = 0.95 // facility
	hardlyAny   = 0.15
	hardlyApart = 0.10 // item-rest correlation
)

// Flags says in plain words what a teacher may want to look at, as far as luck hardly explains
// it; none for an item that did its work.
func (s ItemStats) Flags() (flags []string) {
	if s.Answers == 0 {
		return []string{"nobody has answered this yet"}
	}
	switch {
	case !s.clearlyApart():
	case s.ItemRest < 0:
		flags = append(flags, "the stronger pupils missed this more often: check the key")
	default:
		flags = append(flags, "stronger and weaker pupils did alike here: it may measure something else")
	}
	switch {
	case s.Facility.Value >= nearlyAll && !s.few():
		flags = append(flags, "nearly everyone got this right: it tells pupils hardly apart")
	case s.Facility.Value <= hardlyAny && (!s.few() || s.Facility.High <= 1.0/3):
		flags = append(flags, "hardly anyone got this right: check the key and whether it has been taught")
	}
	if len(flags) > 0 && s.few() {
		flags = append(flags, fmt.Sprintf("only %s: take this as a hint", plural(s.Answers, "answer")))
	}
	return flags
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

func (s ItemStats) few() bool { return s.Answers < fewAnswers }

// clearlyApart says that the item-rest correlation is low beyond luck: it scatters by about
// 1/√n, so a class or two give many low ones by chance, and only one whose 95 % range ends
// below hardlyApart counts.
func (s ItemStats) clearlyApart() bool {
	return s.ItemRest+1.96/math.Sqrt(float64(s.Answers)) < hardlyApart
}
