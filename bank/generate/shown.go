package generate

import (
	"math/rand/v2"
	"slices"
	"strconv"

	"evenhand/standards/task"
)

// shown is one of the ways to show a task, each as likely as any other.
func shown(asked task.Task, random *rand.Rand) task.Task {
	s, ok := turnable(asked)
	if !ok {
		return asked
	}
	addends := s.Terms[:s.N] // s is our own copy
	random.Shuffle(s.N, func(i, j int) { addends[i], addends[j] = addends[j], addends[i] })
	slices.SortStableFunc(addends, func(a, b int) int { return length(b) - length(a) })
	return s
}

// turnable says whether a task is a sum whose result is asked for.
func turnable(asked task.Task) (task.Sentence, bool) {
	s, ok := asked.(task.Sentence)
	return s, ok && s.IsAddition() && s.Blank == s.N
}

func length(n int) int { return len(strconv.Itoa(n)) }
