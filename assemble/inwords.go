package assemble

import (
	"fmt"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
)

// inWords is what was found, in a teacher's words; cut says that the time ran out before all was.
func (x *explaining) inWords(cut bool) error {
	e := &ImpossibleError{CutShort: cut, Generate: x.makes}
	m := x.p.build(false)
	for i, c := range x.clashes {
		told := Clash{Generate: c.makes}
		for _, r := range c.rules {
			rule, err := x.p.inWords(m, r)
			if err != nil {
				return err
			}
			told.Rules = append(told.Rules, rule)
		}
		for _, w := range c.ways {
			if w.Kind == search.RowCount {
				e.Items = x.p.plan.Items
			}
			told.Ways = append(told.Ways, x.p.way(m, w.Way, x.gradeKept(x.beside(i).and(w.Way))))
		}
		e.Clashes = append(e.Clashes, told)
	}
	return e
}

// gradeKept is the grade that a plan has to name so that it stays for the same pupils when ways leave rows out;
// empty where it does anyway, or where no rule hangs on it.
func (x *explaining) gradeKept(e eased) string {
	asked := x.p.plan
	if asked.Grade != "" || x.p.options.Ability != nil || len(asked.Bands) == 0 {
		return ""
	}
	left := asked
	left.Rows = slices.Clone(asked.Rows)
	for _, w := range e.ways {
		if w.Kind == search.RowCount {
			left.Rows[w.Index].Count = w.To
		}
	}
	left.Rows = slices.DeleteFunc(left.Rows, func(r plan.Row) bool { return r.Count == 0 })
	if left.ForGrade() == asked.ForGrade() {
		return ""
	}
	return fmt.Sprint(asked.ForGrade())
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
	case restWeeks:
		says.Sentence, says.Count = RuleRest, p.plan.Rest
		rule.Text = fmt.Sprintf("an item used in the last %s stays out", number(p.plan.Rest, "week"))
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
			groups := p.inFull(some)
			lists, err := p.bank.MembersOf(groups, 0, nil)
			if err != nil {
				return 0, err
			}
			for i, members := range lists {
				for _, m := range members {
					shown, err := p.shown(pool, &groups[i], m, row)
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
func (p *problem) shown(pool *pool, g *bank.Group, m bank.Member, row int) (bool, error) {
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
// forms, beside those that are kept; with several forms it is what one takes on average.
func (p *problem) quickest() string {
	total := 0
	for i, row := range p.plan.Rows {
		var seconds []int
		places := row.Count * p.forms
		for _, k := range p.kept {
			if k.row != i {
				continue
			}
			in := 1
			if k.form == search.EveryForm {
				in = p.forms
			}
			places -= in
			total += in * k.pool.read[0].seconds[k.pool.fit(i)]
		}
		for _, pool := range p.pools {
			at := pool.fit(i)
			for _, c := range pool.read {
				if at >= 0 && c.looks[at] != "" {
					seconds = append(seconds, c.seconds[at])
				}
			}
		}
		slices.Sort(seconds)
		for n := range places {
			if len(seconds) > 0 {
				total += seconds[min(n, len(seconds)-1)] // those that lack may be like the last
			}
		}
	}
	total = (total + p.forms - 1) / p.forms
	return fmt.Sprintf("%d:%02d", total/60, total%60)
}

// way is a way out with what it changes in the plan, and the grade that it has to name where a row goes.
func (p *problem) way(m *built, w search.Way, grade string) Way {
	way := Way{To: w.To, Says: Saying{Row: w.Index, Count: w.From, To: w.To}}
	says := &way.Says
	switch w.Kind {
	case search.RowCount:
		way.Change, way.Row, says.Sentence = ChangeCount, w.Index, WayRow
		way.Text = fmt.Sprintf("take %s instead of %d in row %d", number(w.To, "item"), w.From, w.Index+1)
		if w.To == 0 {
			says.Sentence, way.Text = WayOut, fmt.Sprintf("leave row %d out", w.Index+1)
		}
		if w.To == 0 && grade != "" {
			way.Grade, says.Sentence, says.Grade = grade, WayOutFor, grade
			way.Text += fmt.Sprintf(", and write grade = %q so that the quiz stays for grade %s", grade, grade)
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
	case restWeeks:
		way.Change, says.Sentence = ChangeRest, WayRest
		way.Text = fmt.Sprintf("rest items %s instead of %d (rest = %d)", number(w.To, "week"), w.From, w.To)
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
