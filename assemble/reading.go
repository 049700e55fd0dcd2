package assemble

import (
	"slices"

	"evenhand/bank"
)

// reading is a pool on its way to being filled.
type reading struct {
	*pool
	each  int // at most so many items of a group
	left  []bank.Portion
	some  int // so many groups are read next
	keys  *keyed
	whole bool // every group so far was read to its end
}

func (r *reading) begin(each int) {
	r.each, r.left, r.keys, r.whole = each, r.groups, newKeyed(), true
	r.read, r.truncated, r.some = nil, true, 0
}

// take is the groups to read next: those that are needed if every item is of use, and when they
// were not enough, twice as many.
func (r *reading) take(limit int) []bank.Portion {
	needed := (limit - len(r.read) + r.each - 1) / r.each
	r.some = min(max(needed, 2*r.some), mostGroups, len(r.left))
	return r.left[:r.some]
}

// A question for the members of groups costs a network a round trip; what it brings must fit in memory.
const (
	mostGroups = 256  // of one pool
	together   = 2048 // of all pools
)

// fill reads items of pools until each has limit of use, or all there are. Of
// the first groups it reads a few each, so that the choice is wide, and more
// only when that isn't enough. When hardly any item is of use it gives up for
// this time. The pools are read side by side, to ask the bank for much at once.
// At a glance it reads as many of a group as it can, as each costs a page of the file or more, and
// ends when plenty were read in all.
func (p *problem) fill(pools []*pool, limit int) error {
	glance := !p.offered.Whole()
	var open []*reading
	for _, own := range pools {
		r := &reading{pool: own}
		each := (limit + len(own.groups) - 1) / len(own.groups)
		if glance {
			each = limit
		}
		r.begin(each)
		open = append(open, r)
	}
	for len(open) > 0 {
		if err := p.readOn(open, limit); err != nil {
			return err
		}
		if glance && p.plenty() {
			break
		}
		open = slices.DeleteFunc(open, func(r *reading) bool { return r.filled(limit) })
	}
	return nil
}

// aPlace is how many items for each place of the forms are plenty at a glance.
const aPlace = 16

// plenty says that so many items were read that more hardly make the forms more even.
func (p *problem) plenty() bool {
	read := 0
	for _, own := range p.pools {
		read += len(own.read)
	}
	return read >= aPlace*p.forms*p.plan.Size()
}

// filled says that a pool needs no more reading; one that has too little begins anew, with more of each group.
func (r *reading) filled(limit int) bool {
	enough := len(r.read) >= limit
	if len(r.left) > 0 && !enough {
		return false
	}
	r.truncated = len(r.left) > 0 || !r.whole
	if !r.truncated || enough || r.each*len(r.groups) >= 16*limit {
		return true
	}
	r.begin(4 * r.each)
	return false
}

// readOn reads the next groups of pools.
func (p *problem) readOn(open []*reading, limit int) error {
	for len(open) > 0 {
		var portions []bank.Portion
		var most []int
		n := 0
		for ; n < len(open) && len(portions) < together; n++ {
			some := open[n].take(limit)
			portions, most = append(portions, some...), append(most, slices.Repeat([]int{open[n].each}, len(some))...)
		}
		groups := p.inFull(portions)
		lists, err := p.bank.MembersOf(groups, p.seed, most)
		if err != nil {
			return err
		}
		for _, r := range open[:n] {
			if err := p.considerAll(r, groups[:r.some], lists[:r.some], limit); err != nil {
				return err
			}
			groups, lists = groups[r.some:], lists[r.some:]
		}
		open = open[n:]
	}
	return nil
}

// considerAll takes the members of a pool's next groups, up to its limit.
func (p *problem) considerAll(r *reading, groups []bank.Group, lists [][]bank.Member, limit int) error {
	for i, members := range lists {
		g := &groups[i]
		r.whole = r.whole && len(members) == g.Size
		for _, m := range members {
			if len(r.read) >= limit {
				r.whole = false
				return nil
			}
			if err := p.consider(r.pool, g, m, r.keys); err != nil {
				return err
			}
		}
	}
	r.left = r.left[r.some:]
	return nil
}

func (p *problem) inFull(portions []bank.Portion) []bank.Group {
	groups := make([]bank.Group, len(portions))
	for i, portion := range portions {
		groups[i] = p.offered.Group(portion)
	}
	return groups
}
