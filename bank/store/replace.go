package store

import (
	"bytes"
	"iter"
	"slices"
)

// Replace makes the entries of a store, in one Update, those of another, all but those of the buckets to keep.
// Sequences go on from the higher of both: no number is given twice, and who remembers one sees that it moved. A bucket
// that the other lacks stays, empty.
func Replace(w Writer, from Reader, keep ...string) error {
	theirs, err := from.Buckets()
	if err != nil {
		return err
	}
	ours, err := w.Buckets()
	if err != nil {
		return err
	}
	all := slices.Concat(ours, theirs)
	slices.Sort(all)
	all = slices.DeleteFunc(slices.Compact(all), func(name string) bool { return slices.Contains(keep, name) })
	return Take(w, from, all...)
}

// Take makes the entries of some buckets those of another store, as Replace does.
func Take(w Writer, from Reader, buckets ...string) error {
	for _, name := range buckets {
		if err := replaceBucket(w, from, name); err != nil {
			return err
		}
	}
	return nil
}

// Filled gives the buckets back if an entry stands in one of them, else none.
func Filled(r Reader, buckets []string) ([]string, error) {
	for _, name := range buckets {
		for _, err := range r.Scan(name, Range{Limit: 1}) {
			return buckets, err
		}
	}
	return nil, nil
}

func replaceBucket(w Writer, from Reader, name string) error {
	stands, err := w.Sequence(name)
	if err != nil {
		return err
	}
	there, err := from.Sequence(name)
	if err != nil {
		return err
	}
	if _, err := w.Next(name, max(stands, there)-stands+1); err != nil {
		return err
	}
	has, wants := walking(w, name), walking(from, name)
	defer has.stop()
	defer wants.stop()
	for has.err == nil && wants.err == nil && (has.more || wants.more) {
		order := bytes.Compare(has.at.Key, wants.at.Key)
		switch {
		case !wants.more || has.more && order < 0:
			err = w.Delete(name, has.at.Key)
			has.step()
		case !has.more || order > 0:
			err = w.Put(name, wants.at.Key, wants.at.Value)
			wants.step()
		default:
			if !bytes.Equal(has.at.Value, wants.at.Value) {
				err = w.Put(name, wants.at.Key, wants.at.Value)
			}
			has.step()
			wants.step()
		}
		if err != nil {
			return err
		}
	}
	if has.err != nil {
		return has.err
	}
	return wants.err
}

// walk goes through a bucket, entry by entry.
type walk struct {
	next func() (Entry, error, bool)
	stop func()
	at   Entry
	err  error
	more bool
}

func walking(r Reader, bucket string) *walk {
	w := &walk{}
	w.next, w.stop = iter.Pull2(r.Scan(bucket, Range{}))
	w.step()
	return w
}

func (w *walk) step() { w.at, w.err, w.more = w.next() }
