package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// makeTen splits the smaller addend so that its first part fills the larger one up to the
// next ten, which stands printed below.
func makeTen(k kit, asked task.Task) (drawing, bool) {
	s, ok := asked.(task.Sentence)
	if !ok {
		return drawing{}, false
	}
	first, rest, ok := s.NextTen()
	if !ok {
		return drawing{}, false
	}
	smaller := 1
	if s.Terms[0] < s.Terms[1] {
		smaller = 0
	}
	addends := [2]drawing{k.text(strconv.Itoa(s.Terms[0])), k.text(strconv.Itoa(s.Terms[1]))}
	addends[smaller] = k.split(s.Terms[smaller], first, rest)
	ten := strconv.Itoa(s.Terms[1-smaller] + first)
	last := row(k.gap(), k.text(ten), k.text("+"), k.answerBox(2, strconv.Itoa(rest)), k.text("="), k.answerBox(2, s.Key()))
	return stack(5, row(k.gap(), addends[0], k.text("+"), addends[1]), last), true
}
