package assemble

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Earlier is a quiz of which parts are kept. Replace exchanges the items named
// and keeps the rest; Keep keeps the items named and chooses the rest anew. An
// item is named by its form and number, such as "A3". At most one of the two is
// used; with neither, all is kept.
type Earlier struct {
	Quiz    string // its ID, where the bank keeps it
	Spots   []Spot // every item of the quiz
	Replace []string
	Keep    []string
}

// Spot is one place of an earlier quiz.
type Spot struct {
	Form   string // "A", "B", ...
	Number int    // from 1
	ID     string
	Look   task.Look
}

// Name is the spot as Replace and Keep name it.
func (s Spot) Name() string { return fmt.Sprint(s.Form, s.Number) }

// keeps gives the IDs that stay and those that are swapped out.
func (e Earlier) keeps() (stay, out map[string]bool, err error) {
	if len(e.Replace) > 0 && len(e.Keep) > 0 {
		return nil, nil, words.Errorf("name the items to replace or those to keep, not both")
	}
	if len(e.Spots) == 0 && len(e.Replace)+len(e.Keep) > 0 {
		return nil, nil, words.Errorf("to keep or replace items, say from which quiz")
	}
	replaced, err := e.named(e.Replace)
	if err != nil {
		return nil, nil, err
	}
	stay, err = e.named(e.Keep)
	if err != nil {
		return nil, nil, err
	}
	if len(e.Keep) > 0 {
		return stay, nil, nil
	}
	for _, s := range e.Spots {
		if !replaced[s.ID] {
			stay[s.ID] = true
		}
	}
	return stay, replaced, nil
}

// named gives the IDs of the items that stand at the names.
func (e Earlier) named(names []string) (map[string]bool, error) {
	ids := map[string]bool{}
	for _, name := range names {
		at := slices.IndexFunc(e.Spots, func(s Spot) bool { return strings.EqualFold(s.Name(), strings.TrimSpace(name)) })
		if at < 0 {
			first, last := e.Spots[0], e.Spots[len(e.Spots)-1]
			return nil, words.Errorf("the earlier quiz has no item %q; its items are %s to %s", name, first.Name(), last.Name())
		}
		ids[e.Spots[at].ID] = true
	}
	return ids, nil
}

// takeEarlier puts what is kept of an earlier quiz in its place.
func (p *problem) takeEarlier(o Options) error {
	stay, out, err := o.Earlier.keeps()
	if err != nil || len(o.Earlier.Spots) == 0 {
		return err
	}
	if err := p.matchForms(o); err != nil {
		return err
	}
	o.Earlier = o.Earlier.first(p.forms)
	for id := range out {
		p.out[id] = true
	}
	forms, shared := map[string]int{}, 0
	for _, s := range o.Earlier.Spots {
		if forms[s.ID]++; forms[s.ID] == 2 {
			shared++
		}
	}
	if shared > p.plan.Shared {
		return words.Errorf("the earlier quiz has %s in all of its forms, the plan asks for %d; set shared = %d",
			words.SayCount(shared, "%d item", "%d items"), p.plan.Shared, shared)
	}
	earlier, err := p.seatEarlier(o)
	if err != nil {
		return err
	}
	var tired []string
	for _, k := range earlier {
		id := k.pool.read[0].id
		if stay[k.id] && !p.out[k.id] && p.rests(k.lastWeek) {
			tired = append(tired, k.name)
		}
		switch {
		case !stay[k.id] || p.out[k.id]:
			continue
		case id == "" || k.row < 0:
			return words.Errorf("item %s of the earlier quiz fits no row of the plan, or only rows that others fill; replace it too", k.name)
		case forms[k.id] > 1:
			k.form = search.EveryForm
		}
		p.kept = append(p.kept, k)
		p.out[k.id] = true
	}
	if len(tired) > 0 {
		return &RestingError{Places: tired, Rest: p.plan.Rest}
	}
	return nil
}

// RestingError says which items of an earlier quiz can't be kept, as they were used in
// the weeks in which the plan lets items rest.
type RestingError struct {
	Places []string // as "A3"
	Rest   int      // weeks
}

func (e *RestingError) Error() string {
	return fmt.Sprintf("%s of the earlier quiz can't be kept: used in the last %s, they still rest (rest = %d in the plan); "+
		"replace them (--replace %s), keep others, or take a later week",
		strings.Join(e.Places, ", "), number(e.Rest, "week"), e.Rest, strings.Join(e.Places, ","))
}

// seatEarlier gives every item of the earlier quiz a row of the plan, the same on all forms
// for a shared one.
func (p *problem) seatEarlier(o Options) (all []kept, err error) {
	counts := make([]int, len(p.plan.Rows))
	for i, row := range p.plan.Rows {
		counts[i] = row.Count
	}
	rowOf := map[string]int{}
	for f := range p.forms {
		var form []kept
		var fits [][]int
		for _, s := range o.Earlier.Spots {
			if int(s.Form[0]-'A') != f {
				continue
			}
			own, err := p.earlierItem(s, o.Week)
			if err != nil {
				return nil, err
			}
			rows := own.rowsShown()
			if row, seated := rowOf[s.ID]; seated {
				rows = []int{row}
			}
			form, fits = append(form, kept{id: s.ID, name: s.Name(), pool: own, form: f, lastWeek: own.lastWeek}), append(fits, rows)
		}
		for i, row := range seats(fits, counts) {
			form[i].row = row
			if row >= 0 {
				rowOf[form[i].id] = row
			}
		}
		all = append(all, form...)
	}
	return all, nil
}

