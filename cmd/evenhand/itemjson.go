package main

import (
	"time"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// itemJSON is an item as other programs read it.
type itemJSON struct {
	ID            string            `json:"id"`
	Revision      int               `json:"revision"`
	Task          string            `json:"task"`
	Question      string            `json:"question"`
	Wording       map[string]string `json:"wording,omitempty"`
	Key           string            `json:"key"`
	Skill         standards.SkillID `json:"skill"`
	Standards     []task.Code       `json:"standards"`
	Look          task.Look         `json:"look"`
	Standing      bank.Standing     `json:"standing"`
	Band          standards.Band    `json:"band,omitempty"` // empty, as the next two, where nothing is known to predict by
	ShareRight    int               `json:"share_right,omitempty"`
	Difficulty    float64           `json:"difficulty"`
	Basis         bank.Basis        `json:"basis,omitempty"` // of an item as it stands: guess, learnt or measured
	StandardError *float64          `json:"standard_error,omitempty"`
	Answers       int               `json:"answers,omitempty"`
	Seconds       int               `json:"seconds"`
	Traits        map[string]string `json:"traits"`
	Origin        originJSON        `json:"origin"`
	Notes         string            `json:"notes,omitempty"`
	By            string            `json:"by"`
	At            time.Time         `json:"at"`
	Reason        string            `json:"reason,omitempty"`
}

type originJSON struct {
	Kind string `json:"kind"`
	Seed uint64 `json:"seed,omitempty"`
	File string `json:"file,omitempty"`
	Row  int    `json:"row,omitempty"`
	By   string `json:"by,omitempty"`
}

func toJSON(item bank.Item, basis bank.Basis) itemJSON {
	d := item.Difficulty()
	out := itemJSON{
		ID: item.ID, Revision: item.Revision, Task: item.Task, Question: item.Question("en"), Wording: item.Wording, Key: item.Key,
		Skill: item.Skill, Standards: item.Codes, Look: item.Look, Standing: item.Standing,
		Band: d.Band(), ShareRight: d.Percent(), Difficulty: d.Logits(), Basis: basis, Seconds: item.Seconds,
		Traits: item.Traits.Named(), Origin: originJSON(item.Origin), Notes: item.Notes, By: item.By, At: item.At, Reason: item.Reason,
	}
	if !item.Predictable() {
		out.Band, out.ShareRight, out.Difficulty = "", 0, 0
	}
	if out.Standards == nil {
		out.Standards = []task.Code{}
	}
	if m := item.Measured; m != nil {
		e := m.StandardError.Logits()
		out.StandardError, out.Answers = &e, m.Answers
	}
	return out
}

// pastJSON is an item with all that happened to it.
type pastJSON struct {
	itemJSON
	Missteps []misstepJSON `json:"missteps"`
	Uses     []useJSON     `json:"uses"`
	History  []itemJSON    `json:"history"`
}

type misstepJSON struct {
	Answer   string   `json:"answer"`
	Missteps []string `json:"missteps"`
	Tells    string   `json:"tells"`
}

type useJSON struct {
	Quiz string    `json:"quiz"`
	Week string    `json:"week"`
	At   time.Time `json:"at"`
}

func withPast(item bank.Item, basis bank.Basis, uses []bank.Use, history []bank.Item) pastJSON {
	past := pastJSON{itemJSON: toJSON(item, basis), Missteps: []misstepJSON{}, Uses: []useJSON{}}
	if asked, err := task.Parse(item.Task); err == nil {
		for _, m := range task.MisstepsIn(asked, item.Look) {
			row := misstepJSON{Answer: m.Answer, Tells: tells(m)}
			for _, kind := range m.Kinds {
				row.Missteps = append(row.Missteps, kind.Name)
			}
			past.Missteps = append(past.Missteps, row)
		}
	}
	for _, use := range uses {
		past.Uses = append(past.Uses, useJSON(use))
	}
	for _, revision := range history {
		past.History = append(past.History, toJSON(revision, ""))
	}
	return past
}
