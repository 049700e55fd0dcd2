package bank

import (
	"sync"

	"evenhand/bank/store"
)

// knownGroups remembers the names and sizes of a bank's groups, which a list by traits has to
// go through, and who is in those that were listed. The sequence of the bucket of members goes on
// with every change of them, and so tells whether what is remembered still holds.
type knownGroups struct {
	mutex  sync.Mutex
	as     uint64 // the sequence that they are of
	groups []sized
	known  bool

	members map[uint32][]rank // by the number of a set
	kept    int               // so many of them

	choices map[asking]choice // of the last queries: who looks at a list turns its pages
	size    int               // of these, in bytes
}

// asking is what a query asks, and for one of origins the sequence of their members: in a merge an item may take
// another's origin and stay in its group.
type asking struct {
	what    string
	origins uint64
}

// sized is a group and the set that its members are in.
type sized struct {
	Group
	set set
}

// So much is remembered at most.
const (
	mostKnown   = 20_000  // groups, of some 500 bytes each
	mostMembers = 200_000 // members, of 16 bytes each
	mostChoices = 8 << 20 // bytes of lists
)

// allGroups reads the groups of all items, and the sequence that they are of. They are shared: nobody
// may change them.
func (b *Bank) allGroups(r store.Reader) (groups []sized, now uint64, err error) {
	now, err = r.Sequence(groupMembers)
	if err != nil {
		return nil, 0, err
	}
	k := &b.groups
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if k.known && k.as == now {
		return k.groups, now, nil
	}
	for e, err := range r.Scan(groupsBucket, store.Range{}) {
		if err != nil {
			return nil, 0, err
		}
		g, err := readGroup(e.Key, e.Value)
		if err != nil {
			return nil, 0, err
		}
		groups = append(groups, sized{g, readSet(e.Value)})
	}
	if len(groups) <= mostKnown {
		k.groups, k.as, k.known = groups, now, true
		k.members, k.kept = nil, 0
		k.choices, k.size = nil, 0
	}
	return groups, now, nil
}

// choice is what was chosen for the same question before, if nothing has changed since. Its IDs are shared: nobody may
// change them.
func (k *knownGroups) choice(now uint64, asked asking) (made choice, ok bool) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if k.known && k.as == now {
		made, ok = k.choices[asked]
	}
	return made, ok
}

func (k *knownGroups) keepChoice(now uint64, asked asking, made choice) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	size := len(asked.what) + 16*len(made.ids) + 100
	if !k.known || k.as != now || size > mostChoices {
		return
	}
	if k.choices == nil || k.size+size > mostChoices {
		k.choices, k.size = map[asking]choice{}, 0
	}
	if _, here := k.choices[asked]; !here {
		k.choices[asked] = made
		k.size += size
	}
}

// inGroups is who is in some groups that allGroups gave, in no order.
func (b *Bank) inGroups(r store.Reader, want chosen, now uint64) ([]rank, error) {
	k := &b.groups
	ids := make([]rank, 0, want.size)
	asked := chosen{members: want.members}
	k.mutex.Lock()
	for _, s := range want.sets {
		if members := k.members[s.number]; k.as == now && members != nil {
			ids = append(ids, members...)
		} else {
			asked.add(s)
		}
	}
	k.mutex.Unlock()
	read, err := asked.read(r)
	if err != nil {
		return nil, err
	}
	k.mutex.Lock()
	defer k.mutex.Unlock()
	remember := k.known && k.as == now && asked.size <= mostMembers
	if k.members == nil || remember && k.kept+asked.size > mostMembers {
		k.members, k.kept = map[uint32][]rank{}, 0
	}
	for number, members := range read {
		ids = append(ids, members...)
		if remember && k.members[number] == nil {
			k.members[number] = members
			k.kept += len(members)
		}
	}
	return ids, nil
}
