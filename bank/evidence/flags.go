package evidence

import "fmt"

// The limits of the flags are common practice, without a published source.
const (
	fewAnswers  = 20   // below this an item's statistics are a hint
	nearlyAll   = 0.95 // facility
	hardlyAny   = 0.15
	hardlyApart = 0.10 // item-rest correlation
)

// Flags says in plain words what a teacher may want to look at; none for an item that did
// its work.
func (s ItemStats) Flags() (flags []string) {
	if s.Answers == 0 {
		return []string{"nobody has answered this yet"}
	}
	switch {
	case s.ItemRest < 0:
		flags = append(flags, "the stronger pupils missed this more often: check the key")
	case s.ItemRest < hardlyApart:
		flags = append(flags, "stronger and weaker pupils did alike here: it may measure something else")
	}
	switch {
	case s.Facility.Value >= nearlyAll:
		flags = append(flags, "nearly everyone got this right: it tells pupils hardly apart")
	case s.Facility.Value <= hardlyAny:
		flags = append(flags, "hardly anyone got this right: check the key and whether it has been taught")
	}
	if len(flags) > 0 && s.Answers < fewAnswers {
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
