package sheet

import "evenhand/standards/task"

// nameOf is what kind of picture a question is.
func nameOf(q Question) phrase {
	if q.Task == nil {
		return looks[task.LookWords].name
	}
	return looks[q.Look].name
}

// description is the question in words: what is asked and what its picture shows, never what is
// right, not on the key either.
func (s settings) description(q Question) string {
	k := s.kit
	k.key = false
	return k.aloud(q)
}
