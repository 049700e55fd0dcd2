package results

import (
	"errors"
	"time"

	"evenhand/bank"
)

// Loss is what a bank and its marks hold that a copy of them doesn't: what going back to the copy takes out of use.
type Loss struct {
	New, Changed int      // items that were added, or changed, since
	Quizzes      []string // made since
	Plans        []string // kept or changed since
	Lists        []string // that came in since
	Marks        bool     // the copy holds marks; without, those of the bank stay as they are
	Papers       int      // marked, or marked again, since
	Forgotten    int      // pupils who were forgotten since, and whose results would come back
}

// None says that nothing would be lost.
func (l Loss) None() bool {
	return l.New+l.Changed+len(l.Quizzes)+len(l.Plans)+len(l.Lists)+l.Papers+l.Forgotten == 0
}

// Loss compares a bank, as it stands, with one of its copies.
func (c Copies) Loss(b *bank.Bank, name string) (l Loss, err error) {
	path, err := c.File(name)
	if err != nil {
		return l, err
	}
	then, err := bank.Open(path, bank.Options{ReadOnly: true})
	if err != nil {
		return l, err
	}
	err = l.ofBank(b, then)
	if err = errors.Join(err, then.Close()); err != nil {
		return l, err
	}
	marksThen, err := Open(Path(path), bank.Options{ReadOnly: true})
	if errors.Is(err, ErrNone) {
		return l, nil
	}
	if err != nil {
		return l, err
	}
	l.Marks = true
	marksNow, err := Open(Path(b.Path()), bank.Options{ReadOnly: true})
	if err == nil {
		err = errors.Join(l.ofMarks(marksNow, marksThen), marksNow.Close())
	} else if errors.Is(err, ErrNone) {
		err = nil
	}
	return l, errors.Join(err, marksThen.Close())
}

// ofBank finds what is in one bank and not in the other.
func (l *Loss) ofBank(now, then *bank.Bank) error {
	type state struct {
		revision int
		at       time.Time
	}
	items := map[string]state{}
	for it, err := range then.Find(bank.Query{}) {
		if err != nil {
			return err
		}
		items[it.ID] = state{it.Revision, it.At}
	}
	for it, err := range now.Find(bank.Query{}) {
		if err != nil {
			return err
		}
		switch before, there := items[it.ID]; {
		case !there:
			l.New++
		case before != state{it.Revision, it.At}:
			l.Changed++
		}
	}
	var err error
	if l.Quizzes, err = since(now.Quizzes, then.Quizzes, func(q bank.Quiz) (any, string) { return q.ID, q.Name() }); err != nil {
		return err
	}
	type revised struct {
		name     string
		revision int
	}
	l.Plans, err = since(now.Plans, then.Plans, func(p bank.Plan) (any, string) { return revised{p.Name, p.Revision}, p.Name })
	if err != nil {
		return err
	}
	l.Lists, err = since(now.Lists, then.Lists, func(s bank.List) (any, string) { return revised{s.Name, s.Number}, s.Name })
	return err
}

// since names what is listed now and wasn't then.
func since[T any](now, then func() ([]T, error), of func(T) (key any, name string)) (names []string, err error) {
	list, err := then()
	if err != nil {
		return nil, err
	}
	there := map[any]bool{}
	for _, one := range list {
		key, _ := of(one)
		there[key] = true
	}
	if list, err = now(); err != nil {
		return nil, err
	}
	for _, one := range list {
		if key, name := of(one); !there[key] {
			names = append(names, name)
		}
	}
	return names, nil
}

func (l *Loss) ofMarks(now, then *Store) error {
	_, papers, err := then.All()
	if err != nil {
		return err
	}
	type paper struct{ quiz, class, pupil string }
	there := map[paper]Paper{}
	for _, p := range papers {
		there[paper{p.Quiz, p.Class, p.Pupil}] = p
	}
	if _, papers, err = now.All(); err != nil {
		return err
	}
	for _, p := range papers {
		before, ok := there[paper{p.Quiz, p.Class, p.Pupil}]
		if !ok || before.Revision != p.Revision || !before.At.Equal(p.At) {
			l.Papers++
		}
	}
	out, err := now.forgottenIn()
	if err != nil {
		return err
	}
	back, err := then.held(out)
	l.Forgotten = len(back)
	return err
}
