package remote

import (
	"bytes"
	"context"
	"errors"
	"iter"
	"math/rand/v2"
	"net/http"
	"time"

	"evenhand/bank/store"
)

// jitter is about a time, so that those who met don't meet again.
func jitter(d time.Duration) time.Duration { return d/2 + rand.N(d) }

// View reads a moment at the desk.
func (s *Store) View(ctx context.Context, read func(store.Reader) error) error {
	var own error // the caller's, which no other try changes
	err := s.again(ctx, func(ctx context.Context) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		r := &reader{ctx: ctx, store: s}
		defer r.leave()
		own = read(r)
		return r.failed
	})
	if err != nil {
		return err
	}
	return own
}

// reader reads as of one moment. It is a store.Reader.
type reader struct {
	ctx    context.Context
	store  *Store
	moment string
	failed error // that no answer could be had
	asked  *[]checked

	known map[string]map[string][]byte // values read so far, by bucket and key, as they can't change
	size  int                          // of them in bytes, about
}

// mostKnown is how many bytes of values are remembered in a moment.
const mostKnown = 16 << 20

func (r *reader) remember(bucket string, key, value []byte) {
	if r.size += len(key) + len(value) + 64; r.size > mostKnown {
		return
	}
	if r.known == nil {
		r.known = map[string]map[string][]byte{}
	}
	if r.known[bucket] == nil {
		r.known[bucket] = map[string][]byte{}
	}
	r.known[bucket][string(key)] = value
}

// ask asks the desk.
func (r *reader) ask(q question) (answer, error) {
	if r.failed != nil {
		return answer{}, r.failed
	}
	var read wasRead
	err := r.store.once(r.ctx, http.MethodPost, "/read", reading{r.moment, q}, &read)
	if err != nil {
		r.failed = err
		return answer{}, err
	}
	r.moment = read.Moment
	if r.asked != nil {
		*r.asked = append(*r.asked, checked{q, read.answer.sum()})
	}
	return read.answer, nil
}

// leave lets the desk end the moment; it ends by itself soon if this is not heard.
func (r *reader) leave() {
	if r.moment == "" {
		return
	}
	ctx, end := context.WithTimeout(context.WithoutCancel(r.ctx), time.Second)
	defer end()
	_ = r.store.once(ctx, http.MethodPost, "/leave", leaving{r.moment}, nil)
	r.moment = ""
}

func (r *reader) Buckets() ([]string, error) {
	a, err := r.ask(question{Buckets: true})
	return a.Buckets, err
}

func (r *reader) Sequence(bucket string) (uint64, error) {
	a, err := r.ask(question{Bucket: bucket, Sequence: true})
	return a.Sequence, err
}

func (r *reader) Get(bucket string, key []byte) ([]byte, error) {
	values, err := r.GetAll(bucket, [][]byte{key})
	if err != nil {
		return nil, err
	}
	return values[0], nil
}

// mostKeys is how many keys are asked for together.
const mostKeys = 4096

// GetAll asks for what isn't known yet.
func (r *reader) GetAll(bucket string, keys [][]byte) ([][]byte, error) {
	values := make([][]byte, len(keys))
	var missing []int
	for i, key := range keys {
		value, known := r.known[bucket][string(key)]
		if values[i] = value; !known {
			missing = append(missing, i)
		}
	}
	for len(missing) > 0 {
		q := question{Bucket: bucket}
		for _, i := range missing[:min(len(missing), mostKeys)] {
			q.Keys = append(q.Keys, keys[i])
		}
		a, err := r.ask(q)
		if err == nil && (len(a.Values) == 0 || len(a.Values) > len(q.Keys)) {
			r.failed = errVersion
			err = r.failed
		}
		if err != nil {
			return nil, err
		}
		for n, value := range a.Values {
			values[missing[n]] = value
			r.remember(bucket, q.Keys[n], value)
		}
		missing = missing[len(a.Values):]
	}
	return values, nil
}

var errVersion = errors.New("the desk's answer makes no sense here; are both of the same version?")

// Pages begin small, as many a scan wants only a few entries, and grow.
const (
	firstPage  = 128
	mostPage   = 8192
	mostRanges = 2048 // in one question
)

func (r *reader) Scan(bucket string, ranges ...store.Range) iter.Seq2[store.Entry, error] {
	return func(yield func(store.Entry, error) bool) {
		for size := firstPage; len(ranges) > 0; size = min(4*size, mostPage) {
			some := ranges[:min(len(ranges), mostRanges)]
			q := question{Bucket: bucket, Most: size}
			for _, one := range some {
				q.Ranges = append(q.Ranges, span(one))
			}
			a, err := r.ask(q)
			if err == nil && (a.Done > len(some) || a.Done < len(some) && a.Done+a.In == 0 || a.In > len(a.Entries)) {
				r.failed = errVersion
				err = r.failed
			}
			if err != nil {
				yield(store.Entry{}, err)
				return
			}
			for _, e := range a.Entries {
				if err := r.ctx.Err(); err != nil {
					r.failed = err
					yield(store.Entry{}, err)
					return
				}
				if !yield(store.Entry(e), nil) {
					return
				}
			}
			ranges = ranges[a.Done:]
			if a.In > 0 { // the next range was begun
				rest := append([]store.Range{beyond(ranges[0], a.Entries[len(a.Entries)-1].Key, a.In)}, ranges[1:]...)
				ranges = rest
			}
		}
	}
}

// beyond is what is left of a range behind a key, after n of its entries.
func beyond(r store.Range, last []byte, n int) store.Range {
	if r.Limit > 0 {
		r.Limit -= n
	}
	if r.Backward {
		r.To = last
	} else {
		r.From = append(bytes.Clone(last), 0)
	}
	return r
}

// nothing is a reader of a store that isn't there yet.
type nothing struct{}

func (nothing) Buckets() ([]string, error)         { return nil, nil }
func (nothing) Sequence(string) (uint64, error)    { return 0, nil }
func (nothing) Get(string, []byte) ([]byte, error) { return nil, nil }
func (nothing) GetAll(_ string, keys [][]byte) ([][]byte, error) {
	return make([][]byte, len(keys)), nil
}
func (nothing) Scan(string, ...store.Range) iter.Seq2[store.Entry, error] {
	return func(func(store.Entry, error) bool) {}
}
