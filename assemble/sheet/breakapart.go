package sheet

import (
	"strconv"

	"evenhand/standards/task"
)

// breakApart splits both addends into tens and ones, which are then added by themselves.
func breakApart(k kit, asked task.Task) (drawing, bool) {
	s, ok := asked.(task.Sentence)
	if !ok || !s.BreaksApart() {
		return drawing{}, false
	}
	a, b := s.Terms[0], s.Terms[1]
	tens, ones := a/10*10+b/10*10, a%10+b%10
	first := row(2*k.gap(), k.split(a, a/10*10, a%10), k.text("+"), k.split(b, b/10*10, b%10))
	last := row(k.gap(), k.answerBox(3, strconv.Itoa(tens)), k.text("+"), k.answerBox(2, strconv.Itoa(ones)), k.text("="), k.answerBox(3, s.Key()))
	return stack(5, first, last), true
}
