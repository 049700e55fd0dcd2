package search

import (
	"context"
	"errors"
	"slices"
)

// Kind is a kind of rule.
type Kind int

// The kinds of rules, with what Index means in a Rule.
const (
	RowCount    Kind = iota // a row's count; index of the row
	AtLeast                 // a quota's lower bound; index of the quota
	AtMost                  // a quota's upper bound; index of the quota
	Minutes                 // the most seconds in a form
	Clash                   // no clash inside a form
	Once                    // no item in two forms, but for the shared ones
	SharedCount             // how many items all forms share
	SameCount               // as many of a set in every form; index into Same
	FixedItem               // an item that must stand where it is; index into Fixed
)

// Rule is one rule of a model.
type Rule struct {
	Kind  Kind
	Index int
}

// ErrPossible says that there is nothing to explain.
var ErrPossible = errors.New("the rules can be kept together")

// Conflict gives a smallest set of rules of an impossible model: together they
// can't be kept, but without any one of them the others can (an irreducible
// infeasible subset, by deletion filtering: Chinneck and Dravnieks, ORSA
// Journal on Computing 3, 1991, from memory). Without a row count, the row may
// hold any number; without Once, each form need only be possible by itself.
func Conflict(ctx context.Context, m *Model, o Options) ([]Rule, error) {
	ctx, o, cancel := o.timed(ctx)
	defer cancel()
	possible, err := m.possible(ctx, o)
	if err != nil {
		return nil, err
	}
	if possible {
		return nil, ErrPossible
	}
	kept := m.rules()
	for _, rule := range slices.Clone(kept) {
		fewer := slices.DeleteFunc(slices.Clone(kept), func(r Rule) bool { return r == rule })
		possible, err := m.only(fewer).possible(ctx, o)
		if err != nil {
			return nil, err
		}
		if !possible {
			kept = fewer
		}
	}
	return kept, nil
}

// timed begins the time of an operation that solves several models.
func (o Options) timed(ctx context.Context) (context.Context, Options, context.CancelFunc) {
	if o.Limit <= 0 {
		return ctx, o, func() {}
	}
	ctx, cancel := context.WithTimeout(ctx, o.Limit)
	o.Limit = 0
	return ctx, o, cancel
}

// rules lists the rules of a model that hold. Those that come first are the first to be
// left out of a conflict, so that it rests on the plan's own rows and quotas
// where it can.
func (m *Model) rules() (list []Rule) {
	if slices.ContainsFunc(m.Items, func(it Item) bool { return len(it.Clashes) > 0 }) {
		list = append(list, Rule{Clash, 0})
	}
	if m.MaxSeconds > 0 {
		list = append(list, Rule{Minutes, 0})
	}
	if m.Forms > 1 && !m.apart {
		list = append(list, Rule{Once, 0})
	}
	if m.Forms > 1 && m.Shared > 0 && !m.freeShared {
		list = append(list, Rule{SharedCount, 0})
	}
	for i, s := range m.Same {
		if m.Forms > 1 && !s.free {
			list = append(list, Rule{SameCount, i})
		}
	}
	for i, x := range m.Fixed {
		if !x.free {
			list = append(list, Rule{FixedItem, i})
		}
	}
	for i, q := range m.Quotas {
		if q.AtMost < len(m.Items) || len(q.TwoThirdsOf) > 0 {
			list = append(list, Rule{AtMost, i})
		}
	}
	for i, q := range m.Quotas {
		if q.AtLeast > 0 {
			list = append(list, Rule{AtLeast, i})
		}
	}
	for i, r := range m.Rows {
		if !r.free {
			list = append(list, Rule{RowCount, i})
		}
	}
	return list
}

// Without gives the model without some of its rules: a row may hold any number, a
// quota count anything, and so on. The rules left keep their indices.
func Without(m *Model, rules []Rule) *Model {
	return m.only(slices.DeleteFunc(m.rules(), func(r Rule) bool { return slices.Contains(rules, r) }))
}

