package sheet

import (
	"fmt"
	"strings"

	"evenhand/standards"
)

var storyWord = phrase{"Story", "Cuento"}

// inShort is what an item asks, as a teacher would say it in a line or two.
func (k kit) inShort(q Question) string {
	if q.Task == nil {
		return q.Text
	}
	return strings.ReplaceAll(taskInShort(q.Task, k.lang), " - ", " "+minus+" ")
}

// taskInShort puts in parentheses what only the picture of a task shows.
func taskInShort(task standards.Task, lang string) string {
	prompt := task.Prompt(lang)
	switch t := task.(type) {
	case standards.Sentence, standards.Balance, standards.Expanded, standards.Compare, standards.Sequence, standards.PlaceValue:
		_, alone, _ := strings.Cut(prompt, ": ") // without "Write the missing number"
		return alone
	case standards.Related:
		return t.String()
	case standards.Story:
		_, told, _ := strings.Cut(t.String(), ": ")
		sentence, _, _ := strings.Cut(told, ", ")
		return fmt.Sprintf("%s: %s, %s", storyWord.in(lang), sentence, t.Unit(lang))
	case standards.Clock:
		if t.Verb != standards.Draw {
			return fmt.Sprintf("%s (%s)", prompt, t.Time)
		}
	case standards.Match:
		return fmt.Sprintf("%s (%s)", prompt, t.Key())
	case standards.HowMany:
		return fmt.Sprintf("%s (%d)", prompt, t.Number)
	case standards.Groups:
		return fmt.Sprintf("%s (%d, %d)", prompt, t.Left, t.Right)
	}
	return prompt
}
