package remote

import (
	"cmp"
	"errors"
	"iter"
	"maps"
	"slices"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// writer gathers what is written and reads through it. It is a store.Writer.
type writer struct {
	base    store.Reader
	made    []string
	pending map[string]map[string][]byte // by bucket and key; a nil value stands for a key taken away
	taken   map[string]uint64            // how many numbers of each sequence
}

func newWriter(base store.Reader) *writer {
	return &writer{base: base, pending: map[string]map[string][]byte{}, taken: map[string]uint64{}}
}

// written is all that was gathered, in order.
func (w *writer) written() write {
	id := ulid.Make()
	sent := write{ID: id[:], Make: w.made}
	for _, bucket := range slices.Sorted(maps.Keys(w.pending)) {
		put, gone := changed{Bucket: bucket}, changed{Bucket: bucket}
		for _, key := range slices.Sorted(maps.Keys(w.pending[bucket])) {
			if value := w.pending[bucket][key]; value != nil {
				put.Entries = append(put.Entries, entry{[]byte(key), value})
			} else {
				gone.Entries = append(gone.Entries, entry{Key: []byte(key)})
			}
		}
		if put.Entries != nil {
			sent.Put = append(sent.Put, put)
		}
		if gone.Entries != nil {
			sent.Delete = append(sent.Delete, gone)
		}
	}
	for _, bucket := range slices.Sorted(maps.Keys(w.taken)) {
		sent.Next = append(sent.Next, next{bucket, w.taken[bucket]})
	}
	return sent
}

// empty says that there is nothing to keep.
func (w write) empty() bool { return len(w.Make)+len(w.Put)+len(w.Delete)+len(w.Next) == 0 }

func (w *writer) Make(bucket string) error {
	if bucket == "" {
		return store.CheckEntry(bucket, nil, nil)
	}
	if !slices.Contains(w.made, bucket) {
		w.made = append(w.made, bucket)
	}
	return nil
}

func (w *writer) Put(bucket string, key, value []byte) error {
	if err := store.CheckEntry(bucket, key, value); err != nil {
		return err
	}
	w.change(bucket, key, append([]byte{}, value...))
	return w.Make(bucket)
}

func (w *writer) Delete(bucket string, key []byte) error {
	if len(key) > 0 && len(key) <= store.MaxKey && bucket != "" {
		w.change(bucket, key, nil)
	}
	return nil
}

func (w *writer) change(bucket string, key, value []byte) {
	if w.pending[bucket] == nil {
		w.pending[bucket] = map[string][]byte{}
	}
	w.pending[bucket][string(key)] = value
}

func (w *writer) Next(bucket string, n uint64) (uint64, error) {
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

func (w *writer) Sequence(bucket string) (uint64, error) {
	last, err := w.base.Sequence(bucket)
	return last + w.taken[bucket], err
}

func (w *writer) Buckets() ([]string, error) {
	names, err := w.base.Buckets()
	names = append(slices.Clone(names), w.made...)
	slices.Sort(names)
	return slices.Compact(names), err
}

func (w *writer) Get(bucket string, key []byte) ([]byte, error) {
	values, err := w.GetAll(bucket, [][]byte{key})
	if err != nil {
		return nil, err
	}
	return values[0], nil
}

// GetAll asks the desk for what isn't gathered here.
func (w *writer) GetAll(bucket string, keys [][]byte) ([][]byte, error) {
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

func (w *writer) Scan(bucket string, ranges ...store.Range) iter.Seq2[store.Entry, error] {
	if len(w.pending[bucket]) == 0 {
		return w.base.Scan(bucket, ranges...)
	}
	return func(yield func(store.Entry, error) bool) {
		for _, r := range ranges {
			if !w.scan(bucket, r, yield) {
				return
			}
		}
	}
}

// scan gives the entries of a range as they stand with what was gathered before it began; it says
// false when no more are wanted.
func (w *writer) scan(bucket string, r store.Range, yield func(store.Entry, error) bool) bool {
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
		more = yield(store.Entry{Key: []byte(key), Value: value}, nil)
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
			yield(store.Entry{}, err)
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
func within(pending map[string][]byte, r store.Range) iter.Seq[string] {
	return func(yield func(string) bool) {
		for key := range pending {
			if key >= string(r.From) && (r.To == nil || key < string(r.To)) && !yield(key) {
				return
			}
		}
	}
}
