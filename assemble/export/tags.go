package export

import (
	"io"
	"iter"
	"strconv"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// TagRow is a task with all that is computed from it.
type TagRow struct {
	Task      string `csv:"task"` // in its plain form; as it was typed where there is a Problem
	Skill     string `csv:"skill"`
	Standards string `csv:"standards"` // codes separated by a space, or why there is none
	Key       string `csv:"key"`
	Traits
	Difficulty string `csv:"difficulty"` // predicted, in logits
	Band       string `csv:"band"`
	ShareRight string `csv:"share_right"` // in 100 answers, rounded
	Missteps   string `csv:"missteps"`    // "57=smaller from larger;119=added instead"
	Problem    string `csv:"problem"`     // why the task can't be read; then all but Task is empty
}

// Tag reads a task that a person typed.
func Tag(line string) TagRow {
	asked, err := task.Parse(line)
	if err != nil {
		return TagRow{Task: strings.TrimSpace(line), Problem: err.Error()}
	}
	skill, traits := standards.SkillOf(asked), asked.Traits()
	difficulty := standards.Predict(skill, traits)
	return TagRow{
		Task:       asked.String(),
		Skill:      string(skill),
		Standards:  standards.JoinCodes(asked.Codes(), standards.SkillOf(asked)),
		Key:        asked.Key(),
		Traits:     TraitsOf(traits),
		Difficulty: difficulty.String(),
		Band:       string(difficulty.Band()),
		ShareRight: strconv.Itoa(difficulty.Percent()),
		Missteps:   joinMissteps(asked.Missteps()),
	}
}

func joinMissteps(missteps []task.Misstep) string {
	parts := make([]string, len(missteps))
	for i, m := range missteps {
		parts[i] = m.Answer + "=" + m.Why()
	}
	return strings.Join(parts, ";")
}

// WriteTags writes the rows as they come, a thousand at a time.
func WriteTags(w io.Writer, rows iter.Seq[TagRow]) error { return writeRows(w, sure(rows)) }
