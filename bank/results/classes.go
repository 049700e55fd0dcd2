package results

import (
	"slices"

	"go.etcd.io/bbolt"
)

// Enrol notes pupils of a class. Codes that are in it already stay as they are.
func (s *Store) Enrol(class string, codes ...string) error {
	if err := CheckClass(class); err != nil {
		return err
	}
	return s.update(func(tx *bbolt.Tx) error { return enrol(tx, class, codes) })
}

func enrol(tx *bbolt.Tx, class string, codes []string) error {
	var all []string
	if _, err := get(tx, classesBucket, key(class), &all); err != nil {
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
	slices.Sort(all)
	return put(tx, classesBucket, key(class), all)
}

// Pupils lists the codes of a class in order.
func (s *Store) Pupils(class string) (codes []string, err error) {
	err = s.view(func(tx *bbolt.Tx) error {
		_, err := get(tx, classesBucket, key(class), &codes)
		return err
	})
	return codes, err
}
