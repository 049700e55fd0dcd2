package assemble

import (
	"context"
	"errors"
	"math"
	"slices"

	"evenhand/assemble/search"
	"evenhand/standards/task"
)

// explaining finds out why no quiz keeps the rules of a plan, and what would help.
type explaining struct {
	ctx     context.Context
	p       *problem
	rested  map[int]*problem // the plan with other weeks of rest, by their number
	clashes []*clashing
	makes   []Generate // items that mend all that items mend
	shallow bool       // a plan could be met by items that were not read, but not by those that were
}

// clashing is a clash on its way into words.
type clashing struct {
	rules []search.Rule
	gives search.Rule // the one that is left out while others are looked at
	ways  []way       // the smallest first
	gone  bool        // what mends the others mends it, too
	makes []Generate  // items that mend it; none if making items doesn't help
}

// restWeeks is the rule that items rest. The model knows none: items that rest are not in it.
const restWeeks search.Kind = -1

var resting = search.Rule{Kind: restWeeks}

// eased is a plan some of whose rules gave way.
type eased struct {
	only    []search.Rule // just these of its rules; nil for all
	without []search.Rule // these are left out
	ways    []search.Way  // these ask for another number
	batches []batch       // items beside those of the bank
}

// explain finds out why the plan is impossible and what would help. If the time
// runs out on the way, it says what it has found so far.
func (p *problem) explain(ctx context.Context) error {
	var err error
	if p.learnt, err = p.bank.Table(); err != nil {
		return err
	}
	p.stop, p.samples = func() bool { return ctx.Err() != nil }, map[string][]task.Task{}
	for {
		x := &explaining{ctx: ctx, p: p, rested: map[int]*problem{p.plan.Rest: p}}
		err := x.look()
		cut := errors.Is(err, search.ErrNoTime) || errors.Is(err, context.DeadlineExceeded) || errors.Is(err, context.Canceled)
		switch {
		case err != nil && !cut:
			return err
		case cut || !x.shallow:
			return x.inWords(cut)
		}
		if _, err := p.fillAll(4 * p.limit); err != nil {
			return err
		}
	}
}

// look finds the clashes, one after the other, then what mends each.
func (x *explaining) look() error {
	if err := x.findClashes(); err != nil {
		return err
	}
	if err := x.findWays(); err != nil {
		return err
	}
	return x.findItems()
}

// findClashes finds clashes until the plan could be met without one rule of each. A clash that items mend is taken
// for mended by them at first, so that what is in the way behind it is found, too; for the others the
// rule goes for which the smallest step mends its clash.
func (x *explaining) findClashes() error {
	var filled, without eased
	for {
		c, err := x.nextClash(filled, without)
		if errors.Is(err, search.ErrPossible) {
			break
		}
		if err != nil {
			return err
		}
		without.without = append(without.without, c.gives)
		more, err := x.relieve(eased{only: c.rules, without: filled.without, batches: filled.batches})
		if err != nil {
			return err
		}
		if more != nil {
			filled.batches = more
		} else {
			filled.without = append(filled.without, c.gives)
		}
	}
	for {
		c, err := x.nextClash(without, without)
		if errors.Is(err, search.ErrPossible) {
			return nil
		}
		if err != nil {
			return err
		}
		without.without = append(without.without, c.gives)
	}
}

// nextClash finds a clash of an eased plan and the rule of it that goes, none of those that went before.
func (x *explaining) nextClash(e, before eased) (*clashing, error) {
	rules, err := x.conflict(e)
	if err != nil {
		return nil, err
	}
	c := &clashing{rules: rules}
	if c.gives, err = x.easiest(rules, before); err != nil {
		x.clashes = append(x.clashes, c)
		return nil, err
	}
	if slices.Contains(before.without, c.gives) {
		return nil, search.ErrPossible // those before it mend it
	}
	x.clashes = append(x.clashes, c)
	return c, nil
}

// conflict is a smallest set of rules that can't be kept together in an eased plan.
func (x *explaining) conflict(e eased) ([]search.Rule, error) {
	m, err := x.model(e, true)
	if err != nil {
		return nil, err
	}
	rules, err := search.Conflict(x.ctx, m, search.Options{})
	if err != nil || x.weeksIn(e) == 0 || slices.Max(x.p.resting) == 0 {
		return rules, err
	}
	without, err := x.model(eased{only: rules, without: []search.Rule{resting}, batches: e.batches}, true)
	if err != nil {
		return nil, err
	}
	ok, err := search.Possible(x.ctx, without)
	if ok {
		rules = append(rules, resting)
	}
	return rules, err
}

// weeksIn is how many weeks items rest in an eased plan.
func (x *explaining) weeksIn(e eased) int {
	if slices.Contains(e.without, resting) {
		return 0
	}
	for _, w := range e.ways {
		if w.Rule == resting {
			return w.To
		}
	}
	return x.p.plan.Rest
}

// model is an eased plan in numbers. With stand-ins nothing is possible that this is not; without, all is
// possible that this is.
func (x *explaining) model(e eased, standIns bool) (*search.Model, error) {
	p, err := x.restedFor(x.weeksIn(e))
	if err != nil {
		return nil, err
	}
	m := &p.with(e.batches, standIns).Model
	if e.only != nil {
		m = search.Only(m, e.only)
	}
	return search.Changed(search.Without(m, e.without), e.ways...), x.ctx.Err()
}

// restedFor is the plan with another number of rest weeks, read as fully as it is itself.
func (x *explaining) restedFor(weeks int) (*problem, error) {
	if q, ok := x.rested[weeks]; ok {
		return q, nil
	}
	plan := x.p.plan
	plan.Rest = weeks
	q, err := newProblem(x.p.bank, plan, x.p.options)
	if err != nil {
		return nil, err
	}
	limit := x.p.limit
	if !x.p.truncated() {
		limit = math.MaxInt32
	}
	_, err = q.fillAll(limit)
	x.rested[weeks] = q
	return q, err
}

// possible says whether an eased plan can be met by the items that were read.
func (x *explaining) possible(e eased) (bool, error) {
	m, err := x.model(e, true)
	if err != nil {
		return false, err
	}
	ok, err := search.Possible(x.ctx, m)
	if !ok || err != nil {
		return false, err
	}
	return x.possibleAsRead(e)
}

// possibleAsRead is possible for a plan that can be met with stand-ins.
func (x *explaining) possibleAsRead(e eased) (bool, error) {
	if p, err := x.restedFor(x.weeksIn(e)); err != nil || !p.truncated() {
		return err == nil, err
	}
	m, err := x.model(e, false)
	if err != nil {
		return false, err
	}
	ok, err := search.Possible(x.ctx, m)
	x.shallow = x.shallow || err == nil && !ok
	return ok, err
}
