package bank

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"iter"
	"slices"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Group is a set of items that the assembler can't tell apart but by their clashes:
// alike in all that a plan can ask for.
type Group struct {
	Skill      standards.SkillID
	Standing   Standing
	Look       task.Look
	Traits     task.Traits
	Difficulty standards.Difficulty // measured where there is evidence, else predicted
	Seconds    int
	Uses       int    // in how many quizzes each has stood
	LastWeek   string // ISO week of the last of these, empty for none
	ByHand     bool
	Size       int // how many items; it is not part of what makes the group
}

// Member is an item of a group, as far as clashes need it.
type Member struct {
	ID   string
	Task string // empty for an item by hand
	Key  string
}

// newGroup is the group of an item with these uses.
func newGroup(it *Item, uses usage) Group {
	return Group{
		Skill: it.Skill, Standing: it.Standing, Look: it.Look, Traits: it.Traits,
		Difficulty: it.Difficulty(), Seconds: it.Seconds,
		Uses: uses.count, LastWeek: uses.lastWeek, ByHand: it.ByHand(),
	}
}

// appendName appends the group's name in the index. It begins with what groups
// are looked up by.
func (g *Group) appendName(to []byte) []byte {
	to = appendText(groupPrefix(to, g.Skill, g.Standing), string(g.Look))
	to = binary.AppendVarint(to, int64(g.Difficulty))
	to = binary.AppendVarint(to, int64(g.Seconds))
	to = binary.AppendUvarint(to, uint64(g.Uses))
	to = appendText(to, g.LastWeek)
	to = appendFlag(to, g.ByHand)
	return appendTraits(to, &g.Traits)
}

func groupPrefix(to []byte, skill standards.SkillID, standing Standing) []byte {
	return appendText(appendText(to, string(skill)), string(standing))
}

// readGroup reads a name that appendName wrote and the size of the set it names.
func readGroup(name, value []byte) (g Group, err error) {
	r := reader{raw: name, text: string(name)}
	g.Skill, g.Standing, g.Look = standards.SkillID(r.string()), Standing(r.string()), task.Look(r.string())
	g.Difficulty, g.Seconds = standards.Difficulty(r.number()), int(r.number())
	g.Uses, g.LastWeek, g.ByHand = int(r.count()), r.string(), r.flag()
	r.traits(&g.Traits)
	g.Size = int(readSet(value).size)
	return g, r.end()
}

// Groups gives the groups of the ready items of the skills, or of all skills if
// none is named, in a fixed order within a skill. It reads the index only: its
// time grows with the number of groups, not of items.
func (b *Bank) Groups(skills ...standards.SkillID) iter.Seq2[Group, error] {
	prefixes := [][]byte{nil}
	if len(skills) > 0 {
		prefixes = nil
	}
	for i, skill := range skills {
		if slices.Contains(skills[:i], skill) {
			continue
		}
		prefixes = append(prefixes, groupPrefix(nil, skill, Ready))
	}
	return func(yield func(Group, error) bool) {
		for _, prefix := range prefixes {
			for g, err := range b.groupsFrom(prefix) {
				if err == nil && g.Standing != Ready {
					continue
				}
				if !yield(g, err) {
					return
				}
			}
		}
	}
}

// groupsFrom gives the groups whose name begins with the prefix.
func (b *Bank) groupsFrom(prefix []byte) iter.Seq2[Group, error] {
	return pages(b, prefix, func(tx *bbolt.Tx, from []byte, page *[]Group) ([]byte, error) {
		c := tx.Bucket(groupsBucket).Cursor()
		name, value := c.Seek(from)
		for ; bytes.HasPrefix(name, prefix) && name != nil; name, value = c.Next() {
			if len(*page) == cap(*page) {
				return bytes.Clone(name), nil
			}
			g, err := readGroup(name, value)
			if err != nil {
				return nil, err
			}
			*page = append(*page, g)
		}
		return nil, nil
	})
}

// Members gives up to limit items of a group, or all for a limit below 1. The
// members stand in a circle in an order that has nothing to do with their tasks;
// the seed decides where the reading begins. A group that is no more has none.
func (b *Bank) Members(g Group, seed uint64, limit int) ([]Member, error) {
	var list []Member
	err := b.view(func(tx *bbolt.Tx) error {
		value := tx.Bucket(groupsBucket).Get(g.appendName(nil))
		if value == nil {
			return nil
		}
		set := readSet(value)
		if limit < 1 || limit > int(set.size) {
			limit = int(set.size)
		}
		list = make([]Member, 0, limit)
		prefix := set.prefix()
		start := binary.BigEndian.AppendUint64(set.prefix(), mix(seed+uint64(set.number)))
		c := tx.Bucket(groupMembers).Cursor()
		key, value := c.Seek(start)
		var scratch [128]byte
		for len(list) < limit {
			if !bytes.HasPrefix(key, prefix) {
				key, value = c.Seek(prefix)
			}
			member, err := readMember(key, value, scratch[:])
			if err != nil {
				return err
			}
			list = append(list, member)
			key, value = c.Next()
		}
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", b.Path(), err)
	}
	return list, nil
}

// memberRest is what follows the group's number in a member's key: a hash that
// puts the members in no particular order, and the ID.
func memberRest(id ulid.ULID) []byte {
	hash := mix(binary.BigEndian.Uint64(id[8:]))
	return append(binary.BigEndian.AppendUint64(make([]byte, 0, 24), hash), id[:]...)
}

// mix spreads the bits of a number over all 64 (the finishing steps of the
// SplitMix64 generator, Steele, Lea & Flood 2014, from memory).
func mix(x uint64) uint64 {
	x += 0x9E3779B97F4A7C15
	x = (x ^ x>>30) * 0xBF58476D1CE4E5B9
	x = (x ^ x>>27) * 0x94D049BB133111EB
	return x ^ x>>31
}

func appendMember(to []byte, it *Item) []byte {
	return appendText(appendText(to, it.Task), it.Key)
}

// readMember reads a member; scratch is room that may be used again.
func readMember(key, value, scratch []byte) (m Member, err error) {
	if len(key) != setNumber+8+len(ulid.ULID{}) {
		return m, errRecord
	}
	const idText = ulid.EncodedSize
	raw := append(scratch[:idText], value...)
	if err := ulid.ULID(key[setNumber+8:]).MarshalTextTo(raw[:idText]); err != nil {
		return m, err
	}
	text := string(raw) // one for all three
	r := reader{raw: raw[idText:], text: text[idText:]}
	m = Member{text[:idText], r.string(), r.string()}
	return m, r.end()
}
