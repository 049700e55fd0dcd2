package assemble

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"evenhand/assemble/search"
	"evenhand/bank"
)

// mostClashes is how many clashes are told at once.
const mostClashes = 5

// explain finds out why a model is impossible and what would help. If the time
// runs out on the way, it says what it has found so far.
func (p *problem) explain(ctx context.Context, m *built) error {
	p.stop = func() bool { return ctx.Err() != nil }
	e := &ImpossibleError{}
	in, resting, err := p.whereImpossible(ctx, m)
	if err != nil {
		return outOfTime(e, err)
	}
	clashes, err := search.Conflicts(ctx, &in.Model, mostClashes, search.Options{})
	for _, rules := range clashes {
		c := Clash{}
		for _, r := range rules {
			rule, err := p.inWords(m, r)
			if err != nil {
				return err
			}
			c.Rules = append(c.Rules, rule)
		}
		if resting {
			text := fmt.Sprintf("an item used in the last %s stays out", number(p.plan.Rest, "week"))
			c.Rules = append(c.Rules, Rule{text, -1, Saying{Sentence: RuleRest, Count: p.plan.Rest}})
		}
		e.Clashes = append(e.Clashes, c)
	}
	if err != nil {
		return outOfTime(e, err)
	}
	for i, rules := range clashes {
		if e.Clashes[i].Ways, err = p.ways(ctx, m, rules, others(clashes, i), resting && len(clashes) == 1); err != nil {
			return outOfTime(e, err)
		}
	}
	e.Generate, err = p.lacking(ctx, clashes[0])
	return outOfTime(e, err)
}

// others are the rules of all clashes but one.
func others(clashes [][]search.Rule, i int) (rules []search.Rule) {
	for k, c := range clashes {
		if k != i {
			rules = append(rules, c...)
		}
	}
	return rules
}

// outOfTime lets an explanation pass that is cut short by time, but no other error.
func outOfTime(e *ImpossibleError, err error) error {
	if err == nil || errors.Is(err, search.ErrNoTime) || errors.Is(err, context.DeadlineExceeded) || errors.Is(err, context.Canceled) {
		e.CutShort = e.CutShort || err != nil
		return e
	}
	return err
}

// whereImpossible gives the model whose rules can't be kept: that without any rest,
// or, where that is possible, the one with it; then the rest is in the way too.
func (p *problem) whereImpossible(ctx context.Context, m *built) (in *built, resting bool, err error) {
	if slices.Max(p.resting) == 0 {
		return m, false, nil
	}
	rested, err := p.rested(ctx, 0)
	if err != nil {
		return nil, false, err
	}
	ok, err := possible(ctx, rested)
	if err != nil || !ok {
		return rested, false, err
	}
	return m, true, nil
}

// rested is the model with another number of rest weeks, read as fully as this one.
func (p *problem) rested(ctx context.Context, weeks int) (*built, error) {
	plan := p.plan
	plan.Rest = weeks
	q, err := newProblem(p.bank, plan, p.options)
	if err != nil {
		return nil, err
	}
	limit := math.MaxInt32
	if slices.ContainsFunc(p.pools, func(pool *pool) bool { return pool.truncated }) {
		limit = q.firstLimit()
	}
	if _, err := q.fillAll(limit); err != nil {
		return nil, err
	}
	return q.build(true), ctx.Err()
}

// possible says whether a model has a solution.
func possible(ctx context.Context, m *built) (bool, error) {
	_, err := search.Conflict(ctx, &m.Model, search.Options{})
	if errors.Is(err, search.ErrPossible) {
		return true, nil
	}
	return false, err
}

