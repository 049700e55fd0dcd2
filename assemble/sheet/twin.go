package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// twin prints two sentences, one below the other, that one number makes true.
func twin(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Related)
	if !ok {
		return drawing{}, false
	}
	var lines []drawing
	for _, text := range strings.Split(t.String(), ", ") {
		lines = append(lines, k.sentenceOf(text, []string{t.Key()}, 2))
	}
	return stack(3, lines...), true
}
