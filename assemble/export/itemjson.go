package export

import (
	"cmp"
	"time"

	"evenhand/assemble"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Item is an item as other programs read it: the one shape of an item in all JSON that is written
// and read. Difficulty and its standard error are in logits.
//
// An item of a quiz stands as it was given, which has no standing, origin, notes or author; they
// are empty there.
type Item struct {
	ID            string            `json:"id"`
	Revision      int               `json:"revision,omitempty"` // quiz.json did not tell it once
	Task          string            `json:"task"`               // empty for an item by hand
	Question      string            `json:"question"`
	Wording       map[string]string `json:"wording,omitempty"`
	Key           string            `json:"key"`
	Skill         standards.SkillID `json:"skill"`
	Standards     []task.Code       `json:"standards"`
	Look          task.Look         `json:"look"`
	Standing      bank.Standing     `json:"standing,omitempty"`
	Band          standards.Band    `json:"band,omitempty"` // empty, as the next two, where nothing is known to predict by
	ShareRight    int               `json:"share_right,omitempty"`
	Difficulty    float64           `json:"difficulty"`
	Basis         bank.Basis        `json:"basis,omitempty"` // of an item as it stands: guess, learnt or measured
	StandardError *float64          `json:"standard_error,omitempty"`
	Answers       int               `json:"answers,omitempty"`
	Seconds       int               `json:"seconds"`
	Traits        map[string]string `json:"traits"`
	Origin        *Origin           `json:"origin,omitempty"`
	Notes         string            `json:"notes,omitempty"`
	By            string            `json:"by,omitempty"`
	At            time.Time         `json:"at,omitzero"`
	Reason        string            `json:"reason,omitempty"`
}

// Origin says where an item came from.
type Origin struct {
	Kind string `json:"kind"` // generated, written or imported
	Seed uint64 `json:"seed,omitempty"`
	File string `json:"file,omitempty"`
	Row  int    `json:"row,omitempty"`
	By   string `json:"by,omitempty"`
}

// ItemOf is the item of one revision. The basis of its difficulty is empty where it is not known.
func ItemOf(item bank.Item, basis bank.Basis) Item {
	out := Item{
		ID: item.ID, Revision: item.Revision,
		Task: item.Task, Question: item.Question("en"), Wording: item.Wording, Key: item.Key,
		Skill: item.Skill, Standards: append([]task.Code{}, item.Codes...), Look: item.Look, Standing: item.Standing,
		Basis: basis, Seconds: item.Seconds, Traits: item.Traits.Named(),
		Notes: item.Notes, By: item.By, At: item.At, Reason: item.Reason,
	}
	if item.Predictable() || basis != "" {
		d := item.Difficulty()
		out.Band, out.ShareRight, out.Difficulty = d.Band(), d.Percent(), d.Logits()
	}
	if item.Origin != (bank.Origin{}) {
		origin := Origin(item.Origin)
		out.Origin = &origin
	}
	if m := item.Measured; m != nil {
		e := m.StandardError.Logits()
		out.StandardError, out.Answers = &e, m.Answers
	}
	return out
}

// asks is the task, or the question of an item by hand.
func (it Item) asks() string { return cmp.Or(it.Task, it.Question) }

// Placed is an item in its place on a sheet.
type Placed struct {
	Number int `json:"number"` // from 1, in the order of the sheet
	Item
}

// ItemsOf is the items of a sheet that belongs to no quiz; basis tells what the difficulty of one rests on.
func ItemsOf(items []bank.Item, basis func(bank.Item) bank.Basis) []Placed {
	placed := []Placed{}
	for i, item := range items {
		placed = append(placed, Placed{i + 1, ItemOf(item, basis(item))})
	}
	return placed
}

// quizItem is an item in its place in a quiz.
type quizItem struct {
	Placed
	Row    string `json:"row"` // of the plan, which it fills
	Uses   int    `json:"uses"`
	Shared bool   `json:"shared,omitempty"`
}

// quizItemOf is the item as it was given, which is all that is kept of it with its quiz.
func quizItemOf(placed assemble.Placed) quizItem {
	given := placed.Item
	given.Predicted, given.Measured = given.Difficulty(), nil
	given.Standing, given.Origin, given.Notes = "", bank.Origin{}, ""
	given.By, given.At, given.Reason = "", time.Time{}, ""
	return quizItem{Placed{placed.Number, ItemOf(given, placed.Basis)}, placed.Row, placed.Uses, placed.Shared}
}
