package assemble

import (
	"math/rand/v2"
	"slices"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// gather reads the index of the bank and sorts what the plan can use into pools,
// with their groups in an order that the seed decides. At a glance, that may be only some of a large bank.
func (p *problem) gather() error {
	p.offered = p.bank.Portions(p.plan.Skills()...)
	found := sorting{problem: p, holds: map[string]int{}}
	portions := p.offered.All()
	if p.options.glance {
		portions = p.offered.Glance(p.seed)
	}
	for portion, err := range portions {
		if err != nil {
			return err
		}
		own := found.pool(portion)
		if p.rests(p.offered.LastWeek(portion)) {
			for _, f := range own.fits {
				p.resting[f.row] += int(portion.Size)
			}
			continue
		}
		own.groups = append(own.groups, portion)
		own.size += int(portion.Size)
	}
	p.pools = slices.DeleteFunc(p.pools, func(own *pool) bool { return len(own.fits) == 0 || own.size == 0 })
	for i, pool := range p.pools {
		rand.New(rand.NewPCG(p.seed, uint64(i))).Shuffle(len(pool.groups), func(a, b int) {
			pool.groups[a], pool.groups[b] = pool.groups[b], pool.groups[a]
		})
		if slices.ContainsFunc(pool.groups, func(g bank.Portion) bool { return g.LastWeek != pool.groups[0].LastWeek }) {
			slices.SortStableFunc(pool.groups, func(a, b bank.Portion) int {
				return strings.Compare(p.offered.LastWeek(a), p.offered.LastWeek(b))
			})
		}
	}
	return nil
}

// sorting finds the pools of groups while they are read: there may be tens of
// thousands of groups, but only some hundred kinds. When a group was last used makes no
// difference to its pool, and its largest number only in the conditions of the plan.
type sorting struct {
	*problem
	kinds  []kind // by their numbers in the bank's portions
	holds  map[string]int
	holdOf []int // by the numbers of largest numbers, which of holds; 0 for those not met yet
}

type kind struct {
	asked bool    // the plan asks for largest numbers of its skill
	pools []*pool // by which conditions hold of the largest number; nil for those not met yet
}

// pool finds the pool of a group, or begins one.
func (s *sorting) pool(portion bank.Portion) *pool {
	k := grown(&s.kinds, int(portion.Kind))
	if k.pools == nil {
		k.asked = s.sizes.asked[s.offered.Kind(portion).Skill]
	}
	hold := 0
	if k.asked {
		hold = s.hold(portion)
	}
	own := grown(&k.pools, hold)
	if *own == nil {
		*own = s.begin(s.offered.Group(portion), k.pools)
	}
	return *own
}

// hold is the number, from 1 on, of those conditions that hold of a group's largest number.
func (s *sorting) hold(portion bank.Portion) int {
	number := grown(&s.holdOf, int(portion.Largest))
	if *number == 0 {
		*number = numbered(s.holds, s.sizes.hold(s.offered.Largest(portion))) + 1
	}
	return *number
}

// grown is an entry of a list that grows as needed.
func grown[T any](list *[]T, i int) *T {
	for i >= len(*list) {
		*list = append(*list, *new(T))
	}
	return &(*list)[i]
}

// begin makes the pool of a group, if none of those of its kind is the same.
func (s *sorting) begin(g bank.Group, others []*pool) *pool {
	own := &pool{
		fits: s.fits(g), quotas: s.quotas(g), same: s.same(g), balances: s.balancesOf(g),
		difficulty: s.difficulty(g), uses: g.Uses, truncated: true,
	}
	like := slices.IndexFunc(others, func(other *pool) bool {
		return other != nil && slices.Equal(other.fits, own.fits) &&
			slices.Equal(other.quotas, own.quotas) && slices.Equal(other.same, own.same)
	})
	if like >= 0 {
		return others[like]
	}
	s.pools = append(s.pools, own)
	return own
}

// sizes is what a plan asks of the largest numbers of items.
type sizes struct {
	conditions standards.Where
	asked      map[standards.SkillID]bool // skills of whose items it asks anything
}

// hold tells for each condition whether it holds of a largest number.
func (s sizes) hold(largest string) string {
	var ts task.Traits
	ts[task.Largest] = largest
	hold := make([]byte, len(s.conditions))
	for i, c := range s.conditions {
		hold[i] = '-'
		if c.Holds(ts) {
			hold[i] = '+'
		}
	}
	return string(hold)
}

// sizesIn collects what a plan asks of the largest numbers.
func sizesIn(p plan.Plan) sizes {
	s := sizes{asked: map[standards.SkillID]bool{}}
	asks := func(w standards.Where) bool {
		before := len(s.conditions)
		for _, c := range w {
			if c.Trait == task.Largest || c.Trait == task.Hundred {
				s.conditions = append(s.conditions, c)
			}
		}
		return len(s.conditions) > before
	}
	anywhere := asks(p.Same)
	for _, q := range p.Quotas {
		anywhere = asks(q.Where) || anywhere
	}
	for _, r := range p.Rows {
		s.asked[r.Skill] = asks(r.Where) || anywhere || s.asked[r.Skill]
	}
	return s
}
