package bank

import (
	"context"
	"errors"
	"sync"

	"evenhand/bank/store"
)

// AsIfTakenBack is the bank as it would read if earlier quizzes had been taken back, so that others can be chosen
// that take their place. Nothing is written, neither by this nor by it.
func (b *Bank) AsIfTakenBack(earlier ...Earlier) *Bank {
	if len(earlier) == 0 {
		return b
	}
	as := &asIf{Store: b.store, change: func(tx store.Writer) error {
		for _, e := range earlier {
			if err := b.takeBackEarlier(tx, e); err != nil {
				return err
			}
		}
		return nil
	}}
	return &Bank{store: as, ctx: b.ctx, entropy: b.entropy}
}

// asIf is a store that reads as if it had been changed.
type asIf struct {
	store.Store
	change func(store.Writer) error

	mutex sync.Mutex
	draft *store.Draft
	as    uint64 // the sequence of groups' members when it was made, which goes on with every change of them
}

func (a *asIf) View(ctx context.Context, read func(store.Reader) error) error {
	return a.Store.View(ctx, func(r store.Reader) error {
		draft, err := a.changed(r)
		if err != nil {
			return err
		}
		return read(draft)
	})
}

// changed is the draft of the change over what is read; it is made anew when items came or went.
func (a *asIf) changed(r store.Reader) (*store.Draft, error) {
	now, err := r.Sequence(groupMembers)
	if err != nil {
		return nil, err
	}
	a.mutex.Lock()
	defer a.mutex.Unlock()
	if a.draft == nil || a.as != now {
		draft := store.NewDraft(r)
		if err := a.change(draft); err != nil {
			return nil, err
		}
		a.draft, a.as = draft, now
	}
	return a.draft.Over(r), nil
}

// Update is refused: what is not so can't be built upon.
func (a *asIf) Update(context.Context, func(store.Writer) error) error {
	return errors.New("the bank is only looked at as it would be")
}
