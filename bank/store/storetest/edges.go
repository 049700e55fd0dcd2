package storetest

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"testing"

	"evenhand/bank/store"
)

// edges: every range whose ends stand on a key, beside one, before all or behind all gives what
// comparing each key with its ends gives, both ways and with every limit.
func edges(t *testing.T, m Maker) {
	s := made(t, m)
	keys := []string{"\x00", "a", "a\x00", "a\xff", "b", "\xff\xff"}
	for _, key := range keys {
		put(t, s, "items", key, "value of "+key)
	}
	ends := [][]byte{nil, {}, {0}, {0, 0}, []byte("Z"), []byte("a"), []byte("a\x00"), []byte("a\x01"),
		[]byte("b"), []byte("b\x00"), {0xFF}, {0xFF, 0xFF}, {0xFF, 0xFF, 0}}
	try := func(r store.Reader) {
		for _, from := range ends {
			for _, to := range ends {
				for limit := range len(keys) + 2 {
					for _, backward := range []bool{false, true} {
						one := store.Range{From: from, To: to, Limit: limit, Backward: backward}
						list, err := scanned(r, "items", one)
						if must(t, err); !slices.Equal(list, inRange(keys, one)) {
							t.Fatalf("%q to %q, %d, backward %v: %q, want %q", from, to, limit, backward, list, inRange(keys, one))
						}
					}
				}
			}
		}
	}
	must(t, s.View(background, func(r store.Reader) error { try(r); return nil }))
	must(t, s.Update(background, func(w store.Writer) error { try(w); return nil }))
	nothing(t, s)
}

// inRange is what a range gives of keys in order, as its documentation says.
func inRange(keys []string, r store.Range) (list []string) {
	keys = slices.Clone(keys)
	if r.Backward {
		slices.Reverse(keys)
	}
	for _, key := range keys {
		in := bytes.Compare([]byte(key), r.From) >= 0 && (r.To == nil || bytes.Compare([]byte(key), r.To) < 0)
		if in && (r.Limit == 0 || len(list) < 2*r.Limit) {
			list = append(list, key, "value of "+key)
		}
	}
	return list
}

// nothing: an empty key and a bucket that isn't there hold nothing, and taking from them is no error.
func nothing(t *testing.T, s store.Store) {
	read := func(r store.Reader, bucket string) {
		values, err := r.GetAll(bucket, [][]byte{{}, nil, []byte("nowhere"), []byte("nowhere")})
		if must(t, err); len(values) != 4 || slices.ContainsFunc(values, func(v []byte) bool { return v != nil }) {
			t.Errorf("in %q nothing has the values %q", bucket, values)
		}
		values, err = r.GetAll(bucket, nil)
		if must(t, err); len(values) != 0 {
			t.Errorf("no keys have the values %q", values)
		}
	}
	for _, bucket := range []string{"items", "never made"} {
		must(t, s.View(background, func(r store.Reader) error { read(r, bucket); return nil }))
		must(t, s.Update(background, func(w store.Writer) error {
			read(w, bucket)
			return errors.Join(w.Delete(bucket, nil), w.Delete(bucket, []byte("nowhere")))
		}))
	}
	must(t, s.View(background, func(r store.Reader) error {
		list, err := scanned(r, "never made", store.Range{})
		if sequence, err := r.Sequence("never made"); len(list) != 0 || sequence != 0 || err != nil {
			t.Errorf("a bucket that isn't there has %q and the sequence %d (%v)", list, sequence, err)
		}
		return err
	}))
	must(t, s.Update(background, func(w store.Writer) error {
		values, err := w.GetAll("items", [][]byte{[]byte("b"), []byte("a"), []byte("b")})
		if must(t, err); len(values) != 3 || !bytes.Equal(values[0], values[2]) || string(values[0]) != "value of b" {
			t.Errorf("a key that is asked for twice has the values %q", values)
		}
		return nil
	}))
}

// cancelledAtEveryStep: whenever the context ends, before the first question, after the second or
// when all is written, a View gives its error, an Update has written nothing, and the next one works.
func cancelledAtEveryStep(t *testing.T, m Maker) {
	s := made(t, m)
	put(t, s, "items", many("old", 0, 300)...)
	for at := 1; ; at++ {
		ctx, end := context.WithCancel(background)
		defer end()
		count := 0
		step := func() {
			if count++; count == at {
				end()
			}
		}
		err := s.Update(ctx, func(w store.Writer) error {
			count = 0
			for _, work := range []func() error{
				func() error { _, err := w.Get("items", []byte("000007")); return err },
				func() error { return w.Put("items", []byte("000007"), []byte("new")) },
				func() error { _, err := scanned(w, "items", store.Range{}); return err },
				func() error { _, err := w.Next("items", 1); return err },
				func() error { return w.Put("new", []byte("a"), nil) },
			} {
				step()
				if err := work(); err != nil {
					return err
				}
			}
			step()
			return nil
		})
		if count < at {
			must(t, err)
			break // nothing ended it
		}
		if !errors.Is(err, context.Canceled) {
			t.Errorf("an Update whose context ends at step %d gives %v", at, err)
		}
		if value, _ := get(t, s, "items", "000007"); value != "old" {
			t.Fatalf("an Update that was ended at step %d has written %q", at, value)
		}
	}
	if value, _ := get(t, s, "items", "000007"); value != "new" {
		t.Errorf("an Update that nobody ended has left %q", value)
	}
	for at := range 3 {
		ctx, end := context.WithCancel(background)
		err := s.View(ctx, func(r store.Reader) error {
			for n := range 3 {
				if n == at {
					end()
				}
				if _, err := scanned(r, "items", store.Range{Backward: n == 1}); err != nil {
					return err
				}
			}
			return nil
		})
		end()
		if !errors.Is(err, context.Canceled) {
			t.Errorf("a View whose context ends before question %d gives %v", at+1, err)
		}
	}
}