// rowsShown are those that the one item of a pool fits in a look it can take.
func (own *pool) rowsShown() (rows []int) {
	for i, f := range own.fits {
		if own.read[0].looks[i] != "" {
			rows = append(rows, f.row)
		}
	}
	return rows
}

// Forms is how many forms the quiz has.
func (e Earlier) Forms() int {
	names := map[string]bool{}
	for _, s := range e.Spots {
		names[s.Form] = true
	}
	return len(names)
}

// first is the quiz with its first forms only.
func (e Earlier) first(forms int) Earlier {
	e.Spots = slices.DeleteFunc(slices.Clone(e.Spots), func(s Spot) bool { return int(s.Form[0]-'A') >= forms })
	return e
}

// matchForms checks that the forms of the earlier quiz have the shape that the plan asks for. There will be as many
// unless more are asked for, which come behind them, or fewer, the first.
func (p *problem) matchForms(o Options) error {
	sizes, seen := map[string]int{}, map[string]bool{}
	for _, s := range o.Earlier.Spots {
		if s.Number < 1 || s.Number > p.plan.Size() || seen[s.Name()] {
			return words.Errorf("the earlier quiz has an item %s; the items of a form are numbered 1 to %d, each once", s.Name(), p.plan.Size())
		}
		if len(s.Form) != 1 || s.Form[0] < 'A' || int(s.Form[0]-'A') >= plan.MaxForms {
			return words.Errorf("the earlier quiz has a form %q; forms are A to %c", s.Form, 'A'+plan.MaxForms-1)
		}
		seen[s.Name()] = true
		sizes[s.Form]++
	}
	if o.Forms == 0 {
		p.forms = len(sizes)
	}
	for f := range len(sizes) {
		name := string(rune('A' + f))
		if sizes[name] != p.plan.Size() {
			return words.Errorf("form %s of the earlier quiz has %d items; the plan asks for %d", name, sizes[name], p.plan.Size())
		}
	}
	return nil
}

// earlierItem is a pool of one item of the earlier quiz.
func (p *problem) earlierItem(s Spot, week string) (*pool, error) {
	item, uses, last, err := p.usedItem(s.ID, week)
	if err != nil {
		return nil, words.Errorf("item %s of the earlier quiz: %w", s.Name(), err)
	}
	own, err := p.alone(item, uses)
	own.lastWeek = last
	return own, err
}

// usedItem is an item, how often it was used and when last, but for the week of the quiz:
// the quiz itself may be among the uses of that week.
func (p *problem) usedItem(id, week string) (item bank.Item, uses int, last string, err error) {
	if item, err = p.bank.Get(id); err != nil {
		return item, 0, "", err
	}
	list, err := p.bank.Uses(id)
	for _, use := range list {
		if week == "" || use.Week != week {
			uses, last = uses+1, max(last, use.Week)
		}
	}
	return item, uses, last, err
}

// alone makes a pool of one item.
func (p *problem) alone(item bank.Item, uses int) (*pool, error) {
	g := groupOf(item, uses)
	own := &pool{fits: p.fits(g), quotas: p.quotas(g), same: p.same(g), balances: p.balancesOf(g), difficulty: p.difficulty(g), uses: uses, size: 1}
	c, err := p.candidate(own, &g, bank.Member{ID: item.ID, Task: item.Task, Key: item.Key})
	own.read = []candidate{c}
	return own, err
}

// groupOf is the group of items that an item is one of.
func groupOf(item bank.Item, uses int) bank.Group {
	return bank.Group{
		Skill: item.Skill, Look: item.Look, Traits: item.Traits, Difficulty: item.Difficulty(),
		Seconds: item.Seconds, Uses: uses, ByHand: item.ByHand(), Size: 1,
	}
}

// earlierQuiz is the quiz that is changed, as far as its balance goes.
func (p *problem) earlierQuiz(o Options) (Quiz, error) {
	q := Quiz{ShareRight: p.plan.ShareRight, Ability: p.ability}
	for f := range o.Earlier.Forms() {
		form := Form{Name: string(rune('A' + f))}
		for _, s := range o.Earlier.Spots {
			if s.Form != form.Name {
				continue
			}
			item, uses, _, err := p.usedItem(s.ID, o.Week)
			if err != nil {
				return q, words.Errorf("item %s of the earlier quiz: %w", s.Name(), err)
			}
			if s.Look != "" {
				g := groupOf(item, uses)
				item.Look, item.Seconds = s.Look, shownFor(&g, s.Look)
			}
			form.Items = append(form.Items, Placed{Number: s.Number, Item: item, Uses: uses})
		}
		q.Forms = append(q.Forms, form)
	}
	return q, nil
}

// settle gives kept items their numbers back, and the new ones the numbers that
// came free, and notes the exchanges.
func (q *Quiz) settle(e Earlier) {
	for f := range q.Forms {
		form := &q.Forms[f]
		at := map[string]int{} // where the earlier items stood
		was := make([]string, len(form.Items)+1)
		for _, s := range e.Spots {
			if s.Form == form.Name {
				at[s.ID], was[s.Number] = s.Number, s.ID
			}
		}
		if len(at) == 0 {
			continue // a new one
		}
		settled := make([]Placed, len(form.Items))
		var fresh []Placed
		for _, placed := range form.Items {
			if n := at[placed.Item.ID]; n > 0 {
				settled[n-1] = placed
			} else {
				fresh = append(fresh, placed)
			}
		}
		for i := range settled {
			if settled[i].Item.ID == "" {
				settled[i], fresh = fresh[0], fresh[1:]
				q.Swaps = append(q.Swaps, Swap{form.Name, i + 1, was[i+1], settled[i].Item.ID})
			}
			settled[i].Number = i + 1
		}
		form.Items = settled
	}
}
