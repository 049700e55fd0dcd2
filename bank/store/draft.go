package store

import (
	"cmp"
	"errors"
	"iter"
	"maps"
	"slices"
)

// Draft gathers what is written and reads through it; below it nothing is written. It is a Writer.
type Draft struct {
	base    Reader
	made    []string
	pending map[string]map[string][]byte // by bucket and key; a nil value stands for a key taken away
	taken   map[string]uint64            // how many numbers of each sequence
}

// NewDraft is an empty draft over what is read.
func NewDraft(base Reader) *Draft {
	return &Draft{base: base, pending: map[string]map[string][]byte{}, taken: map[string]uint64{}}
}

// Over is the draft with all that it gathered, over what is read at another moment.
func (w *Draft) Over(base Reader) *Draft {
	return &Draft{base, w.made, w.pending, w.taken}
}

// Gathered is the buckets made, what was written by bucket and key, with nil for a key taken away, and how many
// numbers of each sequence were taken. It is the draft's own.
func (w *Draft) Gathered() (made []string, pending map[string]map[string][]byte, taken map[string]uint64) {
	return w.made, w.pending, w.taken
}

func (w *Draft) Make(bucket string) error {
	if bucket == "" {
		return CheckEntry(bucket, nil, nil)
	}
	if !slices.Contains(w.made, bucket) {
		w.made = append(w.made, bucket)
	}
	return nil
}

// Put notes a value.
func (w *Draft) Put(bucket string, key, value []byte) error {
	if err := CheckEntry(bucket, key, value); err != nil {
		return err
	}
	w.change(bucket, key, append([]byte{}, value...))
	return w.Make(bucket)
}

// Delete notes a key taken away.
func (w *Draft) Delete(bucket string, key []byte) error {
	if len(key) > 0 && len(key) <= MaxKey && bucket != "" {
		w.change(bucket, key, nil)
	}
	return nil
}

func (w *Draft) change(bucket string, key, value []byte) {
	if w.pending[bucket] == nil {
		w.pending[bucket] = map[string][]byte{}
	}
	w.pending[bucket][string(key)] = value
}

// Next takes numbers of a sequence.
func (w *Draft) Next(bucket string, n uint64) (uint64, error) {
	last, err := w.Sequence(bucket)
	if err != nil {
		return 0, err
	}
	if last+n < n {
		return 0, errors.New("the numbers of a sequence are used up")
	}
	w.taken[bucket] += n
	return last + n, w.Make(bucket)
}

// Sequence is the last number, those taken here counted.
func (w *Draft) Sequence(bucket string) (uint64, error) {
	last, err := w.base.Sequence(bucket)
	return last + w.taken[bucket], err
}

// Buckets lists the buckets, those made here, too.
func (w *Draft) Buckets() ([]string, error) {
	names, err := w.base.Buckets()
	names = append(slices.Clone(names), w.made...)
	slices.Sort(names)
	return slices.Compact(names), err
}

// Get reads a value.
func (w *Draft) Get(bucket string, key []byte) ([]byte, error) {
	values, err := w.GetAll(bucket, [][]byte{key})
	if err != nil {
		return nil, err
	}
	return values[0], nil
}

// GetAll reads below what isn't gathered here.
func (w *Draft) GetAll(bucket string, keys [][]byte) ([][]byte, error) {
	values := make([][]byte, len(keys))
	var ask [][]byte
	var places []int
	for i, key := range keys {
		value, here := w.pending[bucket][string(key)]
		if !here {
			ask, places = append(ask, key), append(places, i)
		}
		values[i] = value
	}
	found, err := w.base.GetAll(bucket, ask)
	if err != nil {
		return nil, err
	}
	for i, value := range found {
		values[places[i]] = value
	}
	return values, nil
}

// Scan gives what is below with what was gathered before it began.
func (w *Draft) Scan(bucket string, ranges ...Range) iter.Seq2[Entry, error] {
	if len(w.pending[bucket]) == 0 {
		return w.base.Scan(bucket, ranges...)
	}
	return func(yield func(Entry, error) bool) {
		for _, r := range ranges {
			if !w.scan(bucket, r, yield) {
				return
			}
		}
	}
}

// scan gives the entries of a range as they stand with what was gathered before it began; it says
// false when no more are wanted.
func (w *Draft) scan(bucket string, r Range, yield func(Entry, error) bool) bool {
	order := cmp.Compare[string]
	if r.Backward {
		order = func(a, b string) int { return cmp.Compare(b, a) }
	}
	ours := maps.Clone(w.pending[bucket])
	keys := slices.SortedFunc(within(ours, r), order)
	given, limit, more := 0, r.Limit, true
	r.Limit = 0
	// give says whether the range goes on.
	give := func(key string, value []byte) bool {
		given++
		more = yield(Entry{Key: []byte(key), Value: value}, nil)
		return more && (limit == 0 || given < limit)
	}
	// before gives what was gathered and comes before a key; nil is the end of the range.
	before := func(end *string) bool {
		for len(keys) > 0 && (end == nil || order(keys[0], *end) < 0) {
			key := keys[0]
			keys = keys[1:]
			if value := ours[key]; value != nil && !give(key, value) {
				return false
			}
		}
		return true
	}
	for e, err := range w.base.Scan(bucket, r) {
		if err != nil {
			yield(Entry{}, err)
			return false
		}
		key := string(e.Key)
		if !before(&key) {
			return more
		}
		if _, changed := ours[key]; changed {
			continue // it comes, or not, from what was gathered
		}
		if !give(key, e.Value) {
			return more
		}
	}
	before(nil)
	return more
}

// within is the gathered keys of a range.
func within(pending map[string][]byte, r Range) iter.Seq[string] {
	return func(yield func(string) bool) {
		for key := range pending {
			if key >= string(r.From) && (r.To == nil || key < string(r.To)) && !yield(key) {
				return
			}
		}
	}
}
