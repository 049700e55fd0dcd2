package generate

import (
	"math/rand/v2"
	"slices"
	"strconv"

	"evenhand/standards/task"
)

// ways counts the orders in which a task can be shown without asking anything
// else: 2 for 47 + 36, 1 for 47 + 5 (the longer number stands first) and for every
// task that is not a sum. The addends must stand in falling order, as the spaces
// have them.
//
// These are the arrangements of a multiset, counted number by number: the r-th number
// of its length has r places to go, and among e equal numbers e of them look alike.
func ways(asked task.Task) int {
	s, ok := turnable(asked)
	if !ok {
		return 1
	}
	count, sameLength, same := 1, 1, 1
	for i := 1; i < s.N; i++ {
		sameLength = next(sameLength, length(s.Terms[i]) == length(s.Terms[i-1]))
		same = next(same, s.Terms[i] == s.Terms[i-1])
		count = count * sameLength / same
	}
	return count
}

// next goes on counting a run, or starts anew at 1.
func next(run int, goesOn bool) int {
	if goesOn {
		return run + 1
	}
	return 1
}

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
