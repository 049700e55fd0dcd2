package main

import (
	"time"

	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/standards/task"
)

// pastJSON is an item with all that happened to it.
type pastJSON struct {
	export.Item
	Missteps []misstepJSON `json:"missteps"`
	Uses     []useJSON     `json:"uses"`
	History  []export.Item `json:"history"`
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
	past := pastJSON{Item: export.ItemOf(item, basis), Missteps: []misstepJSON{}, Uses: []useJSON{}}
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
		past.History = append(past.History, export.ItemOf(revision, ""))
	}
	return past
}
