package sheet

import (
	"fmt"
	"strings"

	"evenhand/standards/task"
)

var storyWord = phrase{"Story", "Problema"}

// inShort is what an item asks, as a teacher would say it in a line or two.
func (k kit) inShort(q Question) string {
	if q.Task == nil || q.Text != "" {
		return q.Text
	}
	return strings.ReplaceAll(taskInShort(q.Task, k.lang), " - ", " "+minus+" ")
}

// taskInShort puts in parentheses what only the picture of a task shows.
func taskInShort(asked task.Task, lang string) string {
	prompt := asked.Prompt(lang)
	switch t := asked.(type) {
	case task.Sentence, task.Balance, task.Expanded, task.Compare, task.Sequence, task.PlaceValue:
		_, alone, _ := strings.Cut(prompt, ": ") // without "Write the missing number"
		return alone
	case task.Related:
		return t.String()
	case task.Story:
		_, told, _ := strings.Cut(t.String(), ": ")
		sentence, _, _ := strings.Cut(told, ", ")
		return fmt.Sprintf("%s: %s, %s", storyWord.in(lang), sentence, t.Unit(lang))
	case task.Clock:
		if t.Verb != task.Draw {
			return fmt.Sprintf("%s (%s)", prompt, t.Time.Printed())
		}
	case task.Match:
		return fmt.Sprintf("%s (%s)", prompt, t.Key())
	case task.HowMany:
		return fmt.Sprintf("%s (%d)", prompt, t.Number)
	case task.Groups:
		return fmt.Sprintf("%s (%d, %d)", prompt, t.Left, t.Right)
	}
	return prompt
}
