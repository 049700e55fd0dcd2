package search

import (
	"context"
	"errors"
	"time"
)

// Options steer a search.
type Options struct {
	Limit time.Duration // how long to search; 0 means until ctx ends
	Seed  uint64        // chooses among equally good solutions

	AtOnce bool // only what is soon found, some tenths of a second at most
}

// Impossible is the proved verdict that no choice keeps all the rules.
type Impossible struct{}

func (*Impossible) Error() string { return "no choice of items keeps all the rules together" }

// ErrNoTime says that the time ran out before a solution was found or shown
// not to exist.
var ErrNoTime = errors.New("no quiz was found in the time given, nor shown to be impossible; give more time")

// Solve finds the solution with the smallest objective and proves it. When the
// limit runs out it returns the best found with the bound proved so far. The
// error is *Impossible if no solution exists, ErrNoTime if the time did not
// even show that, or what Check says. The same model, seed and enough time
// give the same solution; another seed may give another one, equally good.
func Solve(ctx context.Context, m *Model, o Options) (*Solution, error) {
	return solve(ctx, m, o, true)
}

// OneCore lets all that is searched under the context take no more than one core, as others need the
// rest. Given the time, it finds the same.
func OneCore(ctx context.Context) context.Context { return context.WithValue(ctx, oneCore{}, true) }

type oneCore struct{}

func onOneCore(ctx context.Context) bool { return ctx.Value(oneCore{}) != nil }

// solve looks for the best solution, or for any (goal false).
func solve(ctx context.Context, m *Model, o Options, goal bool) (*Solution, error) {
	if err := m.Check(); err != nil {
		return nil, err
	}
	if o.Limit > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, o.Limit)
		defer cancel()
	}
	m = m.single()
	if m.contradicts() {
		return nil, &Impossible{}
	}
	p := newProblem(m, o.Seed, goal)
	best := &incumbent{p: p, objective: none}
	stop := func() bool { return ctx.Err() != nil }
	bound := p.improve(best, onOneCore(ctx), o.AtOnce, stop)
	switch {
	case best.forms == nil && bound == none:
		return nil, &Impossible{}
	case best.forms == nil:
		return nil, ErrNoTime
	}
	if goal {
		best.forms = p.even(best.forms, stop)
	}
	s := p.solution(best.forms)
	s.Bound = min(bound, s.Objective)
	s.Proved = s.Bound == s.Objective
	return s, nil
}

// solution gives a choice its figures.
func (p *problem) solution(forms [][]Place) *Solution {
	g := p.measure(forms)
	s := &Solution{Forms: forms, Off: g.off, Uneven: g.uneven, Uses: g.uses, Objective: g.objective()}
	for _, places := range forms {
		var score Points
		for _, x := range places {
			score.add(p.Items[x.Item].Points, 1)
		}
		s.Scores = append(s.Scores, score)
	}
	return s
}

// single takes sharing out of a model with one form, where it says nothing.
func (m *Model) single() *Model {
	if m.Forms > 1 {
		return m
	}
	c := *m
	c.Shared, c.freeShared = 0, false
	c.Fixed = append([]Fixed(nil), m.Fixed...)
	for i := range c.Fixed {
		c.Fixed[i].Form = 0
	}
	return &c
}

// contradicts says whether a rule contradicts itself.
func (m *Model) contradicts() bool {
	for _, q := range m.Quotas {
		if q.AtLeast > q.AtMost || q.AtMost < 0 {
			return true
		}
	}
	for _, x := range m.Fixed {
		if x.Form == EveryForm && m.Shared == 0 && !m.freeShared {
			return true
		}
	}
	return false
}

// improve betters best until it is proved or the time is up, and returns the
// bound proved. The tree is tried on the most promising groups first; a group
// is given up once the root proves that it can't be part of anything better.
func (p *problem) improve(best *incumbent, oneCore, atOnce bool, stop func() bool) int {
	r := p.bound(stop)
	if r.bound == none {
		return none
	}
	if r.reduced == nil { // stopped
		return 0
	}
	c := &climb{p: p, root: r, best: best, split: map[int]bool{}, stop: stop, oneCore: oneCore, atOnce: atOnce,
		keptForms: keptAtFirst, keptPlaces: keptAtFirst}
	for size := 200; ; size *= 4 {
		chosen, all := r.kernel(size, best.objective)
		bound := c.run(chosen, all)
		if all {
			return max(bound, r.bound)
		}
		if best.objective <= r.bound || atOnce || stop() {
			return r.bound
		}
	}
}

// floor is the proved lower bound of the sum of excesses.
func (r *root) floor() int {
	if !r.p.goal {
		return 0
	}
	return r.Cols[r.total].Lo
}
