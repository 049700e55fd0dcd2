package intake

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/bank"
	"evenhand/standards/words"
)

// edit brings what a person may change in an export into an item: what follows from its
// task, and what the bank has learnt of it, stays the bank's.
func edit(it *bank.Item, row bank.Item) {
	it.Task, it.Wording, it.Look, it.Standing, it.Notes = row.Task, row.Wording, row.Look, row.Standing, row.Notes
	if row.ByHand() {
		it.Key, it.Skill, it.Codes, it.Seconds = row.Key, row.Skill, row.Codes, row.Seconds
	}
}

// edits names what is different in a row from the item as it stands, and how.
func edits(it, row bank.Item) (changes []*words.Told) {
	differ := func(name, was, is string) {
		if was != is {
			changes = append(changes, words.Sayf("%s %q was %q", name, shorten(is), shorten(was)))
		}
	}
	differ("task", it.Task, row.Task)
	for _, lang := range []string{"en", "es"} {
		differ("question_"+lang, it.Wording[lang], row.Wording[lang])
	}
	differ("look", string(it.Look), string(row.Look))
	differ("standing", string(it.Standing), string(row.Standing))
	differ("notes", it.Notes, row.Notes)
	if row.ByHand() {
		differ("key", it.Key, row.Key)
		differ("skill", string(it.Skill), string(row.Skill))
		differ("standards", it.Standards(), row.Standards())
		differ("seconds", fmt.Sprint(it.Seconds), fmt.Sprint(row.Seconds))
	}
	return changes
}

// hereRetired notes an item that is out of use.
const hereRetired = "item %s is here but retired"

// takenBack begins the reason of items that were withdrawn with their whole list.
const takenBack = "list taken back: "

func withdrawn(it bank.Item) bool {
	return it.Standing == bank.Retired && strings.HasPrefix(it.Reason, takenBack)
}

// bringBack makes an item that was withdrawn with its list what the list says now.
func (in *importer) bringBack(out *Outcome, row bank.Item, a bank.Added) error {
	if !a.Existing || a.Standing != bank.Retired {
		return nil
	}
	it, err := in.bank.Get(a.ID)
	if err != nil || !withdrawn(it) {
		return err
	}
	in.report.Notes = slices.DeleteFunc(in.report.Notes, func(n Note) bool { return n.Line == out.First && n.Text.Format == hereRetired })
	in.report.Notes = append(in.report.Notes, Note{out.First, "", words.Sayf("item %s was taken back and is in use again", a.ID)})
	_, err = in.bank.Revise(a.ID, in.options.By, "imported again from "+in.report.List.Name, in.options.At, func(now *bank.Item) error {
		edit(now, row)
		return nil
	})
	return err
}