// inWords says what a rule of the model asks and what the bank has for it.
func (p *problem) inWords(m *built, r search.Rule) (Rule, error) {
	rule, says := Rule{Offer: -1}, Saying{Row: r.Index, Forms: p.forms}
	switch r.Kind {
	case search.RowCount:
		n, err := p.offer(func(pool *pool) bool { return pool.fit(r.Index) >= 0 }, r.Index)
		if err != nil {
			return rule, err
		}
		rule.Offer = n
		says.Sentence, says.Count, says.Offer, says.Resting = RuleRow, m.Rows[r.Index].Count, n, p.resting[r.Index]
		rule.Text = fmt.Sprintf("%s takes %s%s; the bank offers %d", m.Rows[r.Index].Name, number(says.Count, "item"), p.inEachForm(), n)
		if says.Resting > 0 {
			rule.Text += fmt.Sprintf(", and %d more were used too lately", says.Resting)
		}
	case search.AtLeast:
		n, err := p.offer(func(pool *pool) bool { return slices.Contains(pool.quotas, r.Index) }, -1)
		if err != nil {
			return rule, err
		}
		q := m.Quotas[r.Index]
		rule.Offer = n
		says.Sentence, says.Quota, says.Count, says.Offer = RuleLeast, p.quota(r.Index), q.AtLeast, n
		rule.Text = fmt.Sprintf("%s: at least %d%s; the bank offers %d for the rows", q.Name, q.AtLeast, p.inEachForm(), n)
	case search.AtMost:
		q := m.Quotas[r.Index]
		says.Sentence, says.Quota, says.Count = RuleAnswers, p.quota(r.Index), q.AtMost
		if p.aboutAnswers(r) {
			rule.Text = fmt.Sprintf("%s: at most %d%s, two thirds of those that offer the same answers", q.Name, q.AtMost, p.inEachForm())
			break
		}
		n, err := p.offer(func(pool *pool) bool { return !slices.Contains(pool.quotas, r.Index) }, -1)
		if err != nil {
			return rule, err
		}
		rule.Offer = n
		says.Sentence, says.Offer = RuleMost, n
		rule.Text = fmt.Sprintf("%s: at most %d%s; the bank offers %d others for the rows", q.Name, q.AtMost, p.inEachForm(), n)
	case search.SameCount:
		says.Sentence, says.Quota = RuleSame, p.sameQuota(r.Index)
		rule.Text = fmt.Sprintf("every form holds as many %s as the others", m.Same[r.Index].Name)
	case search.Minutes:
		says.Sentence, says.Count, says.Time = RuleMinutes, p.plan.Minutes, p.quickest()
		rule.Text = fmt.Sprintf("%s for a form; the quickest items for the rows take %s%s",
			number(p.plan.Minutes, "minute"), says.Time, p.aForm())
	case search.Clash:
		says.Sentence = RuleClash
		rule.Text = "no form holds two items of one skill and key, of one fact family or of one time"
	case search.Once:
		says.Sentence = RuleOnce
		rule.Text = fmt.Sprintf("no item stands in two of the %d forms", p.forms)
	case search.SharedCount:
		says.Sentence, says.Count = RuleShared, p.plan.Shared
		rule.Text = fmt.Sprintf("exactly %s in all %d forms", stand(p.plan.Shared), p.forms)
	default:
		says.Sentence, says.Place = RuleKept, p.kept[r.Index].name
		rule.Text = fmt.Sprintf("item %s keeps its place", says.Place)
	}
	rule.Says = says
	return rule, nil
}

