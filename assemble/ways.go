package assemble

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
)

// way is how far a rule has to give.
type way struct {
	search.Way
	size float64 // of the step, measured against what the rule asks now
}

// fewerForms is how much larger a step it is to make fewer forms than to change what
// they hold: then a neighbour gets the same sheet.
const fewerForms = 1.0

// mayGive says that a plan can allow a rule to give: a pacing list has no rows, and a quiz that is
// kept, or sat, has its forms.
func (x *explaining) mayGive(r search.Rule) bool {
	o := x.p.options
	switch r.Kind {
	case search.Clash:
		return false
	case search.RowCount, search.Once:
		return !(r.Kind == search.RowCount && o.ofTerm) && len(o.sat) == 0 && len(o.Earlier.Spots) == 0
	case search.FixedItem:
		return len(o.sat) == 0
	}
	return !x.p.aboutAnswers(r)
}

// loosen finds how far a rule must give for an eased plan to be met; ok is false if that is not enough.
func (x *explaining) loosen(e eased, r search.Rule) (w way, ok bool, err error) {
	if r == resting {
		w.Way, err = x.fewerWeeks(e)
	} else {
		w.Way, err = x.otherNumber(e, r)
	}
	if err != nil || !w.Enough {
		return w, false, err
	}
	w.size = math.Abs(float64(w.To-w.From)) / math.Max(1, float64(w.From))
	if r.Kind == search.Once {
		w.size += fewerForms
	}
	return w, true, nil
}

// otherNumber finds the number of a rule nearest to its own with which an eased plan can be met, of those that
// a plan may hold.
func (x *explaining) otherNumber(e eased, r search.Rule) (search.Way, error) {
	m, err := x.model(e, true)
	if err != nil {
		return search.Way{}, err
	}
	w, err := search.Loosen(x.ctx, m, r, func(w search.Way, changed *search.Model) bool {
		size := changed.Size()
		if size < 1 || size > plan.MaxItems || !x.p.answersKnown(w) {
			return false
		}
		grade := x.gradeKept(e.and(w))
		return grade == "" || plan.MayName(grade)
	})
	if err == nil && w.Enough {
		w.Enough, err = x.possibleAsRead(e.and(w))
	}
	return w, err
}

// and is the eased plan with one more number changed.
func (e eased) and(w search.Way) eased {
	e.ways = append(slices.Clone(e.ways), w)
	return e
}

// fewerWeeks finds the largest number of rest weeks with which an eased plan can be met.
func (x *explaining) fewerWeeks(e eased) (search.Way, error) {
	w := search.Way{Rule: resting, From: x.p.plan.Rest}
	good, bad := 0, x.p.plan.Rest
	ok, err := x.possible(e.and(w))
	if !ok || err != nil {
		return w, err
	}
	for bad-good > 1 {
		w.To = (good + bad) / 2
		if ok, err = x.possible(e.and(w)); err != nil {
			return w, err
		}
		if ok {
			good = w.To
		} else {
			bad = w.To
		}
	}
	w.To, w.Enough = good, true
	return w, nil
}

// easiest is the rule of a clash for which the smallest step mends it, whatever else the plan asks; one that
// went before only if there is no other.
func (x *explaining) easiest(rules []search.Rule, before eased) (search.Rule, error) {
	left := slices.DeleteFunc(slices.Clone(rules), func(r search.Rule) bool { return slices.Contains(before.without, r) })
	if len(left) == 0 {
		return rules[0], nil
	}
	best, size := left[len(left)-1], math.Inf(1)
	for _, r := range left {
		if !x.mayGive(r) {
			continue
		}
		w, ok, err := x.loosen(eased{only: rules, without: restIn(before.without)}, r)
		if err != nil {
			return r, err
		}
		if ok && w.size < size {
			best, size = r, w.size
		}
	}
	return best, nil
}

// restIn is the rule of rest weeks, where it is among the rules.
func restIn(rules []search.Rule) []search.Rule {
	return slices.DeleteFunc(slices.Clone(rules), func(r search.Rule) bool { return r != resting })
}

