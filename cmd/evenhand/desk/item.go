package desk

import (
	"errors"
	"net/http"

	"evenhand/bank"
	"evenhand/standards/task"
)

// item shows one item with its history.
func item(v *visit) error {
	it, err := v.itemAsked()
	if err != nil {
		return err
	}
	history, err := v.desk.bank.History(it.ID)
	if err != nil {
		return err
	}
	uses, err := v.desk.bank.Uses(it.ID)
	if err != nil {
		return err
	}
	return v.show("item", struct {
		shown
		Question string
		Missteps []task.Misstep
		Traits   []string
		History  []revision
		Uses     []bank.Use
	}{v.draw(it), v.said.Asks(it.Question(v.said.Lang)), misstepsOf(it), v.said.Traits(it.Traits), v.compared(history), uses})
}

// itemAsked is the item that the address names.
func (v *visit) itemAsked() (bank.Item, error) {
	it, err := v.desk.bank.Get(v.PathValue("id"))
	if err != nil {
		return it, &fault{status: http.StatusNotFound, text: v.said.say("item.nothing"), err: err}
	}
	return it, nil
}

// misstepsOf are the wrong answers that suggest something.
func misstepsOf(it bank.Item) []task.Misstep {
	asked, err := task.Parse(it.Task)
	if err != nil {
		return nil
	}
	return task.MisstepsIn(asked, it.Look)
}

// revision is one state of an item and what it changed.
type revision struct {
	bank.Item
	Changes []change
}

// change is one thing that a revision changed; Name is the key of a sentence.
type change struct{ Name, Before, After string }

// compared are the revisions, the last one first, each with what it changed.
func (v *visit) compared(history []bank.Item) []revision {
	var list []revision
	for i := len(history) - 1; i >= 0; i-- {
		r := revision{Item: history[i]}
		if i > 0 {
			r.Changes = v.said.changesBetween(history[i-1], history[i])
		}
		list = append(list, r)
	}
	return list
}

// changesBetween lists what a person sees differ between two states of an item.
func (s sentences) changesBetween(before, after bank.Item) []change {
	var list []change
	for _, row := range []change{
		{"item.task", before.Task, after.Task},
		{"item.words", before.Wording["en"], after.Wording["en"]},
		{"item.words-es", before.Wording["es"], after.Wording["es"]},
		{"item.key", before.Key, after.Key},
		{"item.skill", s.Skill(before.Skill), s.Skill(after.Skill)},
		{"item.look", s.Term(before.Look.Title()), s.Term(after.Look.Title())},
		{"item.right", s.say("items.tenths", before.Difficulty().Tenths()), s.say("items.tenths", after.Difficulty().Tenths())},
		{"item.status", s.say("status." + string(before.Standing)), s.say("status." + string(after.Standing))},
		{"item.notes", before.Notes, after.Notes},
	} {
		if row.Before != row.After {
			list = append(list, row)
		}
	}
	return list
}

// setStanding makes an item ready, a draft again, or retires it.
func setStanding(v *visit) error {
	it, err := v.itemAsked()
	if err != nil {
		return err
	}
	standing := bank.Standing(v.FormValue("status"))
	switch standing {
	case bank.Draft, bank.Ready, bank.Retired:
	default:
		return v.wrong("item.nostatus")
	}
	reason := v.FormValue("reason")
	if reason == "" {
		reason = v.said.say("item.reason." + string(standing))
	}
	_, err = v.desk.bank.Revise(it.ID, v.by(), reason, v.now(), func(stands *bank.Item) error {
		if err := v.unchanged(*stands); err != nil {
			return err
		}
		stands.Standing = standing
		return nil
	})
	if errors.Is(err, errChanged) {
		return &fault{status: http.StatusConflict, text: v.said.say("item.changed"), err: err}
	}
	if errors.As(err, new(*bank.OwnDraftError)) {
		return &fault{status: http.StatusForbidden, text: v.said.say("item.owndraft"), err: err}
	}
	if err != nil {
		return err
	}
	return v.to("/items/" + it.ID)
}
