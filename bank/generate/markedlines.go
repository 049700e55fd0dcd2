package generate

import "evenhand/standards/task"

// markedLines are number lines from 0 as classes have them, each with a mark at every tick that
// has no number below it.
func markedLines() space {
	lines := []task.MarkedLine{{To: 10, Step: 1}, {To: 20, Step: 1}, {To: 20, Step: 2}, {To: 50, Step: 5}, {To: 100, Step: 5}, {To: 100, Step: 10}}
	var marked []task.Task
	for _, line := range lines {
		for line.Number = 2 * line.Step; line.Number < line.To; line.Number += line.Step {
			marked = append(marked, line)
		}
	}
	return space{len(marked), func(i int) task.Task { return marked[i] }}
}
