package bank

import (
	"bytes"
	"iter"
	"math/bits"
	"slices"

	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Portions is the groups of some skills, told briefly. A large bank has tens of thousands of
// groups, of which all but some hundred differ from others only in their largest number and in
// the week of their last use: what they have in common is a kind, which is read once. Not for
// several goroutines at once.
type Portions struct {
	bank     *Bank
	prefixes [][]byte // of the groups' names
	read     portionReader
	left     bool // a glance left some out
}

// Portion is a group of some Portions. Its first three numbers count from 0 and mean something
// there only: portions with the same have the same kind, largest number and last week.
type Portion struct {
	Kind, Largest, LastWeek uint32
	Size, Set               uint32
}

// Portions gives the groups that Groups gives, told briefly.
func (b *Bank) Portions(skills ...standards.SkillID) *Portions {
	ps := &Portions{bank: b, prefixes: [][]byte{nil}, read: newPortionReader()}
	if len(skills) > 0 {
		ps.prefixes = nil
	}
	for i, skill := range skills {
		if !slices.Contains(skills[:i], skill) {
			ps.prefixes = append(ps.prefixes, groupPrefix(nil, skill, Ready))
		}
	}
	return ps
}

// All reads the portions.
func (ps *Portions) All() iter.Seq2[Portion, error] {
	return func(yield func(Portion, error) bool) {
		for _, prefix := range ps.prefixes {
			for page, err := range ps.from(prefix) {
				if err != nil {
					yield(Portion{}, err)
					return
				}
				for _, p := range page {
					if ps.Kind(p).Standing == Ready && !yield(p, nil) {
						return
					}
				}
			}
		}
	}
}

// Kind is what a portion's group has in common with all of its kind: its size and set are 0, its
// largest number and last week empty. It is shared, so nobody may change it.
func (ps *Portions) Kind(p Portion) *Group { return ps.read.kinds[p.Kind] }

// Largest is the value of a portion's trait of this name.
func (ps *Portions) Largest(p Portion) string { return ps.read.words[p.Largest] }

// LastWeek is the week of a portion's last use, empty for none.
func (ps *Portions) LastWeek(p Portion) string { return ps.read.words[p.LastWeek] }

// Group is a portion told in full.
func (ps *Portions) Group(p Portion) Group { return ps.read.group(p) }

// from gives the groups whose name begins with the prefix, many at a time.
func (ps *Portions) from(prefix []byte) iter.Seq2[[]Portion, error] {
	return pages(ps.bank, prefix, 0, func(r store.Reader, from []byte, about int) (_ [][]Portion, next []byte, err error) {
		page := make([]Portion, 0, about)
		ps.read.before.name = nil
		for e, err := range r.Scan(groupsBucket, store.Range{From: from, To: store.After(prefix), Limit: about + 1}) {
			if err != nil {
				return nil, nil, err
			}
			if len(page) == about {
				return [][]Portion{page}, bytes.Clone(e.Key), nil
			}
			p, err := ps.read.read(e.Key, e.Value)
			if err != nil {
				return nil, nil, err
			}
			page = append(page, p)
		}
		return [][]Portion{page}, nil, nil
	})
}

// portionReader remembers what it has read.
type portionReader struct {
	kinds  []*Group
	kindOf map[string]uint32 // by a group's name without largest number and last week
	words  []string
	wordOf map[string]uint32
	before named

	numbers [1024]uint32 // which of the words a whole number is, 0 for one not met yet
}

// named is a group's name and its parts. Names come in order, so that most begin as the one before
// did, up to the largest number, and end as it did: such a name is not taken apart.
type named struct {
	name     []byte // valid until the transaction ends; nil for none
	from, to int    // where its largest number stands
	rest     []byte // the name without largest number and last week
	head     int    // how much of the rest stands before the largest number
	portion  Portion
}

func newPortionReader() portionReader {
	return portionReader{kindOf: map[string]uint32{}, words: []string{""}, wordOf: map[string]uint32{"": 0}}
}

// read reads a group's name and the size of its set, as readGroup does.
func (known *portionReader) read(name, value []byte) (p Portion, err error) {
	n := &known.before
	begins := n.name != nil && len(name) >= n.to && bytes.Equal(name[:n.from], n.name[:n.from])
	ends := begins && bytes.Equal(name[n.to:], n.name[n.to:])
	n.name = nil
	if !begins && !known.takeApart(name) {
		return p, errRecord
	}
	n.portion.Largest = known.number(name[n.from:n.to])
	if !ends {
		n.rest = append(n.rest[:n.head], name[n.to:]...)
		if n.portion.Kind, err = known.kind(n.rest, name, value); err != nil {
			return p, err
		}
	}
	set := readSet(value)
	n.name, n.portion.Size, n.portion.Set = name, set.size, set.number
	return n.portion, nil
}

// takeApart finds the parts of a name up to its largest number, or up to its end where it has none.
func (known *portionReader) takeApart(name []byte) (ok bool) {
	n, r := &known.before, reader{raw: name}
	r.skip() // the skill
	r.skip() // the standing
	r.skip() // the look
	r.number()
	r.number()
	r.count()
	n.rest = append(n.rest[:0], name[:r.at]...)
	n.portion.LastWeek = known.word(r.skip())
	from := r.at
	r.flag()
	applies := r.count()
	for ; applies != 0 && bits.TrailingZeros64(applies) != int(task.Largest); applies &= applies - 1 {
		r.skip()
	}
	n.rest = append(n.rest, name[from:r.at]...)
	n.head = len(n.rest)
	size := 0
	if applies != 0 {
		size = len(r.skip())
	}
	n.from, n.to = r.at-size, r.at
	return !r.bad
}

// kind is the number of what has the rest of a group's name, read from the name when it is new.
func (known *portionReader) kind(rest, name, value []byte) (uint32, error) {
	if kind, ok := known.kindOf[string(rest)]; ok {
		return kind, nil
	}
	g, err := readGroup(name, value)
	if err != nil {
		return 0, err
	}
	kind := uint32(len(known.kinds))
	g.Traits[task.Largest], g.LastWeek, g.Size, g.Set = "", "", 0, 0
	known.kinds, known.kindOf[string(rest)] = append(known.kinds, &g), kind
	return kind, nil
}

// word is the number of a text.
func (known *portionReader) word(raw []byte) uint32 {
	word, ok := known.wordOf[string(raw)]
	if !ok {
		word = uint32(len(known.words))
		known.words = append(known.words, string(raw))
		known.wordOf[string(raw)] = word
	}
	return word
}

// number is the number of a text that is most often a whole number.
func (known *portionReader) number(raw []byte) uint32 {
	value := 0
	for _, digit := range raw {
		value = 10*value + int(digit-'0')
		if digit < '0' || digit > '9' || value == 0 || value >= len(known.numbers) {
			return known.word(raw)
		}
	}
	if known.numbers[value] == 0 {
		known.numbers[value] = known.word(raw)
	}
	return known.numbers[value]
}

func (known *portionReader) group(p Portion) Group {
	g := *known.kinds[p.Kind]
	g.Traits[task.Largest], g.LastWeek = known.words[p.Largest], known.words[p.LastWeek]
	g.Size, g.Set = int(p.Size), p.Set
	return g
}
