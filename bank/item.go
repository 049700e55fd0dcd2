package bank

import (
	"maps"
	"slices"
	"time"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Item is one question of the bank as it stands in one revision.
type Item struct {
	ID        string            // ULID, given by the bank, never reused
	Revision  int               // 1, 2, ...; all are kept
	Task      string            // the mathematics in plain text form, empty when not understood
	Wording   map[string]string // the question by language ("en", "es") where it is more than the task
	Key       string            // the right answer; computed where the task is understood
	Skill     standards.SkillID
	Look      task.Look
	Codes     []task.Code          // standards it meets
	Traits    task.Traits          // computed; empty for an item with traits by hand
	Predicted standards.Difficulty // from skill and traits
	Measured  *Measured            // nil until there is evidence
	Seconds   int                  // expected working time
	Origin    Origin
	Standing  Standing
	Notes     string

	By     string    // who made this revision
	At     time.Time // when, UTC
	Reason string    // why, from the second revision on
}

// Measured is a difficulty learnt from pupils' answers.
type Measured struct {
	Difficulty    standards.Difficulty
	StandardError standards.Difficulty // thousandths of a logit
	Answers       int                  // how many answers it rests on
}

// Difficulty is the measured difficulty where there is one, else the predicted.
func (it Item) Difficulty() standards.Difficulty {
	if it.Measured != nil {
		return it.Measured.Difficulty
	}
	return it.Predicted
}

// Predictable says that something is known by which the item's difficulty can be told:
// its mathematics, a skill, or pupils' answers.
func (it Item) Predictable() bool { return !it.ByHand() || it.Skill != "" || it.Measured != nil }

// ByHand says that the item's mathematics is not understood: its key, skill and
// difficulty were given by a person.
func (it Item) ByHand() bool { return it.Task == "" }

// Standards shows the standards that the item meets in one cell, or says why there is none.
func (it Item) Standards() string {
	if it.ByHand() {
		return standards.JoinCodes(it.Codes, "")
	}
	return standards.JoinCodes(it.Codes, it.Skill)
}

// Question is the text of the item as a person reads it: its wording in the language, else
// the story that its task tells, else its task.
func (it Item) Question(lang string) string {
	if words := it.OwnWords(lang); words != "" {
		return words
	}
	if asked, err := task.Parse(it.Task); err == nil {
		return task.ReadIn(asked, lang)
	}
	return it.Task
}

// Asks is the task, or the question of an item by hand in the first language that it has.
func (it Item) Asks() string {
	if it.Task != "" {
		return it.Task
	}
	if question := it.Question("en"); question != "" {
		return question
	}
	return it.Question("es")
}

// OwnWords is the question as a person worded it, which stands on the sheet in place of
// the task's own words: in the language, else in English, since what was reworded there may
// not say the same as the task any more. An item by hand has them in some language; for
// others they are empty where nobody worded it.
func (it Item) OwnWords(lang string) string {
	if w := it.Wording[lang]; w != "" {
		return w
	}
	if it.ByHand() {
		return it.askedAs()
	}
	return it.Wording["en"]
}

// Standing is how far an item may be used.
type Standing string

// The standings.
const (
	Draft   Standing = "draft"   // not yet for quizzes
	Ready   Standing = "ready"   // may be chosen
	Retired Standing = "retired" // kept, no longer chosen
)

// Origin says where an item came from.
type Origin struct {
	Kind string // "generated", "written" or "imported"
	Seed uint64 // generated: the seed
	File string // imported: the file's name without its folder
	Row  int    // imported: the line in the file
	By   string // who wrote or brought it
}

// Use is one time an item stood in a quiz.
type Use struct {
	Quiz string    // the quiz's name
	Week string    // ISO week, such as 2026-W48
	At   time.Time // when the quiz was made
}

// clone is a copy that shares nothing with the item that could be changed.
func (it Item) clone() Item {
	it.Wording = maps.Clone(it.Wording)
	it.Codes = slices.Clone(it.Codes)
	if it.Measured != nil {
		measured := *it.Measured
		it.Measured = &measured
	}
	return it
}