// findWays finds for each clash the rules that mend it by giving way. With the first way of every clash
// together the plan can be met; each other way mends its clash beside the first ways of the others.
func (x *explaining) findWays() (err error) {
	all := true                           // have a way
	for i := 0; i < len(x.clashes); i++ { // there may come to be more
		c := x.clashes[i]
		if i > 0 {
			if c.gone, err = x.possible(x.beside(i)); err != nil {
				return err
			}
		}
		if c.gone {
			continue
		}
		if c.ways, err = x.waysOf(i); err != nil {
			return err
		}
		for _, look := range []func(int) error{x.behind, x.inTwo} {
			if len(c.ways) > 0 {
				break
			}
			if err = look(i); err != nil {
				return err
			}
		}
		all = all && len(c.ways) > 0
	}
	found := len(x.clashes)
	for i, c := range x.clashes[:found-1] { // what mends those behind a clash may mend it, too
		if c.gone || !all {
			continue
		}
		if c.gone, err = x.possible(x.beside(i)); err != nil {
			return err
		}
	}
	x.clashes = slices.DeleteFunc(x.clashes, func(c *clashing) bool { return c.gone })
	again := x.clashes[:len(x.clashes)-1] // found before the first ways of those behind them
	if len(x.clashes) < found {
		again = x.clashes // and where one went by the first ways of others, other ways may not mend it
	}
	for i, c := range again {
		if len(c.ways) == 0 {
			continue
		}
		others, err := x.waysOf(i)
		if err != nil {
			return err
		}
		c.ways = append(c.ways[:1], slices.DeleteFunc(others, func(w way) bool { return w.Rule == c.ways[0].Rule })...)
	}
	return nil
}

// behind looks at a clash that has no ways: with the others mended, rules may be in each other's way that were
// hidden behind them. If these have ways, they take its place; not if one of them gives way for another clash.
func (x *explaining) behind(i int) error {
	c := x.clashes[i]
	rules, err := x.conflict(x.beside(i))
	if errors.Is(err, search.ErrPossible) {
		return nil
	}
	if err != nil || slices.ContainsFunc(rules, func(r search.Rule) bool { return x.givesElsewhere(r, i) }) {
		return err
	}
	before := c.rules
	c.rules = rules
	if c.ways, err = x.waysOf(i); len(c.ways) == 0 {
		c.rules = before
	}
	return err
}

// inTwo lets the rule of a clash that has no ways give as far as would mend the clash by itself, in forms of items
// of their own. What is then still in
// the way, as no number of that rule leaves room for it, is a clash of its own if it has ways; else all stays as it was.
func (x *explaining) inTwo(i int) error {
	c := x.clashes[i]
	if !x.mayGive(c.gives) || x.givesElsewhere(c.gives, i) {
		return nil
	}
	alone, ok, err := x.loosen(eased{only: append(slices.Clone(c.rules), search.Rule{Kind: search.Once})}, c.gives)
	if !ok || err != nil {
		return err
	}
	c.ways = []way{alone}
	last := len(x.clashes)
	rules, err := x.conflict(x.beside(last))
	if err != nil {
		c.ways = nil
		if errors.Is(err, search.ErrPossible) {
			return nil
		}
		return err
	}
	left := &clashing{rules: rules}
	x.clashes = append(x.clashes, left)
	if left.gives, err = x.easiest(rules, eased{}); err == nil {
		left.ways, err = x.waysOf(last)
	}
	if len(left.ways) == 0 {
		c.ways, x.clashes = nil, x.clashes[:last]
	}
	return err
}

// waysOf are the ways that mend a clash beside the first ways of the others, the smallest first.
func (x *explaining) waysOf(i int) (ways []way, err error) {
	for _, r := range x.clashes[i].rules {
		if !x.mayGive(r) || x.givesElsewhere(r, i) {
			continue
		}
		w, ok, err := x.loosen(x.beside(i), r)
		if err != nil {
			return nil, err
		}
		if ok {
			ways = append(ways, w)
		}
	}
	slices.SortStableFunc(ways, func(a, b way) int { return cmp.Compare(a.size, b.size) })
	return ways, nil
}

// beside is the plan with the first ways of all clashes but one; of a clash without any the rule
// is left out.
func (x *explaining) beside(i int) (e eased) {
	for k, c := range x.clashes {
		switch {
		case k == i || c.gone:
		case len(c.ways) > 0:
			e.ways = append(e.ways, c.ways[0].Way)
		default:
			e.without = append(e.without, c.gives)
		}
	}
	return e
}

// givesElsewhere says that a rule gives way for another clash.
func (x *explaining) givesElsewhere(r search.Rule, i int) bool {
	return slices.ContainsFunc(x.clashes, func(c *clashing) bool {
		return c != x.clashes[i] && !c.gone && c.given() == r
	})
}
