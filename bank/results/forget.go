package results

import (
	"bytes"
	"errors"
	"slices"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
)

// Forgotten is what was removed of a pupil, or would be.
type Forgotten struct {
	Class   string
	Papers  int // as they stood
	Earlier int // markings that were replaced
}

// Of tells what the results hold of a pupil, class by class.
func (s *Store) Of(pupil string) (held []Forgotten, err error) {
	err = s.view(func(r store.Reader) (err error) {
		held, _, err = of(r, pupil)
		return err
	})
	return held, err
}

// spot is a place of a record.
type spot struct {
	bucket string
	key    []byte
}

// of finds a pupil's records: all that is kept but the class lists.
func of(r store.Reader, pupil string) (held []Forgotten, spots []spot, err error) {
	in := func(class string) *Forgotten {
		at := slices.IndexFunc(held, func(f Forgotten) bool { return f.Class == class })
		if at < 0 {
			held, at = append(held, Forgotten{Class: class}), len(held)
		}
		return &held[at]
	}
	err = records(r, func(bucket string, key, record []byte) error {
		switch names := bytes.Split(key, []byte{0}); {
		case bucket == classesBucket:
			var codes []string
			if err := decode(r, bucket, key, record, &codes); err != nil {
				return err
			}
			if slices.Contains(codes, pupil) {
				in(string(names[0]))
			}
		case bucket == quizzesBucket:
		case len(names) > 2 && string(names[2]) == pupil:
			spots = append(spots, spot{bucket, key})
			if bucket == papersBucket {
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
// It says what that was. That somebody was forgotten is noted without the code, so that a merge does not
// bring the results back unseen. Other copies of the file are another matter.
func Forget(path, pupil string, at time.Time, o bank.Options) (held []Forgotten, err error) {
	s, err := Open(path, o)
	if err != nil {
		return nil, err
	}
	err = s.update(func(w store.Writer) error {
		var spots []spot
		if held, spots, err = of(w, pupil); err != nil {
			return err
		}
		for _, at := range spots {
			if err := remove(w, at.bucket, at.key); err != nil {
				return err
			}
		}
		for _, class := range held {
			if err := unenrol(w, class.Class, pupil); err != nil {
				return err
			}
		}
		if len(held) == 0 {
			return nil
		}
		notes, err := readForgotten(w)
		if err != nil {
			return err
		}
		notes[noteOf(pupil)] = at.UTC().Round(0)
		return notes.put(w)
	})
	if err != nil || len(held) == 0 {
		return held, errors.Join(err, s.Close())
	}
	if file, ok := s.store.(store.Rewriter); ok {
		return held, s.named(file.Rewrite())
	}
	return held, s.Close()
}

// unenrol takes a pupil off a class list.
func unenrol(w store.Writer, class, pupil string) error {
	var codes []string
	if _, err := get(w, classesBucket, key(class), &codes); err != nil {
		return err
	}
	left := slices.DeleteFunc(codes, func(code string) bool { return code == pupil })
	if len(left) == 0 {
		return remove(w, classesBucket, key(class))
	}
	return put(w, classesBucket, key(class), left)
}
