package assemble

import (
	"fmt"
	"maps"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// problem is a plan on its way to a quiz: what the bank offers for it, sorted and
// read as far as needed, and the model in numbers.
type problem struct {
	bank        *bank.Bank
	plan        plan.Plan
	options     Options
	forms       int
	seed        uint64
	awakeBefore string          // an item last used before this week is rested
	out         map[string]bool // IDs that stay out of the pools: swapped out, used by other weeks, or put in by themselves
	kept        []kept

	offered   *bank.Portions // that the pools' groups are of
	pools     []*pool
	limit     int                        // up to which each was read
	learnt    bank.Table                 // by which the bank will predict items made on trial
	stop      func() bool                // asked while items are made on trial
	samples   map[string][]task.Task     // of items that can be made
	ability   int                        // of the typical pupil, in thousandths of a logit
	offersFew map[standards.SkillID]bool // skills whose items offer the same few answers
	answers   []answer                   // that a form may hold too often
	resting   []int                      // for each row, how many items fit but rest
	sizes     sizes                      // that the plan asks for
	balances  []string
	balanceOf map[balance]int
}

// kept is an item that must stand in a form.
type kept struct {
	id       string
	name     string // as "A3"
	pool     *pool  // of its own
	form     int    // or search.EveryForm
	lastWeek string // of its last use, but for the week of the quiz
	row      int
}

// newProblem checks what was asked and reads the index of the bank.
func newProblem(b *bank.Bank, asked plan.Plan, o Options) (*problem, error) {
	p := &problem{
		bank: b, plan: asked, options: o, forms: asked.Forms, seed: o.Seed, out: map[string]bool{},
		resting: make([]int, len(asked.Rows)), balanceOf: map[balance]int{},
		sizes: sizesIn(asked), ability: abilityFor(asked, o), answers: answersOf(asked), offersFew: offersFewIn(asked),
	}
	if o.Forms != 0 {
		p.forms = o.Forms
	}
	if p.forms < 1 || p.forms > plan.MaxForms {
		return nil, words.Errorf("%d forms are asked for; a quiz has 1 to %d", p.forms, plan.MaxForms)
	}
	if asked.Size() < 1 || asked.Size() > plan.MaxItems {
		return nil, words.Errorf("the plan asks for %d items in a form; a form holds 1 to %d", asked.Size(), plan.MaxItems)
	}
	if o.Week == "" && asked.Rest > 0 {
		return nil, words.Errorf("the plan rests items for %d weeks, so the quiz needs its week, such as 2026-W48", asked.Rest)
	}
	if o.Week != "" {
		week, err := plan.ParseWeek(o.Week)
		if err != nil {
			return nil, err
		}
		p.awakeBefore = week.Add(-asked.Rest).String()
	}
	maps.Copy(p.out, o.out)
	maps.Copy(p.out, o.Without)
	if err := p.takeEarlier(o); err != nil {
		return nil, err
	}
	if err := p.takeSat(o); err != nil {
		return nil, err
	}
	if err := p.gather(); err != nil {
		return nil, err
	}
	return p, p.takeUsed(o)
}

// takeUsed gives each item that earlier weeks of the term used a pool of its own,
// as the bank doesn't know of these uses yet.
func (p *problem) takeUsed(o Options) error {
	for _, id := range slices.Sorted(maps.Keys(o.extra)) {
		if p.out[id] {
			continue
		}
		item, uses, _, err := p.usedItem(id, o.Week)
		if err != nil {
			return err
		}
		own, err := p.alone(item, uses+o.extra[id])
		if err != nil {
			return err
		}
		p.out[id] = true
		if own.read[0].id != "" {
			p.pools = append(p.pools, own)
		}
	}
	return nil
}

// fillAll reads up to limit items of every pool and says whether those are all
// that could be of use.
func (p *problem) fillAll(limit int) (all bool, err error) {
	p.limit = limit
	var short []*pool
	for _, own := range p.pools {
		if own.truncated {
			short = append(short, own)
		}
	}
	if err := p.fill(short, limit); err != nil {
		return false, err
	}
	return !p.truncated(), nil
}

// truncated says that the bank has more that might be of use than was read.
func (p *problem) truncated() bool {
	return !p.offered.Whole() || slices.ContainsFunc(p.pools, func(own *pool) bool { return own.truncated })
}

// built is a model and the items behind its numbers.
type built struct {
	search.Model
	items []candidate
	pools []*pool // of the items
}

// build makes the model of the items read. With standIns, each pool that was
// not read to its end gets as many items without clashes as the quiz could take
// from it: whatever the unread items are, no quiz is better than the best of
// this model.
func (p *problem) build(standIns bool) *built {
	m := &built{Model: search.Model{
		Forms: p.forms, Balances: p.balances, MaxSeconds: 60 * p.plan.Minutes,
		ShareRight: p.plan.ShareRight, Shared: p.plan.Shared,
	}}
	for i, row := range p.plan.Rows {
		m.Rows = append(m.Rows, search.Row{Name: rowName(i, row), Count: row.Count})
	}
	for _, b := range p.plan.Bands {
		m.Quotas = append(m.Quotas, search.Quota{Name: b.Name(), AtLeast: b.AtLeast, AtMost: b.AtMost})
	}
	for _, q := range p.plan.Quotas {
		m.Quotas = append(m.Quotas, search.Quota{Name: q.Name(), AtLeast: q.AtLeast, AtMost: q.AtMost})
	}
	m.Quotas = append(m.Quotas, p.answerQuotas()...)
	for _, c := range p.plan.Same {
		m.Same = append(m.Same, search.Same{Name: "items with " + standards.Where{c}.String()})
	}
	all := len(p.kept)
	for _, pool := range p.pools {
		all += len(pool.read)
	}
	m.Items, m.items, m.pools = make([]search.Item, 0, all), make([]candidate, 0, all), make([]*pool, 0, all)
	clashes := make(map[string]int, 2*all)
	answers := map[string]int{}
	for _, k := range p.kept {
		m.Fixed = append(m.Fixed, search.Fixed{Item: len(m.Items), Form: k.form, Row: k.row})
		p.add(m, k.pool, k.pool.read[0], clashes, answers)
	}
	for _, pool := range p.pools {
		for _, c := range pool.read {
			p.add(m, pool, c, clashes, answers)
		}
		if standIns && pool.truncated {
			for range min(pool.size-len(pool.read), p.forms*p.plan.Size()) {
				p.add(m, pool, standIn(pool), clashes, answers)
			}
		}
	}
	return m
}

// standIn is an item that fits wherever one of the pool may and clashes with none.
func standIn(pool *pool) candidate {
	c := candidate{answer: -1}
	for _, f := range pool.fits {
		c.looks, c.seconds = append(c.looks, "any"), append(c.seconds, f.seconds)
	}
	return c
}

// add puts an item into the model.
func (p *problem) add(m *built, pool *pool, c candidate, clashes, answers map[string]int) {
	item := search.Item{
		Name: c.id, Points: expected(pool.difficulty), Uses: pool.uses, LastUse: c.lastUse,
		Quotas: pool.quotas, Same: pool.same, Balances: pool.balances,
	}
	if c.answer >= 0 {
		item.Quotas = append(slices.Clone(item.Quotas), c.answer)
	}
	if c.few {
		item.Answer = numbered(answers, c.key) + 1
	}
	item.Fits = make([]search.Fit, 0, len(pool.fits))
	for i, f := range pool.fits {
		if c.looks[i] != "" {
			item.Fits = append(item.Fits, search.Fit{Row: f.row, Seconds: c.seconds[i]})
		}
	}
	item.Clashes = make([]int, len(c.clashes))
	for i, name := range c.clashes {
		item.Clashes[i] = numbered(clashes, name)
	}
	m.Items = append(m.Items, item)
	m.items, m.pools = append(m.items, c), append(m.pools, pool)
}

// numbered is the number of a name, the next one when it is new.
func numbered(names map[string]int, name string) int {
	n, ok := names[name]
	if !ok {
		n = len(names)
		names[name] = n
	}
	return n
}

// rowName names a row of the plan by its place and what it asks for.
func rowName(i int, row plan.Row) string { return fmt.Sprintf("row %d (%s)", i+1, row.Name()) }
