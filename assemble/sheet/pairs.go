package sheet

import (
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// pairs asks twice for two numbers that make the whole. The key shows one answer of many.
func pairs(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Pairs)
	if !ok {
		return drawing{}, false
	}
	var lines []drawing
	for _, pair := range strings.Split(t.Key(), ", ") {
		a, b, _ := strings.Cut(pair, " + ")
		lines = append(lines, row(k.gap(), k.text(strconv.Itoa(t.Whole)), k.text("="), k.answerBox(2, a), k.text("+"), k.answerBox(2, b)))
	}
	return stack(3, lines...), true
}
