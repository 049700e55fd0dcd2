package bank

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// What a colleague's program sends through a desk is proved before it is kept, so that a program
// can do no more than its person: nothing is taken away, nothing that stands is rewritten, and what
// is new says truly who made it and when. The indexes are taken as they are sent; Check proves them.

// clockOff is how far the clock of a colleague's computer may be off.
const clockOff = time.Hour

// proof looks through a change that a person sends.
type proof struct {
	*Bank
	r      store.Reader
	change store.Change
	by     string
	now    time.Time
}

// ProveChange says what is wrong with a change that a person's program sends, as the bank stands in r.
func (b *Bank) ProveChange(r store.Reader, change store.Change, by string, now time.Time) error {
	p := proof{b, r, change, by, now}
	rules := map[string]func(key, old, new []byte) error{
		itemsBucket: p.item, revisionsBucket: p.revision, plansBucket: p.plan, quizzesBucket: p.quiz,
		listsBucket: p.list, listRowsBucket: onlyNew, usesBucket: onlyNew, takenBackBucket: p.takenBack, aboutBucket: p.about,
	}
	for bucket, entries := range change.Put {
		rule, ruled := rules[bucket]
		if !ruled && !slices.Contains(indexes, bucket) {
			return fmt.Errorf("only an owner of the desk may change the bank's part %q, as merge and refresh do", bucket)
		}
		if !ruled {
			continue
		}
		keys := make([][]byte, len(entries))
		for i, e := range entries {
			keys[i] = e.Key
		}
		olds, err := r.GetAll(bucket, keys)
		if err != nil {
			return err
		}
		for i, e := range entries {
			if err := rule(e.Key, olds[i], e.Value); err != nil {
				return err
			}
		}
	}
	for _, bucket := range change.Next {
		if !slices.Contains(indexes, bucket) {
			return fmt.Errorf("only an owner of the desk may number the bank's part %q", bucket)
		}
	}
	return p.deletes()
}

// indexes are the buckets that can be worked out anew from the others.
var indexes = []string{fingerprintBucket, doublesBucket, groupsBucket, groupMembers, originsBucket, originMembers}

// deletes lets only go what an index held, and uses that are taken back or given again.
func (p proof) deletes() error {
	for bucket, entries := range p.change.Delete {
		if slices.Contains(indexes, bucket) {
			continue
		}
		to, moves := map[string]string{usesBucket: takenBackBucket, takenBackBucket: usesBucket}[bucket]
		for _, e := range entries {
			if !moves || p.change.Putting(to, e.Key) == nil {
				return fmt.Errorf("nothing is deleted from the bank's part %q", bucket)
			}
		}
	}
	return nil
}

var errRewrites = errors.New("what the bank keeps is not rewritten; a newer evenhand may do otherwise: use the version that the desk has")

func onlyNew(_, old, _ []byte) error {
	if old != nil {
		return errRewrites
	}
	return nil
}

// signed says what is wrong with who did something, and when.
func (p proof) signed(by string, at time.Time) error { return ProveSigned(by, at, p.by, p.now) }

// ProveSigned says what is wrong with what is said to be done by somebody at a time, where a person's program
// sends it now.
func ProveSigned(by string, at time.Time, person string, now time.Time) error {
	switch {
	case by != person:
		return fmt.Errorf("this is said to be by %q, but the token is %s's; leave out --by and EVENHAND_BY, or say --by %q",
			by, person, person)
	case at.Sub(now).Abs() > clockOff:
		return fmt.Errorf("the clock of your computer says %s, the desk's %s; set it right",
			at.UTC().Format(time.DateTime), now.UTC().Format(time.DateTime))
	}
	return nil
}

