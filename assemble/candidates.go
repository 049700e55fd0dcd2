package assemble

import (
	"fmt"
	"hash/fnv"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// pool is the items of a bank that a plan can't tell apart but by their clashes:
// they fit the same rows in the same looks and count in the same quotas, and have
// the same difficulty and number of uses. Only as many of them are read as the
// search needs.
type pool struct {
	fits       []fit
	quotas     []int // the plan's bands, then its quotas
	same       []int // the plan's conditions of which all forms hold equally many
	balances   []int
	difficulty standards.Difficulty // for the typical pupil
	uses       int

	lastWeek  string // of a single item of an earlier quiz: of its last other use
	groups    []bank.Portion
	size      int         // how many items the bank has, before looks are asked for
	read      []candidate // those read so far
	truncated bool        // the bank has more that might be of use
}

// fit says that the items of a pool may fill a row, and the least seconds in
// which one does. An item whose task can't take the row's looks doesn't fit.
type fit struct{ row, seconds int }

// candidate is one item on offer.
type candidate struct {
	id      string
	looks   []task.Look // for each fit of its pool; empty where it doesn't fit
	seconds []int       // the same
	key     string      // its skill and key
	clashes []string
	lastUse int  // week of its last use, counted from long ago; 0 for none
	answer  int  // the quota that it counts in by its answer, or −1
	few     bool // all of its skill offer the same few answers
	tells   bool // it tells the plan's missteps apart
}

// balanced says whether forms should be even in a trait. The sizes of a task's
// numbers have many values; evenness in each of them says nothing.
func balanced(t task.Trait) bool { return t != task.Largest && t != task.CountSteps && t != task.Apart }

// quotas gives the numbers of the bands and quotas that an item counts in.
func (p *problem) quotas(g bank.Group) (quotas []int) {
	band := p.difficulty(g).Band()
	for i, b := range p.plan.Bands {
		if b.Band == band {
			quotas = append(quotas, i)
		}
	}
	for i, q := range p.plan.Quotas {
		if q.Where.Holds(g.Traits) {
			quotas = append(quotas, len(p.plan.Bands)+i)
		}
	}
	return quotas
}

// difficulty is that of a group's items for the typical pupil of the quiz.
func (p *problem) difficulty(g bank.Group) standards.Difficulty {
	return g.Difficulty.For(g.Skill, standards.Difficulty(p.ability))
}

// same gives the numbers of the plan's conditions in Same that an item meets.
func (p *problem) same(g bank.Group) (same []int) {
	for i, c := range p.plan.Same {
		if c.Holds(g.Traits) {
			same = append(same, i)
		}
	}
	return same
}

// balancesOf gives the numbers of the balances that an item counts in; one gets
// its number when it is first seen.
func (p *problem) balancesOf(g bank.Group) []int {
	balances := []int{p.balance("band", string(p.difficulty(g).Band()))}
	for i, value := range &g.Traits {
		if t := task.Trait(i); value != "" && balanced(t) {
			balances = append(balances, p.balance(t.String(), value))
		}
	}
	return balances
}

func (p *problem) balance(name, value string) int {
	n, ok := p.balanceOf[balance{name, value}]
	if !ok {
		n = len(p.balances)
		p.balanceOf[balance{name, value}] = n
		p.balances = append(p.balances, name+"="+value)
	}
	return n
}

// balance is a trait, or the band, and the value of which forms should have equally many items.
type balance struct{ name, value string }

// fits says which rows the items of a group may fill.
func (p *problem) fits(g bank.Group) []fit {
	var fits []fit
	for i, row := range p.plan.Rows {
		if row.Skill != g.Skill || !row.Where.Holds(g.Traits) {
			continue
		}
		looks := row.Looks
		if len(looks) == 0 || g.ByHand && slices.Contains(looks, g.Look) {
			looks = []task.Look{g.Look}
		} else if g.ByHand {
			continue
		}
		least := shownFor(&g, looks[0])
		for _, look := range looks[1:] {
			least = min(least, shownFor(&g, look))
		}
		fits = append(fits, fit{i, least})
	}
	return fits
}

// shownFor is the expected working time of a group's items in a look; one by
// hand has a look and a time of its own.
func shownFor(g *bank.Group, look task.Look) int {
	if g.ByHand || look == g.Look {
		return g.Seconds
	}
	return standards.Seconds(g.Skill, look)
}

// rests says that items last used in a week stay out: those used in the last
// Rest weeks, and those already given to this week or a later one.
func (p *problem) rests(lastWeek string) bool {
	return p.plan.Rest > 0 && lastWeek != "" && lastWeek >= p.awakeBefore
}

// weekNumber counts the weeks from the year 1 to a week; 0 for none.
func weekNumber(text string) int {
	if text == "" {
		return 0
	}
	week, err := plan.ParseWeek(text)
	if err != nil {
		return 0
	}
	return int(week.Monday().Unix()/(7*24*60*60)) + 1970*53
}

// scatter is a number that looks random, the same for the same seed and name.
func scatter(seed uint64, name string) uint64 {
	h := fnv.New64a()
	fmt.Fprintf(h, "%016x%s", seed, name)
	return h.Sum64()
}

// keyed is what a pool has of each key in the same looks.
type keyed struct {
	number map[string]int // by key and looks
	apart  []int          // by this number, how many items share no further clash group
	names  map[ofKey]bool // these clash groups
	name   []byte         // room to write one in
}

type ofKey struct {
	number int
	name   string
}

func newKeyed() *keyed { return &keyed{number: map[string]int{}, names: map[ofKey]bool{}} }

// of is the number of an item's key in its looks.
func (k *keyed) of(c *candidate) int {
	k.name = append(k.name[:0], c.key...)
	for _, look := range c.looks {
		k.name = append(append(k.name, ' '), look...)
	}
	n, ok := k.number[string(k.name)]
	if !ok {
		n = len(k.apart)
		k.number[string(k.name)], k.apart = n, append(k.apart, 0)
	}
	return n
}

// add counts an item if it shares no further clash group with those that were counted.
func (k *keyed) add(number int, c *candidate) {
	for _, name := range c.clashes {
		if name != c.key && k.names[ofKey{number, name}] {
			return
		}
	}
	k.apart[number]++
	for _, name := range c.clashes {
		if name != c.key {
			k.names[ofKey{number, name}] = true
		}
	}
}

// mostNames is the most clash groups that a task names beside its key: the six
// times of a match.
const mostNames = 6

// consider takes an item into a pool if it is of use. It is of none when it is
// swapped out, fits no row in its looks, or adds nothing to those of its key that
// look alike: a form holds one item of a key (of few answers, any number), so the
// others stand in at most Forms − 1 other forms, and every item of the forms can clash with at most
// mostNames of those that share no clash group among themselves. With one more
// than that of them, there is always one to take the place of any item left
// out, so leaving it out changes no optimum.
func (p *problem) consider(pool *pool, g *bank.Group, m bank.Member, keys *keyed) error {
	if p.out[m.ID] {
		return nil
	}
	c, err := p.candidate(pool, g, m)
	if err != nil || c.id == "" {
		return err
	}
	key, standing := keys.of(&c), 1 // of one key in a form
	if p.offersFew[g.Skill] {
		standing = p.plan.Size()
	}
	if keys.apart[key] > p.forms*(standing+mostNames*p.plan.Size()) {
		return nil
	}
	keys.add(key, &c)
	pool.read = append(pool.read, c)
	return nil
}

// candidate works out how an item would be shown in the rows of its pool; one
// that fits none has no ID.
func (p *problem) candidate(pool *pool, g *bank.Group, m bank.Member) (candidate, error) {
	c := candidate{id: m.ID, key: "key:" + string(g.Skill) + ":" + m.Key, lastUse: weekNumber(g.LastWeek)}
	c.answer, c.few = p.answerQuota(g.Skill, m.Key), p.offersFew[g.Skill]
	if !c.few {
		c.clashes = []string{c.key}
	}
	var posed task.Task
	if m.Task != "" {
		var err error
		if posed, err = task.Parse(m.Task); err != nil {
			return c, words.Errorf("item %s of the bank: %w", m.ID, err)
		}
		for _, name := range posed.Clashes() {
			if !slices.Contains(c.clashes, name) {
				c.clashes = append(c.clashes, name)
			}
		}
	}
	c.looks, c.seconds = make([]task.Look, len(pool.fits)), make([]int, len(pool.fits))
	shown := false
	c.tells = posed != nil && len(p.plan.Diagnose) > 0
	var can []task.Look
	for i, f := range pool.fits {
		row := &p.plan.Rows[f.row]
		if can == nil && len(row.Looks) > 0 {
			can = looksOf(g, posed)
		}
		look := lookIn(row, g.Look, can, m.ID)
		if look != "" {
			c.looks[i], c.seconds[i], shown = look, shownFor(g, look), true
			c.tells = c.tells && tells(posed, look, p.plan.Diagnose)
		}
	}
	if !shown {
		c.id = ""
	}
	return c, nil
}

// looksOf are the looks that an item of a group can take: one by hand has only its own.
func looksOf(g *bank.Group, posed task.Task) []task.Look {
	if posed == nil {
		return []task.Look{g.Look}
	}
	return posed.Looks()
}

// lookIn is the look of an item in a row: the first of the row's looks that it can
// take, or where the row varies them one that the item's ID decides, whatever the seed.
// Without a wish it is the item's own; empty when it can take none.
func lookIn(row *plan.Row, own task.Look, can []task.Look, id string) task.Look {
	if len(row.Looks) == 0 {
		return own
	}
	var fit []task.Look
	for _, look := range row.Looks {
		switch {
		case !slices.Contains(can, look):
		case !row.Vary:
			return look
		default:
			fit = append(fit, look)
		}
	}
	if len(fit) == 0 {
		return ""
	}
	return fit[scatter(0, id)%uint64(len(fit))]
}
