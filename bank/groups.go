package bank

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"iter"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
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
	Size       int    // how many items; it is not part of what makes the group
	Set        uint32 // by which the bank finds them, 0 where the group was not read from it; no part of it, too
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
	set := readSet(value)
	g.Size, g.Set = int(set.size), set.number
	return g, r.end()
}

// Groups gives the groups of the ready items of the skills, or of all skills if
// none is named, in a fixed order within a skill. It reads the index only: its
// time grows with the number of groups, not of items.
func (b *Bank) Groups(skills ...standards.SkillID) iter.Seq2[Group, error] {
	return func(yield func(Group, error) bool) {
		portions := b.Portions(skills...)
		for portion, err := range portions.All() {
			g := Group{}
			if err == nil {
				g = portions.Group(portion)
			}
			if !yield(g, err) {
				return
			}
		}
	}
}

// Members gives up to limit items of a group that was read from the bank, or all for a limit
// below 1. The members stand in a circle in an order that has nothing to do with their tasks;
// the seed decides where the reading begins. A group that is no more has none.
func (b *Bank) Members(g Group, seed uint64, limit int) ([]Member, error) {
	lists, err := b.MembersOf([]Group{g}, seed, []int{limit})
	if err != nil {
		return nil, err
	}
	return lists[0], nil
}

// MembersOf gives the members of several groups, each as Members does, in their order; without
// limits, all of them.
func (b *Bank) MembersOf(groups []Group, seed uint64, limits []int) (lists [][]Member, err error) {
	err = b.view(func(r store.Reader) error {
		lists = make([][]Member, len(groups))
		circles := make([]circle, len(groups))
		var room []byte
		for i := range groups {
			limit := 0
			if limits != nil {
				limit = limits[i]
			}
			room = groups[i].appendName(room[:0])
			circles[i] = groups[i].circle(mix(seed+hashOf(room)), limit, &lists[i])
		}
		return readCircles(r, circles)
	})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", b.Path(), err)
	}
	return lists, nil
}

// circle is the members of a group, of which so many are wanted from a start on and,
// behind the last, from the first on.
type circle struct {
	set
	start  []byte
	want   int
	list   *[]Member
	before int // so many were read that stand before the start
}

// circle begins at a place that the seed and the group's name say. The number of its set is another
// one when the group lost all its members in between, as to a quiz that was taken back.
func (g *Group) circle(place uint64, limit int, list *[]Member) circle {
	if limit < 1 || limit > g.Size {
		limit = g.Size
	}
	*list = make([]Member, 0, limit)
	s := set{number: g.Set, size: uint32(g.Size)}
	return circle{set: s, start: binary.BigEndian.AppendUint64(s.prefix(), place), want: limit, list: list}
}

func hashOf(name []byte) uint64 {
	h := fnv.New64a()
	h.Write(name)
	return h.Sum64()
}

// readCircles reads the members, all those behind a start first. A circle that is wanted whole
// is read from its first member on and turned.
func readCircles(r store.Reader, circles []circle) error {
	of := make(map[uint32]*circle, len(circles))
	ranges := make([]store.Range, len(circles))
	for i := range circles {
		c := &circles[i]
		of[c.number] = c
		ranges[i] = store.Range{From: c.start, To: store.After(c.prefix()), Limit: c.want}
		if c.whole() {
			ranges[i].From = c.prefix()
		}
	}
	if err := readMembers(r, of, ranges); err != nil {
		return err
	}
	ranges = ranges[:0]
	for _, c := range circles {
		if left := c.want - len(*c.list); left > 0 && !c.whole() {
			ranges = append(ranges, store.Range{From: c.prefix(), To: c.start, Limit: left})
		}
	}
	if err := readMembers(r, of, ranges); err != nil {
		return err
	}
	for _, c := range circles {
		if c.whole() {
			*c.list = append((*c.list)[c.before:], (*c.list)[:c.before]...)
		}
	}
	return nil
}

func (c *circle) whole() bool { return c.want == int(c.size) }

func readMembers(r store.Reader, of map[uint32]*circle, ranges []store.Range) error {
	var scratch [128]byte
	for e, err := range r.Scan(groupMembers, ranges...) {
		if err != nil {
			return err
		}
		member, err := readMember(e.Key, e.Value, scratch[:])
		if err != nil {
			return err
		}
		c := of[binary.BigEndian.Uint32(e.Key)]
		*c.list = append(*c.list, member)
		if bytes.Compare(e.Key, c.start) < 0 {
			c.before++
		}
	}
	return nil
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