// Only gives the model with just these of its rules. They keep their indices.
func Only(m *Model, rules []Rule) *Model { return m.only(rules) }

// Possible says whether the rules of a model can be kept together.
func Possible(ctx context.Context, m *Model) (bool, error) { return m.possible(ctx, Options{}) }

// only gives the model with just these rules. Without Once the forms come
// apart; then possible looks at each of them.
func (m *Model) only(kept []Rule) *Model {
	c := *m
	c.Rows, c.Quotas, c.Same, c.Fixed = slices.Clone(m.Rows), slices.Clone(m.Quotas), slices.Clone(m.Same), slices.Clone(m.Fixed)
	for i := range c.Same {
		c.Same[i].free = m.Same[i].free || !slices.Contains(kept, Rule{SameCount, i})
	}
	for i := range c.Rows {
		c.Rows[i].free = m.Rows[i].free || !slices.Contains(kept, Rule{RowCount, i})
	}
	for i := range c.Quotas {
		if !slices.Contains(kept, Rule{AtLeast, i}) {
			c.Quotas[i].AtLeast = 0
		}
		free := func(row int) bool { return c.Rows[row].free }
		if !slices.Contains(kept, Rule{AtMost, i}) || slices.ContainsFunc(c.Quotas[i].TwoThirdsOf, free) {
			c.Quotas[i].AtMost, c.Quotas[i].TwoThirdsOf = max(len(m.Items), c.Quotas[i].AtLeast), nil
		}
	}
	for i := range c.Fixed {
		c.Fixed[i].free = m.Fixed[i].free || !slices.Contains(kept, Rule{FixedItem, i})
	}
	if !slices.Contains(kept, Rule{Minutes, 0}) {
		c.MaxSeconds = 0
	}
	c.freeShared = m.freeShared || !slices.Contains(kept, Rule{SharedCount, 0})
	c.apart = m.apart || m.Forms > 1 && !slices.Contains(kept, Rule{Once, 0})
	if !slices.Contains(kept, Rule{Clash, 0}) {
		c.Items = withoutClashes(m.Items)
	}
	return &c
}

func withoutClashes(items []Item) []Item {
	free := slices.Clone(items)
	for i := range free {
		free[i].Clashes = nil
	}
	return free
}

// possible says whether the rules can be kept, whatever the objective.
func (m *Model) possible(ctx context.Context, o Options) (bool, error) {
	c := *m
	c.Fixed = slices.DeleteFunc(slices.Clone(m.Fixed), func(x Fixed) bool { return x.free })
	m = &c
	if m.apart {
		return m.possibleApart(ctx, o)
	}
	_, err := solve(ctx, m, o, false)
	if impossible := (*Impossible)(nil); errors.As(err, &impossible) {
		return false, nil
	}
	return err == nil, err
}

// possibleApart says whether every form is possible by itself. Forms without
// items of their own are all alike.
func (m *Model) possibleApart(ctx context.Context, o Options) (bool, error) {
	open := slices.ContainsFunc(m.Rows, func(r Row) bool { return r.free })
	if !m.freeShared && !open && m.Shared > m.Size() {
		return false, nil
	}
	alike := false
	for f := range m.Forms {
		own := slices.ContainsFunc(m.Fixed, func(x Fixed) bool { return x.Form == f })
		if !own && alike {
			continue
		}
		alike = alike || !own
		if possible, err := m.alone(f).possible(ctx, o); !possible || err != nil {
			return false, err
		}
	}
	return true, nil
}

// alone is the model of form f only.
func (m *Model) alone(f int) *Model {
	c := *m
	c.Forms, c.apart, c.Fixed = 1, false, nil
	for _, x := range m.Fixed {
		if x.Form == f || x.Form == EveryForm {
			x.Form = 0
			c.Fixed = append(c.Fixed, x)
		}
	}
	return &c
}
