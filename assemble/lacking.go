package assemble

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// fillSeed is the seed with which lacking items are made; it is the one that
// evenhand generate takes when none is given.
const fillSeed = 1

// leastMade is how many items of a kind are made on trial at least, as not all
// can be shown in every look.
const leastMade = 40

// mostBatches is how many kinds of items are tried before giving up.
const mostBatches = 12

// batch is items made for one wish, on trial.
type batch struct {
	wish  Generate // the first of the tasks, so many
	row   plan.Row
	tasks []task.Task
	pools []*pool // one a task
}

// findItems finds for each clash, in turn, items to make that mend it beside those for the clashes before
// it, and of all of them as few as will do. It makes them on trial and solves the plan with them, so what it
// says is certain; where making items doesn't help, it says nothing.
func (x *explaining) findItems() error {
	e, upTo := eased{}, make([]int, len(x.clashes)) // so many batches for the clashes up to each; −1 if none help
	for i, c := range x.clashes {
		upTo[i] = -1
		for _, later := range x.clashes[i+1:] {
			e.without = append(e.without, later.given())
		}
		more, err := x.relieve(e)
		if err != nil {
			return err
		}
		e.without = e.without[:len(e.without)-len(x.clashes[i+1:])]
		if more == nil {
			e.without = append(e.without, c.given())
			continue
		}
		upTo[i], e.batches = len(more), more
	}
	if _, err := x.possible(e); err != nil { // is it with the items that were read?
		return err
	}
	for i := range e.batches {
		var err error
		if e.batches, err = x.fewest(e, i); err != nil {
			return err
		}
	}
	x.makes = wishesOf(e.batches)
	before := 0
	for i, c := range x.clashes {
		if upTo[i] < 0 {
			continue
		}
		if c.makes = wishesOf(e.batches[before:upTo[i]]); len(c.makes) == 0 {
			c.makes = wishesOf(e.batches[:upTo[i]]) // those for the clashes before it do
		}
		before = upTo[i]
	}
	return nil
}

// given is the rule that gives way for a clash.
func (c *clashing) given() search.Rule {
	if len(c.ways) > 0 {
		return c.ways[0].Rule
	}
	return c.gives
}

// wishesOf are the batches as items to make.
func wishesOf(batches []batch) (wishes []Generate) {
	for _, b := range batches {
		if b.wish.Count > 0 {
			wishes = append(wishes, b.wish)
		}
	}
	return wishes
}

// relieve adds to the batches of an eased plan until it can be met; nil if that doesn't help.
func (x *explaining) relieve(e eased) ([]batch, error) {
	rules, err := x.conflict(e)
	for range mostBatches {
		if errors.Is(err, search.ErrPossible) {
			return e.batches, nil
		}
		if err != nil {
			return nil, err
		}
		var b *batch
		if b, rules, err = x.relief(e, rules); b == nil {
			return nil, err
		}
		e.batches = append(slices.Clone(e.batches), *b)
	}
	return nil, nil
}

// relief finds a batch that takes the rules out of each other's way, and the
// rules that are in the way then.
func (x *explaining) relief(e eased, rules []search.Rule) (*batch, []search.Rule, error) {
	for i, row := range x.p.plan.Rows {
		if !relevant(rules, i) {
			continue
		}
		for _, where := range x.p.wishes(row, rules) {
			b, err := x.p.make(row, where, e.batches)
			if err != nil {
				return nil, nil, err
			}
			with := e
			with.batches = append(slices.Clone(e.batches), b)
			left, err := x.conflict(with)
			switch {
			case err != nil && !errors.Is(err, search.ErrPossible):
				return nil, nil, err
			case !slices.Equal(left, rules):
				return &b, left, err
			}
		}
	}
	return nil, nil, nil
}

// relevant says whether items for a row could help: those of the rows in the
// conflict, or of any row when it is about none.
func relevant(rules []search.Rule, row int) bool {
	none := true
	for _, r := range rules {
		if r.Kind == search.RowCount {
			if r.Index == row {
				return true
			}
			none = false
		}
	}
	return none
}

