package intake

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/bank"
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
func edits(it, row bank.Item) (changes []string) {
	differ := func(name, was, is string) {
		if was != is {
			changes = append(changes, fmt.Sprintf("%s %q was %q", name, shorten(is), shorten(was)))
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
	in.report.Notes = slices.DeleteFunc(in.report.Notes, func(n Note) bool { return n.Line == out.First && strings.HasSuffix(n.Text, "but retired") })
	in.report.Notes = append(in.report.Notes, Note{out.First, "", "item " + a.ID + " was taken back and is in use again"})
	_, err = in.bank.Revise(a.ID, in.options.By, "imported again from "+in.report.List.Name, in.options.At, func(now *bank.Item) error {
		edit(now, row)
		return nil
	})
	return err
}

// UsedError says that a list can't be taken back, as quizzes hold items of it.
type UsedError struct {
	List  string
	Items []string // IDs
}

func (e *UsedError) Error() string {
	return fmt.Sprintf("%s of %s stood in a quiz already, such as %s; retire what should go one by one", count(len(e.Items), "item"), e.List, e.Items[0])
}

// Undo takes a whole list out of use again: every item that came in by it is retired,
// with its history. It changes nothing when one of them was used in a quiz. It returns
// how many items were retired; none came by that name when found is 0.
func Undo(b *bank.Bank, list string, o ImportOptions) (found, retired int, err error) {
	var ids, used []string
	for it, err := range b.Find(bank.Query{Kind: "imported"}) {
		if err != nil {
			return 0, 0, err
		}
		if it.Origin.File != list && !strings.HasPrefix(it.Origin.File, list+" (") {
			continue
		}
		ids = append(ids, it.ID)
		uses, err := b.Uses(it.ID)
		if err != nil {
			return 0, 0, err
		}
		if len(uses) > 0 {
			used = append(used, it.ID)
		}
	}
	switch {
	case len(used) > 0:
		return len(ids), 0, &UsedError{list, used}
	case len(ids) == 0 || o.DryRun:
		return len(ids), 0, nil
	}
	retired, err = b.ReviseAll(ids, o.By, takenBack+list, o.At, func(it *bank.Item) error {
		it.Standing = bank.Retired
		return nil
	})
	return len(ids), retired, err
}
