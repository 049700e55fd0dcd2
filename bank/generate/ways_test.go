package generate

import "evenhand/standards/task"

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
