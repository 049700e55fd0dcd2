package assemble

import (
	"cmp"
	"context"
	"errors"
	"slices"
	"time"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards/task"
)

// Options say how a quiz is made from a plan.
type Options struct {
	Seed    uint64        // chooses among equally good quizzes
	Forms   int           // how many forms; 0 means as many as the plan says
	Week    string        // ISO week of the quiz, such as 2026-W48; needed when the plan has rest weeks
	Ability *int          // of the typical pupil of the class, in thousandths of a logit; nil for the grade's usual
	Limit   time.Duration // how long to search; 0 means until it is proved

	Earlier Earlier // an earlier quiz to keep parts of

	Without map[string]bool // IDs of items that stay out, such as those that pupils have just seen

	ofTerm      bool // it is one week of a term
	unexplained bool // nobody asks why there is no quiz
	glance      bool // some items of a large bank will do

	// Of a term: items that other weeks use, and how often earlier weeks of the
	// term used items, beyond what the bank knows.
	out   map[string]bool
	extra map[string]int

	sat []bank.QuizForm // of a make-up form: the forms before it
}

// Assemble makes the best quiz that the bank can give under the plan: all rules
// of the plan hold in every form, no item stands in two forms but the shared
// ones, no form holds two items of one key and skill, of one fact family or of
// one time (of items that offer the same few answers no more than two thirds have
// one), and among all such quizzes none has a smaller objective
//
//	1000 · (Σ_f off_f + F · Σ_θ uneven_θ) + Σ uses
//
// where off_f is by how many hundredths of a point, beyond one in 100, the score
// that a typical pupil can expect of form f misses the mark, uneven_θ by how
// many the scores that a weaker, a typical and a stronger pupil can expect of the F
// forms lie apart, beyond half in 100, and uses counts the earlier uses of the items.
// When the limit runs out the best quiz found is given with the bound proved so far.
//
// Among equally good quizzes, in this order and not proved: traits in equal numbers
// in all forms, items unused for longest, answers that are right equally often among
// items that offer the same few, what the seed decides.
//
// The error is an *ImpossibleError when no quiz keeps the rules. The same bank,
// plan, seed and week give the same quiz, unless time runs out first; another seed
// gives another that is equally good, where there is one.
//
// It reads a few of the items that the plan can't tell apart and more only when
// they might matter, so its time grows with the plan and hardly with the bank.
func Assemble(ctx context.Context, b *bank.Bank, plan plan.Plan, o Options) (Quiz, error) {
	if o.Limit > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, o.Limit)
		defer cancel()
	}
	p, m, s, err := atAGlance(ctx, b, plan, o)
	switch {
	case err != nil:
		return Quiz{}, err
	case s == nil && o.unexplained:
		return Quiz{}, &ImpossibleError{}
	case s == nil:
		return Quiz{}, p.explain(ctx)
	case len(plan.Diagnose) > 0:
		s = p.diagnose(ctx, m, s)
	}
	return p.quiz(m, s, o)
}

// solve reads as much as it needs and finds the best choice; without one, there is none,
// and the model shows why.
func (p *problem) solve(ctx context.Context) (*built, *search.Solution, error) {
	for limit := p.firstLimit(); ; limit *= 4 {
		all, err := p.fillAll(limit)
		if err != nil {
			return nil, nil, err
		}
		m := p.build(false)
		s, err := search.Solve(ctx, &m.Model, search.Options{Seed: p.seed, AtOnce: !p.offered.Whole()})
		var impossible *search.Impossible
		switch {
		case errors.Is(err, search.ErrNoTime) && !p.offered.Whole():
			return nil, nil, errLeftOut
		case errors.As(err, &impossible) && all:
			return m, nil, nil
		case err != nil && !errors.As(err, &impossible):
			return nil, nil, err
		case all || s != nil && s.Objective == 0:
			return m, s, nil
		case !p.offered.Whole() && s != nil && ctx.Err() != nil:
			s.Bound, s.Proved = 0, false
			return m, s, nil
		case !p.offered.Whole():
			return nil, nil, errLeftOut
		}
		// Not everything was read: is anything better, or anything at all, possible?
		wide := p.build(true)
		bound, err := boundOf(ctx, wide, p.seed)
		switch {
		case errors.As(err, &impossible):
			return wide, nil, nil
		case err != nil:
			return nil, nil, err
		case s != nil && (bound >= s.Objective || ctx.Err() != nil):
			s.Bound = min(bound, s.Objective)
			s.Proved = s.Bound == s.Objective
			return m, s, nil
		}
	}
}

