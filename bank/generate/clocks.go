package generate

import (
	"evenhand/standards/task"
	"evenhand/standards/words"
)

var (
	verbs   = []task.ClockVerb{task.Read, task.Draw, task.Say}
	noHalf  = []words.Half{""}
	halves  = []words.Half{"", words.Morning, words.Afternoon}
	perHour = map[string]int{"hour": 1, "half-hour": 2, "quarter-hour": 4, "five-minute": 12, "minute": 60}
)

// dials are the times of a step to read, to draw and to say in words, for each of
// the halves of the day. Times of a coarser step, which belong to another skill, are
// empty places.
func dials(step string, halves []words.Half) space {
	return product(func(c []int) task.Task {
		t := timeOf(c[1], step)
		if t.Step() != step {
			return nil
		}
		t.Half = halves[c[2]]
		return task.Clock{Verb: verbs[c[0]], Time: t}
	}, len(verbs), 12*perHour[step], len(halves))
}

// matches are sets of n different times of a step, in the order of the dial.
func matches(n int, step string) space {
	return choose(func(set []int) task.Task {
		m := task.Match{N: n}
		for i, k := range set {
			m.Times[n-1-i] = timeOf(k, step)
		}
		return m
	}, 12*perHour[step], n)
}

// timeOf is time number k of a step, from 12 o'clock.
func timeOf(k int, step string) words.Time {
	minutes := k * 60 / perHour[step]
	return words.Time{Hour: (minutes/60+11)%12 + 1, Minute: minutes % 60}
}
