package bank

import (
	"bytes"
	"errors"
	"iter"
	"regexp"
	"slices"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// usage is what the assembler sees of an item's uses.
type usage struct {
	count    int
	lastWeek string
}

// takenBackBucket holds uses that were taken back, as they were kept.
const takenBackBucket = "taken back"

const (
	weekSize = len("2026-W48")
	longest  = 1000 // bytes of a name that is part of a key
)

var weekPattern = regexp.MustCompile(`^[0-9]{4}-W(0[1-9]|[1-4][0-9]|5[0-3])$`)

// Check says what is wrong with a use.
func (u Use) Check() error {
	switch {
	case !weekPattern.MatchString(u.Week):
		return words.Errorf("%q is no week; write the year and the ISO week, such as 2026-W48", u.Week)
	case u.Quiz == "":
		return words.Errorf("the quiz has no name")
	case len(u.Quiz) > longest:
		return words.Errorf("the quiz's name is %d bytes long; at most %d can be kept", len(u.Quiz), longest)
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
	keys, err := parseIDs(ids)
	if err != nil {
		return err
	}
	return b.update(func(tx store.Writer) error { return b.writer(tx).recordUses(keys, use) })
}

func (w *writer) recordUses(ids []ulid.ULID, use Use) error {
	ids, err := headsOf(w, ids)
	if err != nil {
		return err
	}
	if err := w.load(ids); err != nil {
		return err
	}
	for _, id := range ids {
		if err := w.recordUse(id, use); err != nil {
			return err
		}
	}
	return w.flush()
}

func (w *writer) recordUse(id ulid.ULID, use Use) error {
	var it Item
	if err := w.get(id, &it); err != nil {
		return err
	}
	key := append(append(id[:], use.Week...), use.Quiz...)
	if before, err := w.Get(usesBucket, key); before != nil || err != nil {
		return err
	}
	if err := w.ungroup(id, &it); err != nil {
		return err
	}
	if err := w.putUse(key, use.At); err != nil {
		return err
	}
	w.weeks[id] = append(w.weeks[id], use.Week)
	return w.group(id, &it)
}

// putUse writes a use, in the place of one that was taken back.
func (w *writer) putUse(key []byte, at time.Time) error {
	before, err := w.Get(takenBackBucket, key)
	if err != nil {
		return err
	}
	if before != nil {
		use, err := readUse(key, before)
		if err != nil {
			return w.bank.damaged("a use that was taken back can't be read")
		}
		if !at.After(use.At) {
			at = use.At.Add(1)
		}
		if err := w.Delete(takenBackBucket, key); err != nil {
			return err
		}
	}
	return w.Put(usesBucket, key, Seal(key, appendTime(nil, at)))
}

// UsedBy lists the items that are noted as used in a quiz, which its name and week tell,
// and when that was noted first.
func (b *Bank) UsedBy(quiz, week string) (ids []string, at time.Time, err error) {
	err = b.view(func(tx store.Reader) error {
		ids = nil
		for e, err := range usesOf(tx, quiz, week) {
			if err != nil {
				return err
			}
			use, err := readUse(e.Key, e.Value)
			if err != nil {
				return b.damaged("a use can't be read")
			}
			if len(ids) == 0 || use.At.Before(at) {
				at = use.At
			}
			ids = append(ids, ulid.ULID(e.Key[:len(ulid.ULID{})]).String())
		}
		return nil
	})
	return ids, at, err
}

// usesOf goes through the uses of a quiz.
func usesOf(r store.Reader, quiz, week string) iter.Seq2[store.Entry, error] {
	suffix := append([]byte(week), quiz...)
	return func(yield func(store.Entry, error) bool) {
		for e, err := range r.Scan(usesBucket, store.Range{}) {
			if (err != nil || bytes.Equal(e.Key[len(ulid.ULID{}):], suffix)) && !yield(e, err) {
				return
			}
		}
	}
}

// TakeBack takes back all uses of a quiz, which was not given after all, and returns
// how many items are free again.
func (b *Bank) TakeBack(quiz, week string) (free int, err error) {
	err = b.update(func(tx store.Writer) error {
		free, err = b.takeBackUses(tx, quiz, week)
		return err
	})
	return free, err
}

func (b *Bank) takeBackUses(tx store.Writer, quiz, week string) (free int, err error) {
	var keys [][]byte
	for e, err := range usesOf(tx, quiz, week) {
		if err != nil {
			return 0, err
		}
		keys = append(keys, e.Key)
	}
	w := b.writer(tx)
	if free, err = w.dropUses(keys); err != nil {
		return 0, err
	}
	if err := b.markTakenBack(tx, quiz, week); err != nil {
		return 0, err
	}
	return free, w.flush()
}

// dropUses takes back the uses of these keys that are noted, and says how many were.
func (w *writer) dropUses(keys [][]byte) (dropped int, err error) {
	there, err := w.GetAll(usesBucket, keys)
	if err != nil {
		return 0, err
	}
	ids := make([]ulid.ULID, len(keys))
	for i, key := range keys {
		ids[i] = ulid.ULID(key[:len(ulid.ULID{})])
	}
	if err := w.load(ids); err != nil {
		return 0, err
	}
	for i, key := range keys {
		if there[i] == nil {
			continue
		}
		if err := w.dropUse(key); err != nil {
			return 0, err
		}
		dropped++
	}
	return dropped, nil
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
	sealed, err := w.Get(usesBucket, key)
	if err != nil {
		return err
	}
	// It is kept apart, so that a colleague's bank does not bring it back.
	if err := errors.Join(w.Put(takenBackBucket, key, sealed), w.Delete(usesBucket, key)); err != nil {
		return err
	}
	if at := slices.Index(w.weeks[id], string(key[len(id):][:weekSize])); at >= 0 {
		w.weeks[id] = slices.Delete(w.weeks[id], at, at+1)
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
	err = b.view(func(r store.Reader) error {
		key, err := headOf(r, key)
		if err != nil {
			return err
		}
		record, err := r.Get(itemsBucket, key[:])
		if err != nil {
			return err
		}
		if record == nil {
			return b.unknown(id)
		}
		list = nil
		for e, err := range r.Scan(usesBucket, store.Prefix(key[:])) {
			if err != nil {
				return err
			}
			use, err := readUse(e.Key, e.Value)
			if err != nil {
				return b.damaged("a use of item %s can't be read", id)
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

// weeksOf reads the weeks in which items were used, one for each use.
func weeksOf(r store.Reader, ids []ulid.ULID) (map[ulid.ULID][]string, error) {
	ranges := make([]store.Range, len(ids))
	for i, id := range ids {
		ranges[i] = store.Prefix(id[:])
	}
	weeks := map[ulid.ULID][]string{}
	for e, err := range r.Scan(usesBucket, ranges...) {
		if err != nil {
			return nil, err
		}
		if len(e.Key) < len(ulid.ULID{})+weekSize {
			return nil, errRecord
		}
		id := ulid.ULID(e.Key[:len(ulid.ULID{})])
		weeks[id] = append(weeks[id], string(e.Key[len(id):][:weekSize]))
	}
	return weeks, nil
}

// usageIn sums up uses in these weeks.
func usageIn(weeks []string) usage {
	if len(weeks) == 0 {
		return usage{}
	}
	return usage{len(weeks), slices.Max(weeks)}
}
