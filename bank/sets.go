package bank

import (
	"encoding/binary"

	"go.etcd.io/bbolt"
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
	names, members *bbolt.Bucket
	open           map[string]*set
	scratch        []byte
}

type set struct{ number, size, stored uint32 }

const setNumber = 4 // bytes

func groupSets(tx *bbolt.Tx) *sets {
	return &sets{tx.Bucket(groupsBucket), tx.Bucket(groupMembers), map[string]*set{}, nil}
}

func originSets(tx *bbolt.Tx) *sets {
	return &sets{tx.Bucket(originsBucket), tx.Bucket(originMembers), map[string]*set{}, nil}
}

// add puts a member into a set, made when new. The rest of its key tells it from
// the other members.
func (s *sets) add(name, rest, value []byte) error {
	set, err := s.find(name)
	if err != nil {
		return err
	}
	set.size++
	return s.members.Put(s.memberKey(set, rest), value)
}

// remove takes a member out of a set that it is in.
func (s *sets) remove(name, rest []byte) error {
	set, err := s.find(name)
	if err != nil {
		return err
	}
	set.size--
	return s.members.Delete(s.memberKey(set, rest))
}

// memberKey's result is valid until the next call; bbolt copies keys.
func (s *sets) memberKey(set *set, rest []byte) []byte {
	s.scratch = append(append(s.scratch[:0], set.prefix()...), rest...)
	return s.scratch
}

func (s *sets) find(name []byte) (*set, error) {
	if known, ok := s.open[string(name)]; ok {
		return known, nil
	}
	found := &set{}
	if value := s.names.Get(name); value != nil {
		*found = readSet(value)
	} else {
		number, err := s.names.NextSequence()
		if err != nil {
			return nil, err
		}
		found.number = uint32(number)
	}
	s.open[string(name)] = found
	return found, nil
}

// prefix begins the keys of the set's members.
func (s set) prefix() []byte { return binary.BigEndian.AppendUint32(nil, s.number) }

func readSet(value []byte) set {
	size := binary.BigEndian.Uint32(value[setNumber:])
	return set{binary.BigEndian.Uint32(value), size, size}
}

// flush writes the sizes that changed.
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
	return nil
}

func (s *sets) write(name []byte, set *set) error {
	if set.size == 0 {
		return s.names.Delete(name)
	}
	return s.names.Put(name, binary.BigEndian.AppendUint32(set.prefix(), set.size))
}
