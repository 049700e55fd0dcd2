package search

import (
	"context"
	"slices"
)

// Way is how far one rule has to give for a model to become possible while
// all the others stay: from its present number to another. For a clash, a
// set of Same or a fixed item, from 1 to 0 means that the rule has to go. Enough is false if
// not even that would do, as something else is in the way too.
type Way struct {
	Rule
	From, To int
	Enough   bool
}

// Loosen finds the smallest loosening of one rule that makes the model
// possible: the nearest count of a row (fewer before more), the highest lower
// bound or the lowest upper bound of a quota, the fewest seconds, the largest
// number of forms (Once), the nearest number of shared items. Of the ways only those are
// taken that may is true for, with the model that they lead to; nil takes all.
func Loosen(ctx context.Context, m *Model, rule Rule, may func(Way, *Model) bool) (Way, error) {
	l := &loosening{ctx: ctx, m: m, rule: rule, may: may}
	switch rule.Kind {
	case RowCount:
		return l.nearest(m.Rows[rule.Index].Count, m.Rows[rule.Index].Count+m.Size()+m.asked())
	case AtLeast:
		return l.bisect(m.Quotas[rule.Index].AtLeast, 0)
	case AtMost:
		return l.bisect(m.Quotas[rule.Index].AtMost, max(m.Size(), m.Quotas[rule.Index].AtMost))
	case Minutes:
		return l.bisect(m.MaxSeconds, m.mostSeconds())
	case Once:
		return l.bisect(m.Forms, 1)
	case SharedCount:
		return l.nearest(m.Shared, m.Size()+m.asked())
	}
	return l.bisect(1, 0)
}

// asked is how many items rules other than the rows' counts can ask for in a form.
func (m *Model) asked() int {
	n := len(m.Fixed) + m.Shared
	for _, q := range m.Quotas {
		n += max(0, q.AtLeast)
	}
	return n
}

// mostSeconds is a limit that no form can break.
func (m *Model) mostSeconds() int {
	slowest := 1
	for i := range m.Items {
		for _, f := range m.Items[i].Fits {
			slowest = max(slowest, f.Seconds)
		}
	}
	return max(m.MaxSeconds, slowest*(m.Size()+m.asked()))
}

type loosening struct {
	ctx  context.Context
	m    *Model
	rule Rule
	may  func(Way, *Model) bool
}

// possible says whether another number in the rule will do.
func (l *loosening) possible(from, to int) (bool, error) {
	changed := l.m.with(l.rule, to)
	if l.may != nil && !l.may(Way{l.rule, from, to, true}, changed) {
		return false, nil
	}
	return Possible(l.ctx, changed)
}

// Changed gives the model in which rules have given so far.
func Changed(m *Model, ways ...Way) *Model {
	for _, w := range ways {
		m = m.with(w.Rule, w.To)
	}
	return m
}

// with is the model with another number in a rule.
func (m *Model) with(rule Rule, number int) *Model {
	c := *m
	i := rule.Index
	switch rule.Kind {
	case RowCount:
		c.Rows = slices.Clone(c.Rows)
		c.Rows[i].Count = number
		c.Quotas = slices.Clone(c.Quotas)
		for k := range c.Quotas {
			c.Quotas[k].follow(c.Rows)
		}
	case AtLeast:
		c.Quotas = slices.Clone(c.Quotas)
		c.Quotas[i].AtLeast = number
	case AtMost:
		c.Quotas = slices.Clone(c.Quotas)
		c.Quotas[i].AtMost = number
	case Minutes:
		c.MaxSeconds = number
	case Once:
		c.Forms, c.Fixed = number, slices.Clone(c.Fixed)
		for k := range c.Fixed {
			c.Fixed[k].free = c.Fixed[k].free || c.Fixed[k].Form >= number
		}
	case SharedCount:
		c.Shared = number
	case Clash:
		c.Items = withoutClashes(c.Items)
	case SameCount:
		c.Same = slices.Clone(c.Same)
		c.Same[i].free = true
	case FixedItem:
		c.Fixed = slices.Clone(c.Fixed)
		c.Fixed[i].free = true
	}
	return &c
}

// nearest tries the numbers around from, as a count can be wrong either way,
// if the model is possible without the rule at all.
func (l *loosening) nearest(from, most int) (Way, error) {
	others := slices.DeleteFunc(l.m.rules(), func(r Rule) bool { return r == l.rule })
	if ok, err := Possible(l.ctx, l.m.only(others)); !ok || err != nil {
		return Way{l.rule, from, from, false}, err
	}
	for d := 1; d <= max(from, most-from); d++ {
		for _, to := range []int{from - d, from + d} {
			if to < 0 || to > most {
				continue
			}
			if ok, err := l.possible(from, to); ok || err != nil {
				return Way{l.rule, from, to, ok}, err
			}
		}
	}
	return Way{l.rule, from, from, false}, nil
}

// bisect finds the number nearest to from with which the model is possible,
// knowing that moving on toward to only makes it easier.
func (l *loosening) bisect(from, to int) (Way, error) {
	ok, err := l.possible(from, to)
	if !ok || err != nil {
		return Way{l.rule, from, from, false}, err
	}
	bad, good := from, to
	for bad-good > 1 || good-bad > 1 {
		mid := (bad + good) / 2
		if ok, err = l.possible(from, mid); err != nil {
			return Way{}, err
		}
		if ok {
			good = mid
		} else {
			bad = mid
		}
	}
	return Way{l.rule, from, good, true}, nil
}
