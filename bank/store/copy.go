package store

import (
	"bytes"
	"context"
	"fmt"
	"iter"
	"slices"
)

// portion is how many bytes of entries Copy writes in one Update.
const portion = 4 << 20

// Copy writes all buckets, entries and sequences of a store, as of one moment, to
// another one that is empty. It may be used to move from one maker to another. On an error
// a part may be written; the target is of no use then.
func Copy(ctx context.Context, from, to Store) error {
	return from.View(ctx, func(r Reader) error {
		names, err := r.Buckets()
		if err != nil {
			return err
		}
		for _, name := range names {
			if err := copyBucket(ctx, r, to, name); err != nil {
				return err
			}
		}
		return nil
	})
}

func copyBucket(ctx context.Context, r Reader, to Store, name string) error {
	sequence, err := r.Sequence(name)
	if err != nil {
		return err
	}
	err = to.Update(ctx, func(w Writer) error {
		there, err := w.Buckets()
		if err != nil {
			return err
		}
		if slices.Contains(there, name) {
			return fmt.Errorf("%s holds something already; name a new place", to.Name())
		}
		if err := w.Make(name); err != nil || sequence == 0 {
			return err
		}
		_, err = w.Next(name, sequence)
		return err
	})
	if err != nil {
		return err
	}
	var part []Entry
	size := 0
	write := func() error {
		return to.Update(ctx, func(w Writer) error {
			for _, e := range part {
				if err := w.Put(name, e.Key, e.Value); err != nil {
					return err
				}
			}
			return nil
		})
	}
	for e, err := range r.Scan(name, Range{}) {
		if err != nil {
			return err
		}
		part = append(part, e)
		if size += len(e.Key) + len(e.Value); size < portion {
			continue
		}
		if err := write(); err != nil {
			return err
		}
		part, size = part[:0], 0
	}
	return write()
}

// Equal proves two stores equal: the same buckets, entries and sequences. The error
// names the first difference.
func Equal(ctx context.Context, a, b Store) error {
	return a.View(ctx, func(one Reader) error {
		return b.View(ctx, func(other Reader) error {
			names, err := one.Buckets()
			if err != nil {
				return err
			}
			others, err := other.Buckets()
			if err != nil {
				return err
			}
			if !slices.Equal(names, others) {
				return fmt.Errorf("%s has the parts %q, %s has %q", a.Name(), names, b.Name(), others)
			}
			for _, name := range names {
				if err := equalBuckets(one, other, name); err != nil {
					return fmt.Errorf("%s and %s differ in %q: %w", a.Name(), b.Name(), name, err)
				}
			}
			return nil
		})
	})
}

func equalBuckets(one, other Reader, name string) error {
	first, err := one.Sequence(name)
	if err != nil {
		return err
	}
	second, err := other.Sequence(name)
	if err != nil {
		return err
	}
	if first != second {
		return fmt.Errorf("the sequences stand at %d and %d", first, second)
	}
	next, stop := iter.Pull2(other.Scan(name, Range{}))
	defer stop()
	for e, err := range one.Scan(name, Range{}) {
		if err != nil {
			return err
		}
		against, err, more := next()
		switch {
		case err != nil:
			return err
		case !more || !bytes.Equal(e.Key, against.Key):
			return fmt.Errorf("the key %x is in the first, %x in the second", e.Key, against.Key)
		case !bytes.Equal(e.Value, against.Value):
			return fmt.Errorf("the key %x has two values", e.Key)
		}
	}
	if against, err, more := next(); err != nil || more {
		return fmt.Errorf("the second has the key %x besides (%v)", against.Key, err)
	}
	return nil
}
