package bank

import (
	"bytes"
	"errors"
	"fmt"
	"iter"
	"regexp"
	"time"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"
)

// usage is what the assembler sees of an item's uses.
type usage struct {
	count    int
	lastWeek string
}

const (
	weekSize = len("2026-W48")
	longest  = 1000 // bytes of a name that is part of a key
)

var weekPattern = regexp.MustCompile(`^[0-9]{4}-W(0[1-9]|[1-4][0-9]|5[0-3])$`)

// Check says what is wrong with a use.
func (u Use) Check() error {
	switch {
	case !weekPattern.MatchString(u.Week):
		return fmt.Errorf("%q is no week; write the year and the ISO week, such as 2026-W48", u.Week)
	case u.Quiz == "":
		return errors.New("the quiz has no name")
	case len(u.Quiz) > longest:
		return fmt.Errorf("the quiz's name is %d bytes long; at most %d can be kept", len(u.Quiz), longest)
	}
	return nil
}

// RecordUse notes that the items stood in a quiz: in all of them or, if an ID is
// unknown, in none. A quiz counts once a week for an item, however often it is
// recorded.
func (b *Bank) RecordUse(ids []string, use Use) error {
	if err := use.Check(); err != nil {
		return err
	}
	keys := make([]ulid.ULID, len(ids))
	for i, id := range ids {
		var err error
		if keys[i], err = parseID(id); err != nil {
			return err
		}
	}
	return b.update(func(tx *bbolt.Tx) error {
		w := b.writer(tx)
		for _, id := range keys {
			if err := w.recordUse(id, use); err != nil {
				return err
			}
		}
		return w.flush()
	})
}

func (w *writer) recordUse(id ulid.ULID, use Use) error {
	var it Item
	if err := w.get(id, &it); err != nil {
		return err
	}
	key := append(append(id[:], use.Week...), use.Quiz...)
	if w.uses.Get(key) != nil {
		return nil
	}
	if err := w.ungroup(id, &it); err != nil {
		return err
	}
	if err := w.uses.Put(key, Seal(key, appendTime(nil, use.At))); err != nil {
		return err
	}
	return w.group(id, &it)
}

// UsedBy lists the items that are noted as used in a quiz, which its name and week tell,
// and when that was noted first.
func (b *Bank) UsedBy(quiz, week string) (ids []string, at time.Time, err error) {
	err = b.view(func(tx *bbolt.Tx) error {
		for key, value := range usesOf(tx, quiz, week) {
			use, err := readUse(key, value)
			if err != nil {
				return damaged(b.Path(), "a use can't be read")
			}
			if len(ids) == 0 || use.At.Before(at) {
				at = use.At
			}
			ids = append(ids, ulid.ULID(key[:len(ulid.ULID{})]).String())
		}
		return nil
	})
	return ids, at, err
}

// usesOf goes through the uses of a quiz.
func usesOf(tx *bbolt.Tx, quiz, week string) iter.Seq2[[]byte, []byte] {
	suffix := append([]byte(week), quiz...)
	return func(yield func(key, value []byte) bool) {
		c := tx.Bucket(usesBucket).Cursor()
		for k, v := c.First(); k != nil; k, v = c.Next() {
			if bytes.Equal(k[len(ulid.ULID{}):], suffix) && !yield(k, v) {
				return
			}
		}
	}
}

// TakeBack takes back all uses of a quiz, which was not given after all, and returns
// how many items are free again.
func (b *Bank) TakeBack(quiz, week string) (free int, err error) {
	err = b.update(func(tx *bbolt.Tx) error {
		var keys [][]byte
		for key := range usesOf(tx, quiz, week) {
			keys = append(keys, bytes.Clone(key))
		}
		free = len(keys)
		w := b.writer(tx)
		for _, key := range keys {
			if err := w.dropUse(key); err != nil {
				return err
			}
		}
		if err := b.markTakenBack(tx, quiz, week); err != nil {
			return err
		}
		return w.flush()
	})
	return free, err
}

func (w *writer) dropUse(key []byte) error {
	id := ulid.ULID(key[:len(ulid.ULID{})])
	var it Item
	if err := w.get(id, &it); err != nil {
		return err
	}
	if err := w.ungroup(id, &it); err != nil {
		return err
	}
	if err := w.uses.Delete(key); err != nil {
		return err
	}
	return w.group(id, &it)
}

// Uses lists the quizzes that the item stood in, by week and then by name.
func (b *Bank) Uses(id string) ([]Use, error) {
	key, err := parseID(id)
	if err != nil {
		return nil, err
	}
	var list []Use
	err = b.view(func(tx *bbolt.Tx) error {
		if tx.Bucket(itemsBucket).Get(key[:]) == nil {
			return b.unknown(id)
		}
		c := tx.Bucket(usesBucket).Cursor()
		for k, v := c.Seek(key[:]); bytes.HasPrefix(k, key[:]); k, v = c.Next() {
			use, err := readUse(k, v)
			if err != nil {
				return damaged(b.Path(), fmt.Sprintf("a use of item %s can't be read", id))
			}
			list = append(list, use)
		}
		return nil
	})
	return list, err
}

func readUse(key, sealed []byte) (Use, error) {
	value, ok := Unseal(key, sealed)
	if !ok || len(key) < len(ulid.ULID{})+weekSize {
		return Use{}, errRecord
	}
	key = key[len(ulid.ULID{}):]
	r := reader{raw: value}
	return Use{Week: string(key[:weekSize]), Quiz: string(key[weekSize:]), At: r.time()}, r.end()
}

// usageOf counts the uses of an item; uses is the bucket of uses.
func usageOf(uses *bbolt.Bucket, id ulid.ULID) (u usage) {
	c := uses.Cursor()
	for k, _ := c.Seek(id[:]); bytes.HasPrefix(k, id[:]); k, _ = c.Next() {
		u.count++
		u.lastWeek = string(k[len(id):][:weekSize])
	}
	return u
}
