package bank

import (
	"strings"
	"time"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// A draft becomes ready for quizzes when somebody who did not write it has read it. A team may do
// without: then anyone lets any draft in.

var reviewKey = []byte("review")

// Review says who lets drafts in.
type Review struct {
	Anyone bool      `json:"anyone"` // also who wrote them
	By     string    `json:"by"`     // who said so; empty where nobody did
	At     time.Time `json:"at"`     // UTC
}

// Review is how drafts are let in, as the team wishes.
func (b *Bank) Review() (how Review, err error) {
	err = b.view(func(r store.Reader) error {
		how, err = b.readReview(r)
		return err
	})
	return how, err
}

// SetReview keeps how drafts are let in.
func (b *Bank) SetReview(how Review) error {
	if strings.TrimSpace(how.By) == "" {
		return words.Errorf("say who decides on reviewing")
	}
	return b.update(func(w store.Writer) error { return putSealed(w, aboutBucket, reviewKey, how) })
}

func (b *Bank) readReview(r store.Reader) (how Review, err error) {
	sealed, err := r.Get(aboutBucket, reviewKey)
	if sealed == nil || err != nil {
		return how, err
	}
	if unsealJSON(reviewKey, sealed, &how) != nil {
		return how, b.damaged("who reviews drafts can't be read")
	}
	return how, nil
}

// mayLetIn refuses to make an item ready from the hands of who wrote any of it since it was ready last.
func (b *Bank) mayLetIn(old, next Item) error {
	if old.Standing == Ready || next.Standing != Ready {
		return nil
	}
	how, err := b.Review()
	if err != nil || how.Anyone {
		return err
	}
	history, err := b.History(old.ID)
	if err != nil {
		return err
	}
	wrote := samePerson(old.Origin.By, next.By)
	for i, revision := range history {
		switch written := i == 0 || !revision.asksLike(history[i-1]); {
		case revision.Standing == Ready:
			wrote = false
		case written && samePerson(revision.By, next.By):
			wrote = true
		}
	}
	if wrote || !next.asksLike(old) {
		alone, err := b.oneAuthor(next.By)
		if err != nil {
			return err
		}
		return &OwnDraftError{Item: old.ID, By: next.By, Alone: alone}
	}
	return nil
}

// asksLike says that two revisions put the same question in the same way, with the same key.
func (it Item) asksLike(other Item) bool {
	same := it.Task == other.Task && it.Key == other.Key && it.Look == other.Look && it.Skill == other.Skill
	for _, lang := range append(languages(it.Wording), languages(other.Wording)...) {
		same = same && it.Wording[lang] == other.Wording[lang]
	}
	return same
}

func samePerson(a, b string) bool {
	return a != "" && strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// oneAuthor says that every item came from one person.
func (b *Bank) oneAuthor(who string) (alone bool, err error) {
	err = b.view(func(r store.Reader) error {
		alone = true
		for e, err := range r.Scan(originsBucket, store.Range{}) {
			if err != nil {
				return err
			}
			alone = alone && samePerson(readOrigin(e.Key).By, who)
		}
		return nil
	})
	return alone, err
}

// OwnDraftError says that a person would let in what the person wrote.
type OwnDraftError struct {
	Item, By string
	Alone    bool // all items of the bank came from that person
}

func (e *OwnDraftError) Error() string { return e.Told().String() }

// Told is what the error tells.
func (e *OwnDraftError) Told() *words.Told {
	if e.Alone {
		return words.Sayf("%s wrote of it, and in a team a colleague lets it in: evenhand review %s --ready --by WHO. "+
			"All of this bank is by %s: who works alone says once evenhand review --anyone on", e.By, e.Item, e.By)
	}
	return words.Sayf("%s wrote of it, and a colleague lets it in: evenhand review %s --ready --by WHO; "+
		"a team that does without this says evenhand review --anyone on", e.By, e.Item)
}