// firstLimit is how many items of a pool are read at first: so many that they
// are about a thousand in all, which takes no time, but four at least; at a glance, where many pools have fewer,
// about 1,500 and two.
func (p *problem) firstLimit() int {
	about, least := 1000, 4
	if !p.offered.Whole() {
		about, least = 1500, 2
	}
	return min(max(about/max(1, len(p.pools)), least), 40)
}

// boundOf is an objective that no quiz of the model can go below.
func boundOf(ctx context.Context, m *built, seed uint64) (int, error) {
	s, err := search.Solve(ctx, &m.Model, search.Options{Seed: seed})
	if errors.Is(err, search.ErrNoTime) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	return s.Bound, nil
}

// quiz reads the chosen items and puts them in order: by row of the plan, then
// from easy to hard, so that the forms look alike, those of one look together.
func (p *problem) quiz(m *built, s *search.Solution, o Options) (Quiz, error) {
	q := Quiz{
		Title: p.plan.TitleFor(o.Week), Week: o.Week, Seed: o.Seed, ShareRight: p.plan.ShareRight, Diagnose: p.plan.Diagnose,
		Ability: p.ability, Off: s.Off, Uneven: s.Uneven,
		Objective: s.Objective, UsesSum: s.Uses, Bound: s.Bound, Proved: s.Proved,
	}
	learnt, err := p.bank.Table()
	if err != nil {
		return Quiz{}, err
	}
	for f, places := range s.Forms {
		form := Form{Name: string(rune('A' + f)), Scores: s.Scores[f]}
		slices.SortFunc(places, func(a, b search.Place) int {
			return cmp.Or(a.Row-b.Row, int(m.pools[a.Item].difficulty-m.pools[b.Item].difficulty),
				cmp.Compare(scatter(p.seed, m.items[a.Item].id), scatter(p.seed, m.items[b.Item].id)))
		})
		for i, place := range m.byLook(places) {
			placed, err := p.place(m, place)
			if err != nil {
				return Quiz{}, err
			}
			placed.Number = i + 1
			if placed.Item.Predictable() {
				placed.Basis = learnt.Basis(placed.Item)
			}
			form.Items = append(form.Items, placed)
		}
		q.Forms = append(q.Forms, form)
	}
	markShared(q.Forms)
	if len(o.Earlier.Spots) == 0 {
		return q, nil
	}
	q.settle(o.Earlier)
	if o.Earlier.Forms() != p.forms {
		return q, nil
	}
	earlier, err := p.earlierQuiz(o)
	q.Changes = BalanceOf(earlier).Changes(BalanceOf(q))
	return q, err
}

// byLook brings the items of one look together, the looks in the order in which they first
// come, so that a sheet says once what is to be done.
func (m *built) byLook(places []search.Place) []search.Place {
	var order []task.Look
	first := func(place search.Place) int {
		look, _ := m.shown(place)
		at := slices.Index(order, look)
		if at < 0 {
			at, order = len(order), append(order, look)
		}
		return at
	}
	for _, place := range places {
		first(place)
	}
	slices.SortStableFunc(places, func(a, b search.Place) int { return first(a) - first(b) })
	return places
}

// shown is the look and the working time of an item in its row.
func (m *built) shown(place search.Place) (task.Look, int) {
	c, pool := m.items[place.Item], m.pools[place.Item]
	at := slices.IndexFunc(pool.fits, func(f fit) bool { return f.row == place.Row })
	return c.looks[at], c.seconds[at]
}

func (p *problem) place(m *built, place search.Place) (Placed, error) {
	item, err := p.bank.Get(m.items[place.Item].id)
	if err != nil {
		return Placed{}, err
	}
	item.Look, item.Seconds = m.shown(place)
	return Placed{Item: item, Row: rowName(place.Row, p.plan.Rows[place.Row]), Uses: m.pools[place.Item].uses}, nil
}

// markShared notes the items that stand in every one of several forms.
func markShared(forms []Form) {
	count := map[string]int{}
	for _, form := range forms {
		for _, placed := range form.Items {
			count[placed.Item.ID]++
		}
	}
	for _, form := range forms {
		for i := range form.Items {
			form.Items[i].Shared = len(forms) > 1 && count[form.Items[i].Item.ID] == len(forms)
		}
	}
}
