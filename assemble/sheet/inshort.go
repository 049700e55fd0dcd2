package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// inShort is what an item asks, as a teacher would say it in a line or two.
func (k kit) inShort(q Question) string {
	if q.Task == nil || q.Text != "" {
		return q.Text
	}
	return strings.ReplaceAll(task.Short(q.Task, k.lang), " - ", " "+minus+" ")
}
