package results

import (
	"slices"
	"strings"

	"evenhand/bank/store"
)

// Enrol notes pupils of a class. Codes that are in it already stay as they are.
func (s *Store) Enrol(class string, codes ...string) error {
	if err := CheckClass(class); err != nil {
		return err
	}
	return s.update(func(w store.Writer) error { return enrol(w, class, codes) })
}

func enrol(w store.Writer, class string, codes []string) error {
	var all []string
	if _, err := get(w, classesBucket, key(class), &all); err != nil {
		return err
	}
	before := len(all)
	for _, text := range codes {
		code, err := ParseCode(text)
		if err != nil {
			return err
		}
		if !slices.Contains(all, code) {
			all = append(all, code)
		}
	}
	if len(all) == before {
		return nil
	}
	return put(w, classesBucket, key(class), all)
}

// Classes lists the classes that have pupils.
func (s *Store) Classes() (names []string, err error) {
	err = s.view(func(r store.Reader) error {
		names = nil
		for e, err := range r.Scan(classesBucket, store.Range{}) {
			if err != nil {
				return err
			}
			names = append(names, strings.TrimSuffix(string(e.Key), "\x00"))
		}
		return nil
	})
	return names, err
}

// Pupils lists the codes of a class in order.
func (s *Store) Pupils(class string) (codes []string, err error) {
	codes, err = s.Enrolled(class)
	slices.Sort(codes)
	return codes, err
}

// Enrolled lists the codes of a class in the order in which they came to it, by which forms
// are proposed: who comes later changes nobody else's.
func (s *Store) Enrolled(class string) (codes []string, err error) {
	err = s.view(func(r store.Reader) error {
		codes = nil
		_, err := get(r, classesBucket, key(class), &codes)
		return err
	})
	return codes, err
}

// sortEnrolled gives a class the order of its codes.
func sortEnrolled(w store.Writer, class string) error {
	var all []string
	if _, err := get(w, classesBucket, key(class), &all); err != nil {
		return err
	}
	slices.Sort(all)
	return put(w, classesBucket, key(class), all)
}
