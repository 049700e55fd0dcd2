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

// Portion is a group told briefly. A large bank has tens of thousands of groups, of which
// all but some hundred differ from others only in their largest number and in the week of
// their last use; what they have in common is read once.
type Portion struct {
	Of       *Group // the rest, its size and set 0; shared by all that have it, so nobody may change it
	Largest  string // the trait's value
	LastWeek string
	Size     int
	Set      uint32
}

// Group is the portion told in full.
func (p Portion) Group() Group {
	g := *p.Of
	g.Traits[task.Largest], g.LastWeek, g.Size = p.Largest, p.LastWeek, p.Size
	g.Set = p.Set
	return g
}

// Portions gives the groups as Groups does, told briefly.
func (b *Bank) Portions(skills ...standards.SkillID) iter.Seq2[Portion, error] {
	prefixes := [][]byte{nil}
	if len(skills) > 0 {
		prefixes = nil
	}
	for i, skill := range skills {
		if !slices.Contains(skills[:i], skill) {
			prefixes = append(prefixes, groupPrefix(nil, skill, Ready))
		}
	}
	return func(yield func(Portion, error) bool) {
		known := portionReader{map[string]*Group{}, map[string]string{}, nil}
		for _, prefix := range prefixes {
			for p, err := range b.portionsFrom(prefix, &known) {
				if err == nil && p.Of.Standing != Ready {
					continue
				}
				if !yield(p, err) {
					return
				}
			}
		}
	}
}

// portionsFrom gives the groups whose name begins with the prefix.
func (b *Bank) portionsFrom(prefix []byte, known *portionReader) iter.Seq2[Portion, error] {
	return pages(b, prefix, 0, func(r store.Reader, from []byte, about int) (page []Portion, next []byte, err error) {
		page = make([]Portion, 0, about)
		for e, err := range r.Scan(groupsBucket, store.Range{From: from, To: store.After(prefix), Limit: about + 1}) {
			if err != nil {
				return nil, nil, err
			}
			if len(page) == about {
				return page, bytes.Clone(e.Key), nil
			}
			p, err := known.read(e.Key, e.Value)
			if err != nil {
				return nil, nil, err
			}
			page = append(page, p)
		}
		return page, nil, nil
	})
}

// portionReader remembers what it has read.
type portionReader struct {
	groups  map[string]*Group // by their names without largest number and last week
	words   map[string]string
	scratch []byte
}

// read reads a group's name and the size of its set, as readGroup does.
func (known *portionReader) read(name, value []byte) (p Portion, err error) {
	r := reader{raw: name}
	r.skip() // the skill
	r.skip() // the standing
	r.skip() // the look
	r.number()
	r.number()
	r.count()
	rest := append(known.scratch[:0], name[:r.at]...)
	week := r.skip()
	from := r.at
	r.flag()
	var largest []byte
	for applies := r.count(); applies != 0 && !r.bad; applies &= applies - 1 {
		if bits.TrailingZeros64(applies) != int(task.Largest) {
			r.skip()
			continue
		}
		rest = append(rest, name[from:r.at]...)
		largest = r.skip()
		from = r.at
	}
	rest = append(rest, name[from:]...)
	known.scratch = rest
	set := readSet(value)
	p = Portion{known.groups[string(rest)], known.word(largest), known.word(week), int(set.size), set.number}
	if p.Of != nil {
		return p, nil
	}
	g, err := readGroup(name, value)
	if err != nil {
		return p, err
	}
	g.Traits[task.Largest], g.LastWeek, g.Size, g.Set = "", "", 0, 0
	p.Of = &g
	known.groups[string(rest)] = p.Of
	return p, nil
}

func (known *portionReader) word(raw []byte) string {
	word, ok := known.words[string(raw)]
	if !ok {
		word = string(raw)
		known.words[word] = word
	}
	return word
}