// number is a count of things in words: "1 item", "2 items".
func number(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// stand is a count of items with its verb.
func stand(n int) string {
	if n == 1 {
		return "1 item stands"
	}
	return number(n, "item") + " stand"
}

func (p *problem) aForm() string {
	if p.forms == 1 {
		return ""
	}
	return " a form"
}

func (p *problem) inEachForm() string {
	if p.forms == 1 {
		return ""
	}
	return fmt.Sprintf(" in each of %d forms", p.forms)
}

// fit is the position of a row among the fits of a pool, or −1.
func (pool *pool) fit(row int) int {
	return slices.IndexFunc(pool.fits, func(f fit) bool { return f.row == row })
}

// offer counts the items of some pools that are free and can be shown in a row,
// or in any of their rows for −1. It goes through all of them.
func (p *problem) offer(counts func(*pool) bool, row int) (int, error) {
	n := 0
	for _, pool := range p.pools {
		if !counts(pool) {
			continue
		}
		if len(pool.groups) == 0 {
			n += len(pool.read) // an item with a pool of its own
		}
		for some := range slices.Chunk(pool.groups, together) {
			groups := inFull(some)
			lists, err := p.bank.MembersOf(groups, 0, nil)
			if err != nil {
				return 0, err
			}
			for i, members := range lists {
				for _, m := range members {
					shown, err := p.shown(pool, groups[i], m, row)
					if err != nil {
						return 0, err
					}
					if shown && !p.out[m.ID] {
						n++
					}
				}
			}
		}
	}
	return n, nil
}

// shown says whether an item can be shown as a row asks.
func (p *problem) shown(pool *pool, g bank.Group, m bank.Member, row int) (bool, error) {
	open := func(f fit) bool { return (row < 0 || f.row == row) && len(p.plan.Rows[f.row].Looks) == 0 }
	if slices.ContainsFunc(pool.fits, open) {
		return true, nil
	}
	c, err := p.candidate(pool, g, m)
	if row < 0 || c.id == "" {
		return c.id != "", err
	}
	return c.looks[pool.fit(row)] != "", err
}

// quickest is the time that the quickest items of each row take, enough for all
// forms; with several forms it is what one takes on average.
func (p *problem) quickest() string {
	total := 0
	for i, row := range p.plan.Rows {
		var seconds []int
		for _, pool := range p.pools {
			at := pool.fit(i)
			for _, c := range pool.read {
				if at >= 0 && c.looks[at] != "" {
					seconds = append(seconds, c.seconds[at])
				}
			}
		}
		slices.Sort(seconds)
		for _, s := range seconds[:min(row.Count*p.forms, len(seconds))] {
			total += s
		}
	}
	total = (total + p.forms - 1) / p.forms
	return fmt.Sprintf("%d:%02d", total/60, total%60)
}

// ways finds for each rule of a clash by how much it would have to give for the whole
// plan to become possible, but for the other clashes. The smallest step, measured
// against what the rule asks now, comes first; fewer forms come last.
func (p *problem) ways(ctx context.Context, m *built, rules, others []search.Rule, resting bool) ([]Way, error) {
	type step struct {
		way  Way
		size float64
	}
	var steps []step
	for _, r := range rules {
		if r.Kind == search.Clash || p.aboutAnswers(r) || r.Kind == search.RowCount && p.options.ofTerm {
			continue // no plan can allow it, or the pacing list has no such row
		}
		w, err := search.Loosen(ctx, search.Without(&m.Model, others), r, search.Options{})
		if err != nil {
			return nil, err
		}
		if w.Enough {
			size := math.Abs(float64(w.To-w.From)) / math.Max(1, float64(w.From))
			if r.Kind == search.Once {
				size += fewerForms
			}
			steps = append(steps, step{p.way(m, w), size})
		}
	}
	if resting {
		weeks, err := p.enoughRest(ctx)
		if err != nil {
			return nil, err
		}
		text := fmt.Sprintf("rest items %s instead of %d (rest = %d)", number(weeks, "week"), p.plan.Rest, weeks)
		way := Way{text, ChangeRest, 0, weeks, Saying{Sentence: WayRest, Count: p.plan.Rest, To: weeks}}
		steps = append(steps, step{way, float64(p.plan.Rest-weeks) / float64(p.plan.Rest)})
	}
	slices.SortStableFunc(steps, func(a, b step) int { return cmp.Compare(a.size, b.size) })
	var ways []Way
	for _, s := range steps {
		ways = append(ways, s.way)
	}
	return ways, nil
}

// fewerForms is how much larger a step it is to make fewer forms than to change what
// they hold: then a neighbour gets the same sheet.
const fewerForms = 1.0

// way is a way out with what it changes in the plan.
func (p *problem) way(m *built, w search.Way) Way {
	way := Way{To: w.To, Says: Saying{Row: w.Index, Count: w.From, To: w.To}}
	says := &way.Says
	switch w.Kind {
	case search.RowCount:
		way.Change, way.Row, says.Sentence = ChangeCount, w.Index, WayRow
		way.Text = fmt.Sprintf("take %s instead of %d in row %d", number(w.To, "item"), w.From, w.Index+1)
		if w.To == 0 {
			says.Sentence, way.Text = WayOut, fmt.Sprintf("leave row %d out", w.Index+1)
		}
	case search.AtLeast:
		says.Sentence, says.Quota = WayLeast, p.quota(w.Index)
		way.Text = fmt.Sprintf("%s: ask for at least %d instead of %d", m.Quotas[w.Index].Name, w.To, w.From)
	case search.AtMost:
		says.Sentence, says.Quota = WayMost, p.quota(w.Index)
		way.Text = fmt.Sprintf("%s: allow up to %d instead of %d", m.Quotas[w.Index].Name, w.To, w.From)
	case search.Minutes:
		way.Change, way.To = ChangeMinutes, wholeMinutes(w.To)
		says.Sentence, says.Count, says.To = WayMinutes, p.plan.Minutes, way.To
		way.Text = fmt.Sprintf("give %d minutes instead of %d", way.To, p.plan.Minutes)
	case search.Once:
		way.Change, says.Sentence = ChangeForms, WayOnce
		way.Text = fmt.Sprintf("make %d of the %d forms", w.To, w.From)
	case search.SameCount:
		says.Sentence, says.Quota = WaySame, p.sameQuota(w.Index)
		way.Text = fmt.Sprintf("let forms hold different numbers of %s", m.Same[w.Index].Name)
	case search.SharedCount:
		says.Sentence = WayShared
		way.Text = fmt.Sprintf("let %s stand in every form instead of %d", number(w.To, "item"), w.From)
	default:
		says.Sentence, says.Place = WayKept, p.kept[w.Index].name
		way.Text = fmt.Sprintf("replace item %s too", says.Place)
	}
	return way
}

// wholeMinutes is the limit of a plan that gives so many seconds.
func wholeMinutes(seconds int) int { return (seconds + 59) / 60 }

// aboutAnswers says that a rule is about how often one of few answers stands.
func (p *problem) aboutAnswers(r search.Rule) bool {
	return (r.Kind == search.AtMost || r.Kind == search.AtLeast) && r.Index >= len(p.plan.Bands)+len(p.plan.Quotas)
}

// enoughRest is the largest number of rest weeks with which the plan can be met;
// it is known that none at all will do.
func (p *problem) enoughRest(ctx context.Context) (int, error) {
	good, bad := 0, p.plan.Rest
	for bad-good > 1 {
		mid := (good + bad) / 2
		m, err := p.rested(ctx, mid)
		if err != nil {
			return 0, err
		}
		ok, err := possible(ctx, m)
		if err != nil {
			return 0, err
		}
		if ok {
			good = mid
		} else {
			bad = mid
		}
	}
	return good, nil
}