// wishes are conditions for new items of a row, those first that help with the
// quotas in the conflict too.
func (p *problem) wishes(row plan.Row, rules []search.Rule) []standards.Where {
	where, wanted := slices.Clone(row.Where), []func(standards.Difficulty) bool{}
	for _, r := range rules {
		if r.Kind != search.AtLeast && r.Kind != search.AtMost || p.aboutAnswers(r) {
			continue
		}
		if at := r.Index - len(p.plan.Bands); at >= 0 {
			where = append(where, turned(p.plan.Quotas[at].Where, r.Kind)...)
			continue
		}
		band := p.plan.Bands[r.Index].Band
		wanted = append(wanted, func(d standards.Difficulty) bool {
			return (d.Band() == band) == (r.Kind == search.AtLeast)
		})
	}
	if c, ok := p.lookCondition(row, where); ok {
		where = append(where, c)
	}
	list := []standards.Where{}
	if len(wanted) > 0 {
		if c, ok := p.bandCondition(row.Skill, where, wanted); ok {
			list = append(list, append(slices.Clone(where), c))
		}
	}
	list = append(list, where)
	if len(where) > len(row.Where) {
		list = append(list, row.Where)
	}
	return list
}

// turned is the conditions of a quota, or for an upper bound the opposite, where
// one condition can say it.
func turned(where standards.Where, kind search.Kind) standards.Where {
	if kind == search.AtLeast {
		return where
	}
	if len(where) != 1 {
		return nil
	}
	opposite := map[string]string{"=": "!=", "!=": "=", "<": ">=", ">=": "<", ">": "<=", "<=": ">"}
	c := where[0]
	c.Op = opposite[c.Op]
	return standards.Where{c}
}

// sample makes so many items of a skill, to be looked at only; none where there are none.
func (p *problem) sample(skill standards.SkillID, where standards.Where, count int) []task.Task {
	key := fmt.Sprint(skill, where, count)
	tasks, ok := p.samples[key]
	if !ok {
		made, err := generate.Make(generate.Request{Skill: skill, Where: where, Count: count, Seed: fillSeed, Stop: p.stop})
		if err == nil {
			tasks = made.Tasks
		}
		p.samples[key] = tasks
	}
	return tasks
}

// bandSample is how many items are looked at to see which trait puts items into
// a band.
const bandSample = 200

// bandCondition finds a trait whose value puts items of a skill into the wanted
// bands, so that generate can be asked for them.
func (p *problem) bandCondition(skill standards.SkillID, where standards.Where, wanted []func(standards.Difficulty) bool) (standards.Condition, bool) {
	tasks := p.sample(skill, where, bandSample)
	right := func(ts task.Traits) bool {
		return !slices.ContainsFunc(wanted, func(w func(standards.Difficulty) bool) bool {
			return !w(p.learnt.Predict(skill, ts).For(skill, standards.Difficulty(p.ability)))
		})
	}
	for _, asked := range tasks {
		traits := asked.Traits()
		if !right(traits) {
			continue
		}
		for _, t := range task.AllTraits() {
			c := standards.Condition{Trait: t, Op: "=", Value: traits.Get(t)}
			wrong := func(other task.Task) bool { return c.Holds(other.Traits()) && !right(other.Traits()) }
			if c.Value != "" && balanced(t) && !slices.ContainsFunc(tasks, wrong) {
				return c, true
			}
		}
	}
	return standards.Condition{}, false
}

// lookSample is how many items are looked at to see how large their numbers may be
// for a look: of those within 1,000 about one in a hundred fits a hundreds chart.
const lookSample = 2000

// lookCondition finds up to which largest number all items of a row can be shown as
// it asks, so that generate can be asked for them; none where any number will do.
func (p *problem) lookCondition(row plan.Row, where standards.Where) (standards.Condition, bool) {
	if len(row.Looks) == 0 {
		return standards.Condition{}, false
	}
	fits, tooLarge := -1, math.MaxInt
	for _, posed := range p.sample(row.Skill, where, lookSample) {
		n, ok := posed.Traits().Number(task.Largest)
		if !ok {
			return standards.Condition{}, false
		}
		if slices.ContainsFunc(row.Looks, func(l task.Look) bool { return slices.Contains(posed.Looks(), l) }) {
			fits = max(fits, n)
		} else {
			tooLarge = min(tooLarge, n)
		}
	}
	if fits < 0 || tooLarge == math.MaxInt || fits >= tooLarge {
		return standards.Condition{}, false
	}
	return standards.Condition{Trait: task.Largest, Op: "<=", Value: fmt.Sprint(fits)}, true
}

