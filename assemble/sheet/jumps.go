package sheet

import "evenhand/standards/task"

// way is a way from a number on or back to another.
type way struct {
	start, by int
	endGiven  bool // the end is known and the way is asked for
}

// wayOf is the way that a task asks for, staying within 0 to most.
func wayOf(asked task.Task, most int) (way, bool) {
	switch t := asked.(type) {
	case task.Sentence:
		start, by, ok := t.Jumps(most)
		return way{start, by, t.Blank == 1}, ok
	case task.MoreLess:
		start, by, ok := t.Jumps()
		return way{start, by, false}, ok
	}
	return way{}, false
}

func (w way) end() int { return w.start + w.by }

// stops are the numbers where the jumps land, tens before ones; the ones are taken
// in one jump, or each by itself.
func (w way) stops(eachOne bool) []int {
	direction := 1
	if w.by < 0 {
		direction = -1
	}
	var list []int
	at, left := w.start, w.by*direction
	for left > 0 {
		step := 1
		switch {
		case left >= 10:
			step = 10
		case !eachOne:
			step = left
		}
		at, left = at+step*direction, left-step
		list = append(list, at)
	}
	return list
}

// endGiven says that both ends of the way stand in the question.
func endGiven(asked task.Task) bool {
	s, ok := asked.(task.Sentence)
	return ok && s.N == 2 && s.Blank == 1
}
