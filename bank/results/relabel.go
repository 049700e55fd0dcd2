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
		item, err := b.Get(learnt.ID)
		if err != nil || !learnt.shows(item) {
			continue // the bank was another one, or the item has changed: neither is wrong
		}
		changes = append(changes, Change{item, bank.Measured{
			Difficulty: learnt.Measured, StandardError: learnt.StandardError, Answers: learnt.Answers,
		}})
	}
	return changes, nil
}

// shows says that the quiz asked what the item asks.
func (it Item) shows(item bank.Item) bool {
	if item.Key != it.Key {
		return false
	}
	if task, ok := it.Task(); ok {
		return task.String() == item.Task
	}
	return it.Asks == item.Question("en") || it.Asks == item.Question("es")
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
