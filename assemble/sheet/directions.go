package sheet

import "evenhand/standards/task"

// directionOf is the short sentence that the teacher reads aloud before a group of
// items that share it.
func directionOf(q Question) phrase {
	if q.Task == nil {
		return looks[task.LookWords].direction
	}
	row := looks[q.Look]
	if row.directionFor != nil {
		if said, ok := row.directionFor(q.Task); ok {
			return said
		}
	}
	return row.direction
}