// item lets in new items and next revisions whose former one is kept.
func (p proof) item(key, old, new []byte) error {
	var before, next Item
	if len(key) != len(ulid.ULID{}) {
		return errRecord
	}
	if err := p.unsealItem(key, new, &next); err != nil {
		return err
	}
	if err := p.signed(next.By, next.At); err != nil {
		return err
	}
	if old == nil {
		if next.Revision != 1 {
			return errRewrites
		}
		return nil
	}
	if err := p.unsealItem(key, old, &before); err != nil {
		return err
	}
	kept := revisionKey(ulid.ULID(key), before.Revision)
	if next.Revision != before.Revision+1 || next.Origin != before.Origin || !bytes.Equal(p.change.Putting(revisionsBucket, kept), sealItem(kept, &before)) {
		return errRewrites
	}
	return p.mayLetIn(before, next)
}

// revision lets in former revisions of items that get a next one.
func (p proof) revision(key, old, _ []byte) error {
	if len(key) <= len(ulid.ULID{}) || old != nil || p.change.Putting(itemsBucket, key[:len(ulid.ULID{})]) == nil {
		return errRewrites
	}
	return nil // that it is the former one is proved with the item
}

// plan lets in the next text of a plan.
func (p proof) plan(key, old, new []byte) error {
	var plan Plan
	if err := unsealJSON(key, new, &plan); err != nil || old != nil || !bytes.Equal(key, planKey(plan.Name, plan.Revision)) {
		return errors.Join(errRewrites, err)
	}
	if plan.Revision > 1 {
		before, err := p.r.Get(plansBucket, planKey(plan.Name, plan.Revision-1))
		if err != nil {
			return err
		}
		if before == nil {
			return errRewrites
		}
	}
	return p.signed(plan.By, plan.At)
}

// quiz lets in new quizzes, and of those that stand how they were printed and whether they are taken back.
func (p proof) quiz(key, old, new []byte) error {
	quiz, err := p.readQuiz(store.Entry{Key: key, Value: new})
	if err != nil {
		return err
	}
	if old == nil {
		return p.signed(quiz.By, quiz.At)
	}
	before, err := p.readQuiz(store.Entry{Key: key, Value: old})
	if err != nil {
		return err
	}
	quiz.Printed, quiz.TakenBack = before.Printed, before.TakenBack
	return sameJSON(before, quiz)
}

// list lets in new lists, and that one is taken back.
func (p proof) list(key, old, new []byte) error {
	var list, before List
	if err := unsealJSON(key, new, &list); err != nil {
		return err
	}
	if old == nil {
		return p.signed(list.By, list.At)
	}
	if err := unsealJSON(key, old, &before); err != nil {
		return err
	}
	if list.TakenBack != nil && before.TakenBack == nil {
		if err := p.signed(list.TakenBack.By, list.TakenBack.At); err != nil {
			return err
		}
		list.TakenBack = nil
	}
	return sameJSON(before, list)
}

// takenBack lets a use go where it is kept as taken back.
func (p proof) takenBack(key, _, new []byte) error {
	use, err := p.r.Get(usesBucket, key)
	if err != nil {
		return err
	}
	if use == nil || !bytes.Equal(use, new) || !p.change.Deleting(usesBucket, key) {
		return errRewrites
	}
	return nil
}

// about lets in what was learnt from papers; the rest of it is the team's to decide.
func (p proof) about(key, old, new []byte) error {
	if !bytes.Equal(key, tableKey) {
		return errors.New("only an owner of the desk may change how the bank is kept or drafts are reviewed")
	}
	var table, before Table
	if err := unsealJSON(key, new, &table); err != nil {
		return err
	}
	if old != nil {
		if err := unsealJSON(key, old, &before); err != nil {
			return err
		}
	}
	if table.Number != before.Number+1 {
		return errRewrites
	}
	return p.signed(table.By, table.At)
}

// sameJSON says that two values are kept alike.
func sameJSON(a, b any) error {
	one, err := json.Marshal(a)
	if err != nil {
		return err
	}
	other, err := json.Marshal(b)
	if err == nil && !bytes.Equal(one, other) {
		err = errRewrites
	}
	return err
}
