package results

import (
	"bytes"
	"errors"
	"slices"

	"go.etcd.io/bbolt"

	"evenhand/bank"
)

// Forgotten is what was removed of a pupil, or would be.
type Forgotten struct {
	Class   string
	Papers  int // as they stood
	Earlier int // markings that were replaced
}

// Of tells what the results hold of a pupil, class by class.
func (s *Store) Of(pupil string) (held []Forgotten, err error) {
	err = s.view(func(tx *bbolt.Tx) (err error) {
		held, _, err = of(tx, pupil)
		return err
	})
	return held, err
}

// spot is a place of a record.
type spot struct{ bucket, key []byte }

// of finds a pupil's records: all that is kept but the class lists.
func of(tx *bbolt.Tx, pupil string) (held []Forgotten, spots []spot, err error) {
	in := func(class string) *Forgotten {
		at := slices.IndexFunc(held, func(f Forgotten) bool { return f.Class == class })
		if at < 0 {
			held, at = append(held, Forgotten{Class: class}), len(held)
		}
		return &held[at]
	}
	err = records(tx, func(bucket, key, record []byte) error {
		switch names := bytes.Split(key, []byte{0}); {
		case bytes.Equal(bucket, classesBucket):
			var codes []string
			if err := decode(tx, bucket, key, record, &codes); err != nil {
				return err
			}
			if slices.Contains(codes, pupil) {
				in(string(names[0]))
			}
		case bytes.Equal(bucket, quizzesBucket):
		case len(names) > 2 && string(names[2]) == pupil:
			spots = append(spots, spot{bucket, bytes.Clone(key)})
			if bytes.Equal(bucket, papersBucket) {
				in(string(names[1])).Papers++
			} else {
				in(string(names[1])).Earlier++
			}
		}
		return nil
	})
	return held, spots, err
}

// Forget removes all that the file of results holds of a pupil, earlier markings and the
// place in class lists included, and writes the file anew so that no trace is left in it.
// It says what that was. Copies of the file are another matter.
func Forget(path, pupil string, o bank.Options) (held []Forgotten, err error) {
	s, err := Open(path, o)
	if err != nil {
		return nil, err
	}
	err = s.update(func(tx *bbolt.Tx) error {
		var spots []spot
		if held, spots, err = of(tx, pupil); err != nil {
			return err
		}
		for _, at := range spots {
			if err := remove(tx, at.bucket, at.key); err != nil {
				return err
			}
		}
		for _, class := range held {
			if err := unenrol(tx, class.Class, pupil); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil || len(held) == 0 {
		return held, errors.Join(err, s.Close())
	}
	return held, s.named(s.file.Rewrite())
}

// unenrol takes a pupil off a class list.
func unenrol(tx *bbolt.Tx, class, pupil string) error {
	var codes []string
	if _, err := get(tx, classesBucket, key(class), &codes); err != nil {
		return err
	}
	left := slices.DeleteFunc(codes, func(code string) bool { return code == pupil })
	if len(left) == 0 {
		return remove(tx, classesBucket, key(class))
	}
	return put(tx, classesBucket, key(class), left)
}
