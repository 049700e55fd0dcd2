package store

import (
	"bytes"
	"fmt"
	"iter"
	"slices"
)

// portion is how many bytes of entries Copy writes at once.
const portion = 4 << 20

// Copy hands all buckets, entries and sequences that are read to update, in portions and in
// order. What they are written to must be empty; of one maker or another, it is equal then.
func Copy(from Reader, update func(write func(Writer) error) error) error {
	names, err := from.Buckets()
	if err != nil {
		return err
	}
	for _, name := range names {
		if err := copyBucket(from, name, update); err != nil {
			return err
		}
	}
	return nil
}

func copyBucket(from Reader, name string, update func(func(Writer) error) error) error {
	sequence, err := from.Sequence(name)
	if err != nil {
		return err
	}
	err = update(func(w Writer) error {
		if err := w.Make(name); err != nil || sequence == 0 {
			return err
		}
		_, err := w.Next(name, sequence)
		return err
	})
	if err != nil {
		return err
	}
	var part []Entry
	size := 0
	write := func(w Writer) error {
		for _, e := range part {
			if err := w.Put(name, e.Key, e.Value); err != nil {
				return err
			}
		}
		return nil
	}
	for e, err := range from.Scan(name, Range{}) {
		if err != nil {
			return err
		}
		part = append(part, e)
		if size += len(e.Key) + len(e.Value); size < portion {
			continue
		}
		if err := update(write); err != nil {
			return err
		}
		part, size = nil, 0
	}
	return update(write)
}

// Equal proves that two stores hold the same buckets, entries and sequences, and counts the
// entries. The error names the first difference.
func Equal(one, other Reader) (entries int, err error) {
	names, err := one.Buckets()
	if err != nil {
		return 0, err
	}
	others, err := other.Buckets()
	if err != nil {
		return 0, err
	}
	if !slices.Equal(names, others) {
		return 0, fmt.Errorf("one has the parts %q, the other %q", names, others)
	}
	for _, name := range names {
		n, err := equalBuckets(one, other, name)
		if err != nil {
			return 0, fmt.Errorf("part %q: %w", name, err)
		}
		entries += n
	}
	return entries, nil
}

func equalBuckets(one, other Reader, name string) (entries int, err error) {
	first, err := one.Sequence(name)
	if err != nil {
		return 0, err
	}
	second, err := other.Sequence(name)
	if err != nil {
		return 0, err
	}
	if first != second {
		return 0, fmt.Errorf("the sequences stand at %d and %d", first, second)
	}
	next, stop := iter.Pull2(other.Scan(name, Range{}))
	defer stop()
	for e, err := range one.Scan(name, Range{}) {
		if err != nil {
			return 0, err
		}
		against, err, more := next()
		switch {
		case err != nil:
			return 0, err
		case !more || !bytes.Equal(e.Key, against.Key):
			return 0, fmt.Errorf("the key %x of the first meets %x in the second", e.Key, against.Key)
		case !bytes.Equal(e.Value, against.Value):
			return 0, fmt.Errorf("the key %x has two values", e.Key)
		}
		entries++
	}
	against, err, more := next()
	if err == nil && more {
		err = fmt.Errorf("only the second has the key %x", against.Key)
	}
	return entries, err
}
