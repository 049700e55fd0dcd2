package bank

import (
	"evenhand/bank/store"
	"evenhand/standards/words"
)

// TakeBackQuiz takes back a quiz that was not given after all, with its make-up forms, and returns how
// many items are free again. Uses are kept by title and week, which a quiz shares with its make-up forms
// and may share with others; an item that one of those holds stays used.
func (b *Bank) TakeBackQuiz(id string) (free int, err error) {
	err = b.update(func(tx store.Writer) error {
		free, err = b.takeBackQuiz(tx, id)
		return err
	})
	return free, err
}

// Earlier names a quiz that was not given after all: by its ID or, where an earlier evenhand noted its uses and
// kept no quiz, by title and week.
type Earlier struct{ ID, Title, Week string }

func (b *Bank) takeBackEarlier(tx store.Writer, e Earlier) (err error) {
	if e.ID == "" {
		_, err = b.takeBackUses(tx, e.Title, e.Week)
	} else {
		_, err = b.takeBackQuiz(tx, e.ID)
	}
	return err
}

// ChangeQuiz keeps a quiz in the place of an earlier one that was not given after all, all or nothing.
func (b *Bank) ChangeQuiz(earlier Earlier, q Quiz) error {
	ids, err := q.check()
	if err != nil {
		return err
	}
	return b.update(func(tx store.Writer) error {
		if err := b.takeBackEarlier(tx, earlier); err != nil {
			return err
		}
		return b.keepQuiz(tx, q, ids)
	})
}

// ChangeUse notes that the items stood in a quiz, and only they: earlier uses of it are taken back, all or nothing.
func (b *Bank) ChangeUse(ids []string, use Use) error {
	if err := use.Check(); err != nil {
		return err
	}
	keys, err := parseIDs(ids)
	if err != nil {
		return err
	}
	return b.update(func(tx store.Writer) error {
		if _, err := b.takeBackUses(tx, use.Quiz, use.Week); err != nil {
			return err
		}
		return b.writer(tx).recordUses(keys, use)
	})
}

// Instead finds the quiz that stands now where one stood that was changed, however often; found is false where
// none does.
func (b *Bank) Instead(id string) (q Quiz, found bool, err error) {
	err = b.view(func(r store.Reader) error {
		q, found = Quiz{}, false
		all, err := b.readQuizzes(r, func(Quiz) bool { return true })
		known := map[string]bool{id: true}
		for grew := true; grew && !found; {
			grew = false
			for _, next := range all {
				if !known[next.From] || known[next.ID] {
					continue
				}
				known[next.ID], grew = true, true
				if !next.TakenBack {
					q, found = next, true
				}
			}
		}
		return err
	})
	return q, found, err
}

func (b *Bank) takeBackQuiz(tx store.Writer, id string) (free int, err error) {
	all, err := b.readQuizzes(tx, func(q Quiz) bool { return !q.TakenBack })
	if err != nil {
		return 0, err
	}
	var taken []Quiz
	for _, q := range all {
		if q.ID == id || q.MakeUp == id {
			taken = append(taken, q)
		}
	}
	if len(taken) == 0 {
		return 0, words.Errorf("%s keeps no quiz %s; evenhand quizzes lists them", b.Path(), id)
	}
	w := b.writer(tx)
	if free, err = w.dropUses(usesToDrop(all, taken)); err != nil {
		return 0, err
	}
	for _, q := range taken {
		q.TakenBack = true
		if err := putQuiz(tx, q); err != nil {
			return 0, err
		}
	}
	return free, w.flush()
}

// usesToDrop are the keys of the uses that only quizzes which are taken back have.
func usesToDrop(all, taken []Quiz) (keys [][]byte) {
	held, goes := map[string]bool{}, map[string]bool{}
	for _, q := range taken {
		goes[q.ID] = true
	}
	for _, q := range all {
		if goes[q.ID] {
			continue
		}
		for _, key := range q.useKeys() {
			held[key] = true
		}
	}
	for _, q := range taken {
		for _, key := range q.useKeys() {
			if !held[key] {
				held[key] = true // each once
				keys = append(keys, []byte(key))
			}
		}
	}
	return keys
}

// useKeys are the keys of the uses of a quiz's items.
func (q Quiz) useKeys() (keys []string) {
	for _, form := range q.Forms {
		for _, placed := range form.Items {
			if id, err := parseID(placed.Item.ID); err == nil {
				keys = append(keys, string(id[:])+q.Week+q.Title)
			}
		}
	}
	return keys
}
