package results

import (
	"time"

	"evenhand/bank"
	"evenhand/standards"
)

// Change is an item of a bank with the difficulty that papers show.
type Change struct {
	Item     bank.Item // as it stands
	Measured bank.Measured
}

// New says that the bank has it otherwise so far.
func (c Change) New() bool { return c.Item.Measured == nil || *c.Item.Measured != c.Measured }

// Changes lists the measured items that are still in the bank as the quizzes showed
// them, in the order of the quizzes. Items changed since, and items the bank doesn't
// know, are left out.
func (l Learnt) Changes(b *bank.Bank) (changes []Change, err error) {
	for _, learnt := range l.Items {
		if learnt.Answers == 0 {
			continue
		}
		item, ok, err := learnt.in(b)
		if err != nil {
			return nil, err
		}
		if ok {
			changes = append(changes, Change{item, bank.Measured{
				Difficulty: learnt.Measured, StandardError: learnt.StandardError, Answers: learnt.Answers,
			}})
		}
	}
	return changes, nil
}

// in finds the item in a bank, if it still asks what the quiz asked.
func (it Item) in(b *bank.Bank) (item bank.Item, ok bool, err error) {
	asked := bank.NewHandItem(it.Asks, it.Key, it.Skill, "en", bank.Origin{})
	task, understood := it.Task()
	if understood {
		asked = bank.NewItem(task, "", bank.Origin{})
	}
	id, ok, err := b.Has(asked.Fingerprint())
	if err != nil || !ok || id != it.ID {
		return item, false, err
	}
	item, err = b.Get(id)
	// A task turned around is the same item to a bank, but another one to children.
	return item, item.Key == it.Key && (!understood || item.Task == task.String()), err
}

// Relabel writes the measured difficulties into the bank, each as a new revision,
// and returns how many items got one. Those that have them already stay as they are.
func Relabel(b *bank.Bank, changes []Change, by, reason string, at time.Time) (int, error) {
	measured := map[string]bank.Measured{}
	var ids []string
	for _, change := range changes {
		ids = append(ids, change.Item.ID)
		measured[change.Item.ID] = change.Measured
	}
	return b.ReviseAll(ids, by, reason, at, func(item *bank.Item) error {
		m := measured[item.ID]
		item.Measured = &m
		return nil
	})
}

// Range is the difficulty less and plus two standard errors: where it lies with some
// 95 chances in 100.
func (c Change) Range() (low, high standards.Difficulty) {
	return c.Measured.Difficulty - 2*c.Measured.StandardError, c.Measured.Difficulty + 2*c.Measured.StandardError
}
