package generate

import (
	"sort"

	"evenhand/standards/task"
)

// space is a list of possible tasks that is never written out: how many places it has,
// and which task stands at a place from 0 to size−1. No two places ask the same
// thing. A place may be empty (nil), where the numbers make no valid task.
type space struct {
	size int
	at   func(i int) task.Task
}

// product is every combination of one choice from each of several lists, given by their lengths.
func product(asked func(choice []int) task.Task, lengths ...int) space {
	size := 1
	for _, n := range lengths {
		size *= n
	}
	return space{size, func(i int) task.Task {
		choice := make([]int, len(lengths))
		for k, n := range lengths {
			choice[k] = i % n
			i /= n
		}
		return asked(choice)
	}}
}

// choose is every set of k different numbers from 0 to n−1, each set in falling
// order.
//
// Set number i is found in the combinatorial number system: its largest member is the
// largest c with C(c, k) ≤ i, and the rest is set number i − C(c, k) of size k−1.
func choose(asked func(set []int) task.Task, n, k int) space {
	return space{binomial(n, k), func(i int) task.Task {
		set := make([]int, k)
		for j := range set {
			size := k - j
			set[j] = sort.Search(n, func(c int) bool { return binomial(c+1, size) > i })
			i -= binomial(set[j], size)
		}
		return asked(set)
	}}
}

// gather is every collection of k numbers from low to high in falling order; a
// number may stand in it more than once.
func gather(asked func(numbers []int) task.Task, low, high, k int) space {
	return choose(func(set []int) task.Task {
		for j := range set {
			set[j] += low - (k - 1 - j) // from different numbers to numbers that may be equal
		}
		return asked(set)
	}, high-low+k, k)
}

// join is one space after the other.
func join(spaces ...space) space {
	all := space{}
	for _, s := range spaces {
		all.size += s.size
	}
	all.at = func(i int) task.Task {
		for _, s := range spaces {
			if i < s.size {
				return s.at(i)
			}
			i -= s.size
		}
		return nil
	}
	return all
}

// larger is the tasks of a space that hold a number larger than n.
func larger(n int, s space) space {
	return space{s.size, func(i int) task.Task {
		asked := s.at(i)
		if asked == nil {
			return nil
		}
		if largest, _ := asked.Traits().Number(task.Largest); largest <= n {
			return nil
		}
		return asked
	}}
}

// binomial is C(n, k), the number of ways to choose k of n; 0 when k > n.
func binomial(n, k int) int {
	if k > n {
		return 0
	}
	ways := 1
	for i := range k {
		ways = ways * (n - i) / (i + 1)
	}
	return ways
}
