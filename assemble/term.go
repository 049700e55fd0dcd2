package assemble

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards/words"
)

// Term is a quiz for every week of a term.
type Term struct {
	Pacing  plan.Pacing
	Plans   []plan.Plan // one a week
	Quizzes []Quiz
}

// TermError says which week of a term has no quiz; Err says why.
type TermError struct {
	Week string
	Err  error
}

func (e *TermError) Error() string { return fmt.Sprintf("week %s of the term: %v", e.Week, e.Err) }

// Unwrap gives the reason.
func (e *TermError) Unwrap() error { return e.Err }

// AssembleTerm makes the quizzes of a term, beginning with o.Week or, where that is
// a holiday, the first week of school behind it. No item comes back inside the rest
// weeks, in the term or from before it.
//
// So that the last week is not left with what the first ones didn't want, the
// items are first dealt out like cards: for every skill, from unused to used and
// from easy to hard, each week in which the skill is asked for gets its part, in
// proportion to what it needs. Each week's quiz is then the best from its own
// part. A week whose part doesn't do may take whatever no other week has chosen,
// and if that doesn't do either it chooses before all others. At the end every
// week in turn looks once more through all that the other weeks left.
//
// So each quiz is the best possible (or as good as o.Limit, which holds for each
// search, allows) beside the other weeks' quizzes. It isn't proved that no other
// term is better taken together. Either all weeks get a quiz or none does: the
// error is a *TermError.
func AssembleTerm(ctx context.Context, b *bank.Bank, pacing plan.Pacing, weeks int, o Options) (Term, error) {
	if weeks < 1 || weeks > plan.MaxWeeks {
		return Term{}, words.Errorf("a term of %d weeks is asked for; it can have 1 to %d", weeks, plan.MaxWeeks)
	}
	from, err := plan.ParseWeek(o.Week)
	if err != nil {
		return Term{}, err
	}
	school := plan.SchoolWeeks(from, weeks, pacing.Skip)
	m := &termMaker{ctx: ctx, bank: b, weeks: school, plans: pacing.Plans(weeks), options: o, rest: pacing.Weekly.Rest}
	if m.shares, err = m.deal(pacing); err != nil {
		return Term{}, err
	}
	if err := m.make(); err != nil {
		return Term{}, err
	}
	return Term{pacing, m.plans, m.quizzes}, nil
}

// termMaker makes the quizzes of a term.
type termMaker struct {
	ctx     context.Context
	bank    *bank.Bank
	weeks   []plan.Week // of school
	plans   []plan.Plan
	rest    int
	options Options
	shares  map[string]weekSet // for items that were dealt out, the weeks that they were dealt to
	quizzes []Quiz             // those made so far; without forms where there is none yet
}

// make finds an order of the weeks in which each gets a quiz, and then lets
// each look once more.
func (m *termMaker) make() error {
	var first []int // weeks that choose before all others
	for {
		failed, err := m.round(first)
		switch {
		case err == nil:
			return m.lookAgain()
		case failed < 0 || slices.Contains(first, failed):
			return err
		}
		first = append([]int{failed}, first...)
	}
}

// round makes all quizzes anew, and says which week failed (−1 for an error that
// is no week's).
func (m *termMaker) round(first []int) (failed int, err error) {
	m.quizzes = make([]Quiz, len(m.plans))
	for _, w := range first {
		if err := m.week(w, false); err != nil {
			return m.failed(w, err)
		}
	}
	var open []int
	for w := range m.plans {
		if slices.Contains(first, w) {
			continue
		}
		err := m.week(w, true)
		var impossible *ImpossibleError
		if errors.As(err, &impossible) {
			open = append(open, w)
		} else if err != nil {
			return -1, err
		}
	}
	for _, w := range open {
		if err := m.week(w, false); err != nil {
			return m.failed(w, err)
		}
	}
	return -1, nil
}

func (m *termMaker) failed(w int, err error) (int, error) {
	var impossible *ImpossibleError
	if !errors.As(err, &impossible) {
		return -1, err
	}
	return w, &TermError{m.weekOf(w).String(), err}
}

// lookAgain goes through the weeks in order, so that each knows how often the
// weeks before it have used an item.
func (m *termMaker) lookAgain() error {
	for w := range m.plans {
		if err := m.week(w, false); err != nil {
			return &TermError{m.weekOf(w).String(), err}
		}
	}
	return nil
}

// week makes the quiz of a week from what the other weeks leave, or from its own
// part of that.
func (m *termMaker) week(w int, ownPart bool) error {
	o := m.options
	o.Week, o.ofTerm, o.unexplained = m.weekOf(w).String(), true, ownPart
	o.out, o.extra = map[string]bool{}, map[string]int{}
	if ownPart {
		for id, weeks := range m.shares {
			if !weeks.has(w) {
				o.out[id] = true
			}
		}
	}
	for v, q := range m.quizzes {
		for _, id := range q.ids() {
			switch {
			case v == w:
			case m.apart(v, w) <= m.rest && m.rest > 0:
				o.out[id] = true
			case v < w:
				o.extra[id]++
			}
		}
	}
	q, err := Assemble(m.ctx, m.bank, m.plans[w], o)
	if err == nil {
		m.quizzes[w] = q
	}
	return err
}

func (m *termMaker) weekOf(w int) plan.Week { return m.weeks[w] }

// apart is how many weeks two weeks of the term lie apart, holidays counted: items rest then, too.
func (m *termMaker) apart(v, w int) int {
	n := m.weeks[v].Until(m.weeks[w])
	return max(n, -n)
}

// ids lists the items of a quiz, each once.
func (q Quiz) ids() []string {
	var ids []string
	seen := map[string]bool{}
	for _, form := range q.Forms {
		for _, placed := range form.Items {
			if !seen[placed.Item.ID] {
				seen[placed.Item.ID] = true
				ids = append(ids, placed.Item.ID)
			}
		}
	}
	return ids
}

// Table shows how many items of each skill the weeks ask for in a form, the
// heading first; where a skill is new it says so.
func (t Term) Table() [][]string {
	heading := []string{"skill"}
	for _, q := range t.Quizzes {
		heading = append(heading, q.Week)
	}
	table := [][]string{heading}
	for _, s := range t.Pacing.New {
		line := []string{s.Name()}
		for w, plan := range t.Plans {
			line = append(line, cell(s, plan, w+1))
		}
		table = append(table, line)
	}
	return table
}

// cell says how many items of a skill a week asks for.
func cell(s plan.NewSkill, weekly plan.Plan, week int) string {
	n := 0
	for _, row := range weekly.Rows {
		if row.Name() == s.Name() {
			n += row.Count
		}
	}
	var words []string
	if n > 0 {
		words = append(words, fmt.Sprint(n))
	}
	if s.Week == week {
		words = append(words, "new")
	}
	return strings.Join(words, " ")
}
