package assemble

import (
	"context"
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
	wish  Generate
	tasks []task.Task
	pools []*pool // one a task
}

// lacking finds items to make that would make the plan possible, as few as will
// do. It makes them on trial and solves the plan with them, so what it says is
// certain; it says nothing when making items doesn't help.
func (p *problem) lacking(ctx context.Context, rules []search.Rule) ([]Generate, error) {
	var batches []batch
	var err error
	if p.learnt, err = p.bank.Table(); err != nil {
		return nil, err
	}
	for len(rules) > 0 {
		b, left, err := p.relief(ctx, batches, rules)
		if err != nil || b == nil || len(batches) == mostBatches {
			return nil, err
		}
		batches, rules = append(batches, *b), left
	}
	var wishes []Generate
	for i := range batches {
		if err := p.fewest(ctx, batches, i); err != nil {
			return nil, err
		}
		if batches[i].wish.Count > 0 {
			wishes = append(wishes, batches[i].wish)
		}
	}
	return wishes, nil
}

// relief finds a batch that takes the rules out of each other's way, and the
// rules that are in the way then.
func (p *problem) relief(ctx context.Context, batches []batch, rules []search.Rule) (*batch, []search.Rule, error) {
	for i, row := range p.plan.Rows {
		if !relevant(rules, i) {
			continue
		}
		for _, where := range p.wishes(row, rules) {
			b, err := p.make(row, where, batches)
			if err != nil {
				return nil, nil, err
			}
			left, err := search.Conflict(ctx, &p.with(append(batches, b)).Model, search.Options{})
			switch {
			case errors.Is(err, search.ErrPossible):
				return &b, nil, nil
			case err != nil:
				return nil, nil, err
			case !slices.Equal(left, rules):
				return &b, left, nil
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

// bandSample is how many items are looked at to see which trait puts items into
// a band.
const bandSample = 200

// bandCondition finds a trait whose value puts items of a skill into the wanted
// bands, so that generate can be asked for them.
func (p *problem) bandCondition(skill standards.SkillID, where standards.Where, wanted []func(standards.Difficulty) bool) (standards.Condition, bool) {
	made, err := generate.Make(generate.Request{Skill: skill, Where: where, Count: bandSample, Seed: fillSeed, Stop: p.stop})
	if err != nil {
		return standards.Condition{}, false
	}
	right := func(ts task.Traits) bool {
		return !slices.ContainsFunc(wanted, func(w func(standards.Difficulty) bool) bool {
			return !w(p.learnt.Predict(skill, ts).For(skill, standards.Difficulty(p.ability)))
		})
	}
	for _, asked := range made.Tasks {
		traits := asked.Traits()
		if !right(traits) {
			continue
		}
		for _, t := range task.AllTraits() {
			c := standards.Condition{Trait: t, Op: "=", Value: traits.Get(t)}
			wrong := func(other task.Task) bool { return c.Holds(other.Traits()) && !right(other.Traits()) }
			if c.Value != "" && balanced(t) && !slices.ContainsFunc(made.Tasks, wrong) {
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
	made, err := generate.Make(generate.Request{Skill: row.Skill, Where: where, Count: lookSample, Seed: fillSeed, Stop: p.stop})
	if err != nil {
		return standards.Condition{}, false
	}
	fits, tooLarge := -1, math.MaxInt
	for _, posed := range made.Tasks {
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
	made := map[string]bool{}
	for _, b := range earlier {
		for _, asked := range b.tasks {
			made[asked.Fingerprint()] = true
		}
	}
	b := batch{wish: Generate{Skill: row.Skill, Where: where, Count: max(leastMade, p.forms*p.plan.Size()), Seed: fillSeed}}
	var failed error
	result, err := generate.Make(generate.Request{
		Skill: row.Skill, Where: where, Count: b.wish.Count, Seed: fillSeed,
		Taken: func(fingerprint string) bool {
			_, has, err := p.bank.Has(fingerprint)
			failed = errors.Join(failed, err)
			return has || made[fingerprint]
		},
		Stop: p.stop,
	})
	if errors.Is(err, generate.ErrStopped) {
		return b, search.ErrNoTime
	}
	if failed != nil {
		return b, failed
	}
	if err == nil {
		b.tasks = result.Tasks
	}
	for _, asked := range b.tasks {
		item := bank.NewItem(asked, "", bank.Origin{})
		item.Predicted = p.learnt.Predict(item.Skill, item.Traits)
		pool, err := p.alone(item, 0)
		if err != nil {
			return b, err
		}
		b.pools = append(b.pools, pool)
	}
	b.wish.Count = len(b.pools)
	return b, nil
}

// with is the model with the items of some batches beside those of the bank.
func (p *problem) with(batches []batch) *built {
	q := *p
	q.pools = slices.Clone(p.pools)
	for _, b := range batches {
		q.pools = append(q.pools, b.pools[:b.wish.Count]...)
	}
	return q.build(true)
}

// fewest finds the smallest count of one batch with which the plan is possible;
// with all of it, it is. The first items of a larger count are those of a smaller.
func (p *problem) fewest(ctx context.Context, batches []batch, i int) error {
	bad, good := -1, batches[i].wish.Count
	for good-bad > 1 {
		mid := (bad + good) / 2
		batches[i].wish.Count = mid
		ok, err := possible(ctx, p.with(batches))
		if err != nil {
			return err
		}
		if ok {
			good = mid
		} else {
			bad = mid
		}
	}
	batches[i].wish.Count = good
	return nil
}