// make makes as many items as the row could take, none that the bank or an
// earlier batch has; none at all when no such item exists.
func (p *problem) make(row plan.Row, where standards.Where, earlier []batch) (batch, error) {
	b := batch{row: row, wish: Generate{Skill: row.Skill, Where: where, Count: max(leastMade, p.forms*p.plan.Size()), Seed: fillSeed}}
	var err error
	if b.tasks, err = p.lacking(b.wish, earlier); err != nil {
		return b, err
	}
	for _, asked := range b.tasks {
		item := bank.NewItem(asked, "", bank.Origin{})
		item.Predicted = p.learnt.PredictItem(item)
		pool, err := p.alone(item, 0)
		if err != nil {
			return b, err
		}
		pool.balances = nil // no matter here
		b.pools = append(b.pools, pool)
	}
	b.wish.Count = len(b.pools)
	return b, nil
}

// lacking makes items that neither the bank nor an earlier batch has; none where no such item exists.
func (p *problem) lacking(wish Generate, earlier []batch) ([]task.Task, error) {
	key, made := wish.Command(), map[string]bool{}
	for _, b := range earlier {
		if b.wish.Skill != wish.Skill {
			continue
		}
		key += "\n" + b.wish.Command()
		for _, asked := range b.tasks[:b.wish.Count] {
			made[asked.Fingerprint()] = true
		}
	}
	if tasks, ok := p.samples[key]; ok {
		return tasks, nil
	}
	var failed error
	result, err := generate.Make(generate.Request{
		Skill: wish.Skill, Where: wish.Where, Count: wish.Count, Seed: wish.Seed,
		Taken: func(fingerprint string) bool {
			_, has, err := p.bank.Has(fingerprint)
			failed = errors.Join(failed, err)
			return has || made[fingerprint]
		},
		Stop: p.stop,
	})
	if errors.Is(err, generate.ErrStopped) {
		return nil, search.ErrNoTime
	}
	if failed != nil {
		return nil, failed
	}
	p.samples[key] = result.Tasks
	return result.Tasks, nil
}

// with is the model with the items of some batches beside those of the bank.
func (p *problem) with(batches []batch, standIns bool) *built {
	q := *p
	q.pools = slices.Clone(p.pools)
	for _, b := range batches {
		q.pools = append(q.pools, b.pools[:b.wish.Count]...)
	}
	return q.build(standIns)
}

// fewest gives the batches with the smallest count of one of them with which an eased plan is possible;
// with all of it, it is. The first items of a larger count are those of a smaller. Those left out may come in
// later batches of the skill then: these are made anew, and if they don't do, the count stays.
func (x *explaining) fewest(e eased, i int) ([]batch, error) {
	e.batches = slices.Clone(e.batches)
	before, good := slices.Clone(e.batches), e.batches[i].wish.Count
	for bad := -1; good-bad > 1; {
		mid := (bad + good) / 2
		e.batches[i].wish.Count = mid
		ok, err := x.possible(e)
		if err != nil {
			return nil, err
		}
		if ok {
			good = mid
		} else {
			bad = mid
		}
	}
	e.batches[i].wish.Count = good
	anew := false
	for k := i + 1; k < len(e.batches); k++ {
		if b := e.batches[k]; b.wish.Skill == e.batches[i].wish.Skill {
			var err error
			if e.batches[k], err = x.p.make(b.row, b.wish.Where, e.batches[:k]); err != nil {
				return nil, err
			}
			anew = true
		}
	}
	if !anew {
		return e.batches, nil
	}
	ok, err := x.possible(e)
	if err != nil || !ok {
		return before, err
	}
	return e.batches, nil
}
