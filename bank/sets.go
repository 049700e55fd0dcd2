package bank

import (
	"bytes"
	"encoding/binary"
	"slices"

	"evenhand/bank/store"
)

// sets is an index: it puts items into named sets and knows each set's size. The
// names bucket holds, by name, the set's number and size (4 bytes each); the
// members bucket holds one entry an item, whose key begins with the set's number.
// So the sets can be listed without reading a member, and a long name is kept
// once. A set that loses its last member is gone.
//
// Changes of size are gathered until flush, as many items of a batch belong to
// one set.
type sets struct {
	store          store.Writer
	names, members string // the buckets
	open           map[string]*set
	scratch        []byte

	gone  map[string]bool // keys of members that were taken out and not put back
	moved bool            // there are new members
}

type set struct{ number, size, stored uint32 }

const setNumber = 4 // bytes

func groupSets(w store.Writer) *sets {
	return newSets(w, groupsBucket, groupMembers)
}

func originSets(w store.Writer) *sets {
	return newSets(w, originsBucket, originMembers)
}

func newSets(w store.Writer, names, members string) *sets {
	return &sets{store: w, names: names, members: members, open: map[string]*set{}, gone: map[string]bool{}}
}

// load reads the sets of the names together, so that what follows finds them here.
func (s *sets) load(names [][]byte) error {
	var unknown [][]byte
	for _, name := range names {
		if s.open[string(name)] == nil {
			s.open[string(name)] = &set{}
			unknown = append(unknown, name)
		}
	}
	slices.SortFunc(unknown, bytes.Compare)
	values, err := s.store.GetAll(s.names, unknown)
	if err != nil {
		return err
	}
	for i, value := range values {
		if value != nil {
			*s.open[string(unknown[i])] = readSet(value)
		}
	}
	return nil
}

// add puts a member into a set, made when new. The rest of its key tells it from
// the other members.
func (s *sets) add(name, rest, value []byte) error {
	set, err := s.find(name)
	if err != nil {
		return err
	}
	set.size++
	key := s.memberKey(set, rest)
	if s.gone[string(key)] {
		delete(s.gone, string(key))
	} else {
		s.moved = true
	}
	return s.store.Put(s.members, key, value)
}

// remove takes a member out of a set that it is in.
func (s *sets) remove(name, rest []byte) error {
	set, err := s.find(name)
	if err != nil {
		return err
	}
	set.size--
	key := s.memberKey(set, rest)
	s.gone[string(key)] = true
	return s.store.Delete(s.members, key)
}

// memberKey's result is valid until the next call; the store copies keys.
func (s *sets) memberKey(set *set, rest []byte) []byte {
	s.scratch = append(append(s.scratch[:0], set.prefix()...), rest...)
	return s.scratch
}

// find is the set of a name; a new one gets a number, of which none is 0.
func (s *sets) find(name []byte) (*set, error) {
	found := s.open[string(name)]
	if found == nil {
		if err := s.load([][]byte{name}); err != nil {
			return nil, err
		}
		found = s.open[string(name)]
	}
	if found.number == 0 {
		number, err := s.store.Next(s.names, 1)
		if err != nil {
			return nil, err
		}
		found.number = uint32(number)
	}
	return found, nil
}

// prefix begins the keys of the set's members.
func (s set) prefix() []byte { return binary.BigEndian.AppendUint32(nil, s.number) }

func readSet(value []byte) set {
	size := binary.BigEndian.Uint32(value[setNumber:])
	return set{binary.BigEndian.Uint32(value), size, size}
}

// flush writes the sizes that changed. That the sequence of the members goes on tells readers
// who remember names, sizes and members.
func (s *sets) flush() error {
	for name, set := range s.open {
		if set.size == set.stored {
			continue
		}
		if err := s.write([]byte(name), set); err != nil {
			return err
		}
		set.stored = set.size
	}
	if !s.moved && len(s.gone) == 0 {
		return nil
	}
	s.moved = false
	clear(s.gone)
	_, err := s.store.Next(s.members, 1)
	return err
}

func (s *sets) write(name []byte, set *set) error {
	if set.size == 0 {
		return s.store.Delete(s.names, name)
	}
	return s.store.Put(s.names, name, binary.BigEndian.AppendUint32(set.prefix(), set.size))
}
