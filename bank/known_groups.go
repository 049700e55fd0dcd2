package bank

import (
	"sync"

	"evenhand/bank/store"
)

// knownGroups remembers the names and sizes of a bank's groups, which a list by traits has to
// go through. The sequence of the bucket of members goes on with every change of them, and so
// tells whether what is remembered still holds.
type knownGroups struct {
	mutex  sync.Mutex
	as     uint64 // the sequence that they are of
	groups []sized
	known  bool
}

// sized is a group and the set that its members are in.
type sized struct {
	Group
	set set
}

// mostKnown is how many groups are remembered at most: some 500 bytes each.
const mostKnown = 20_000

// allGroups reads the groups of all items. They are shared: nobody may change them.
func (b *Bank) allGroups(r store.Reader) ([]sized, error) {
	now, err := r.Sequence(groupMembers)
	if err != nil {
		return nil, err
	}
	k := &b.groups
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if k.known && k.as == now {
		return k.groups, nil
	}
	var groups []sized
	for e, err := range r.Scan(groupsBucket, store.Range{}) {
		if err != nil {
			return nil, err
		}
		g, err := readGroup(e.Key, e.Value)
		if err != nil {
			return nil, err
		}
		groups = append(groups, sized{g, readSet(e.Value)})
	}
	if len(groups) <= mostKnown {
		k.groups, k.as, k.known = groups, now, true
	}
	return groups, nil
}
