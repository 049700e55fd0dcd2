package assemble_test

import (
	"fmt"
	"math"
	"slices"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// broken checks a quiz against its plan and its bank, rule by rule, in its own
// plain way: it knows nothing of the search. It returns the first broken rule,
// or nothing.
func broken(b *bank.Bank, plan plan.Plan, o assemble.Options, q assemble.Quiz) error {
	forms := plan.Forms
	if o.Forms != 0 {
		forms = o.Forms
	}
	if len(q.Forms) != forms {
		return fmt.Errorf("%d forms instead of %d", len(q.Forms), forms)
	}
	for _, form := range q.Forms {
		if err := brokenForm(b, plan, o, q, form); err != nil {
			return fmt.Errorf("form %s: %w", form.Name, err)
		}
	}
	if err := brokenSharing(plan, q); err != nil {
		return err
	}
	if err := brokenSame(plan, q); err != nil {
		return err
	}
	return wrongFigures(plan, o, q)
}

func brokenForm(b *bank.Bank, plan plan.Plan, o assemble.Options, q assemble.Quiz, form assemble.Form) error {
	if len(form.Items) != plan.Size() {
		return fmt.Errorf("%d items instead of %d", len(form.Items), plan.Size())
	}
	seconds := 0
	for i, placed := range form.Items {
		if placed.Number != i+1 {
			return fmt.Errorf("item %d has number %d", i+1, placed.Number)
		}
		if err := brokenItem(b, plan, o, placed.Item); err != nil {
			return fmt.Errorf("item %d (%s): %w", i+1, placed.Item.Task, err)
		}
		for _, other := range form.Items[:i] {
			if clash(placed.Item, other.Item) {
				return fmt.Errorf("%s and %s clash", placed.Item.Task, other.Item.Task)
			}
		}
		seconds += placed.Item.Seconds
	}
	if plan.Minutes > 0 && seconds > 60*plan.Minutes {
		return fmt.Errorf("%d seconds don't fit %d minutes", seconds, plan.Minutes)
	}
	for _, band := range plan.Bands {
		n := count(form, func(it bank.Item) bool {
			return bandAt(1/(1+math.Exp(onScale(it)-float64(levelOf(plan, o))/1000))) == band.Band
		})
		if n < band.AtLeast || n > band.AtMost {
			return fmt.Errorf("%d %s items", n, band.Band)
		}
	}
	for _, quota := range plan.Quotas {
		n := count(form, func(it bank.Item) bool { return quota.Where.Holds(it.Traits) })
		if n < quota.AtLeast || n > quota.AtMost {
			return fmt.Errorf("%d items with %s", n, quota.Where)
		}
	}
	if err := oneAnswerTooOften(form); err != nil {
		return err
	}
	if !rowsMet(plan, form.Items, make([]int, len(plan.Rows))) {
		return fmt.Errorf("the rows are not met")
	}
	return nil
}

// oneAnswerTooOften looks for an answer that more than two thirds, rounded up, of the
// items of a skill have that offer the same few.
func oneAnswerTooOften(form assemble.Form) error {
	all, keys := map[standards.SkillID]int{}, map[[2]string]int{}
	for _, placed := range form.Items {
		if it := placed.Item; it.Task != "" && task.FixedAnswers(task.MustParse(it.Task)) != nil {
			all[it.Skill]++
			keys[[2]string{string(it.Skill), it.Key}]++
		}
	}
	for key, n := range keys {
		if most := int(math.Ceil(float64(all[standards.SkillID(key[0])]) * 2 / 3)); n > most {
			return fmt.Errorf("%d times %s among %d of %s", n, key[1], all[standards.SkillID(key[0])], key[0])
		}
	}
	return nil
}

// brokenSame checks that every form holds as many items as the first of each kind
// that the plan wants alike.
func brokenSame(plan plan.Plan, q assemble.Quiz) error {
	for _, same := range plan.Same {
		for _, form := range q.Forms {
			holds := func(it bank.Item) bool { return same.Holds(it.Traits) }
			if a, b := count(q.Forms[0], holds), count(form, holds); a != b {
				return fmt.Errorf("form %s holds %d items with %v, form A %d", form.Name, b, same, a)
			}
		}
	}
	return nil
}

func count(form assemble.Form, counts func(bank.Item) bool) int {
	n := 0
	for _, placed := range form.Items {
		if counts(placed.Item) {
			n++
		}
	}
	return n
}

// brokenItem checks an item by itself: it is in the bank, ready, rested, and
// shown as its task can be.
func brokenItem(b *bank.Bank, asked plan.Plan, o assemble.Options, it bank.Item) error {
	kept, err := b.Get(it.ID)
	if err != nil {
		return err
	}
	if kept.Task != it.Task || kept.Key != it.Key || kept.Standing != bank.Ready {
		return fmt.Errorf("the bank has %+v", kept)
	}
	if it.Task != "" && !slices.Contains(task.MustParse(it.Task).Looks(), it.Look) {
		return fmt.Errorf("it can't be shown as %s", it.Look)
	}
	if it.Task != "" && it.Seconds != standards.Seconds(it.Skill, it.Look) {
		return fmt.Errorf("%d seconds as %s", it.Seconds, it.Look)
	}
	uses, err := b.Uses(it.ID)
	if err != nil {
		return err
	}
	for _, use := range uses {
		for back := 0; back <= asked.Rest && asked.Rest > 0; back++ {
			week, err := plan.ParseWeek(o.Week)
			if err != nil {
				return err
			}
			if week.Monday().AddDate(0, 0, -7*back).Equal(mustWeek(use.Week).Monday()) {
				return fmt.Errorf("it was used in %s", use.Week)
			}
		}
	}
	return nil
}

func mustWeek(text string) plan.Week {
	w, err := plan.ParseWeek(text)
	if err != nil {
		panic(err)
	}
	return w
}

// clash says that two items may not stand in one form. Of the keys of items that offer their
// answers it says nothing: oneAnswerTooOften does.
func clash(a, b bank.Item) bool {
	alike := a.Skill == b.Skill && a.Key == b.Key
	if a.Task == "" || b.Task == "" {
		return alike
	}
	if alike && task.FixedAnswers(task.MustParse(a.Task)) == nil {
		return true
	}
	others := task.MustParse(b.Task).Clashes()
	return slices.ContainsFunc(task.MustParse(a.Task).Clashes(), func(name string) bool { return slices.Contains(others, name) })
}

// rowsMet tries every way to give the items to rows that they fit.
func rowsMet(plan plan.Plan, items []assemble.Placed, filled []int) bool {
	if len(items) == 0 {
		return true
	}
	for i, row := range plan.Rows {
		it := items[0].Item
		fits := row.Skill == it.Skill && row.Where.Holds(it.Traits) && (len(row.Looks) == 0 || slices.Contains(row.Looks, it.Look))
		if !fits || filled[i] == row.Count {
			continue
		}
		filled[i]++
		if rowsMet(plan, items[1:], filled) {
			return true
		}
		filled[i]--
	}
	return false
}

// brokenSharing checks that an item stands in one form only, or, for as many as
// the plan shares, in every form.
func brokenSharing(plan plan.Plan, q assemble.Quiz) error {
	forms := map[string]int{}
	for _, form := range q.Forms {
		for _, placed := range form.Items {
			forms[placed.Item.ID]++
		}
	}
	shared := 0
	for id, n := range forms {
		if n != 1 && n != len(q.Forms) {
			return fmt.Errorf("item %s stands in %d of %d forms", id, n, len(q.Forms))
		}
		if n > 1 {
			shared++
		}
	}
	if len(q.Forms) > 1 && shared != plan.Shared {
		return fmt.Errorf("%d items are shared, not %d", shared, plan.Shared)
	}
	return nil
}

// levelOf is the ability of the typical pupil in thousandths of a logit: of the class, the
// grade, or the highest grade among the rows.
func levelOf(plan plan.Plan, o assemble.Options) int {
	if o.Ability != nil {
		return *o.Ability
	}
	grade := map[string]int{"K": 0, "1": 1, "2": 2}[plan.Grade]
	for _, row := range plan.Rows {
		if skill, _ := standards.Catalogue().Skill(row.Skill); plan.Grade == "" {
			grade = max(grade, skill.Grade)
		}
	}
	return int(standards.Level(grade))
}

// onScale is the difficulty of an item in logits on the one scale of all grades.
func onScale(it bank.Item) float64 {
	skill, _ := standards.Catalogue().Skill(it.Skill)
	return it.Difficulty().Logits() + standards.Level(skill.Grade).Logits()
}

// bandAt is the band of a share right by the definition of bands, give or take the rounding of
// its limits to thousandths of a logit.
func bandAt(right float64) standards.Band {
	switch {
	case right >= .85-1e-4:
		return standards.WarmUp
	case right < .65-1e-5:
		return standards.Stretch
	}
	return standards.Core
}

// figures works out what misses the mark, what lies apart, uses and objective from
// the formulas of the house plan, in floating point and hundredths of a point.
func figures(plan plan.Plan, o assemble.Options, q *assemble.Quiz) {
	level := levelOf(plan, o)
	n, points := float64(plan.Size()), 0
	seen := map[string]bool{}
	q.UsesSum, q.Off, q.Uneven = 0, nil, [3]int{}
	for f := range q.Forms {
		q.Forms[f].Scores = [3]int{}
		for _, placed := range q.Forms[f].Items {
			for t := range 3 {
				theta := float64(level+1000*t-1000) / 1000
				right := 1 / (1 + math.Exp(onScale(placed.Item)-theta))
				q.Forms[f].Scores[t] += int(math.Round(1000 * right))
			}
			if !seen[placed.Item.ID] {
				q.UsesSum += placed.Uses
				seen[placed.Item.ID] = true
			}
		}
		miss := math.Abs(float64(q.Forms[f].Scores[1])/10-float64(plan.ShareRight)*n) - n
		q.Off = append(q.Off, int(math.Ceil(max(0, miss)-1e-9)))
		points += q.Off[f]
	}
	for t := range 3 {
		apart := 0
		for _, a := range q.Forms {
			for _, b := range q.Forms {
				apart = max(apart, a.Scores[t]-b.Scores[t])
			}
		}
		q.Uneven[t] = int(math.Ceil(max(0, float64(apart)/10-n/2) - 1e-9))
		points += len(q.Forms) * q.Uneven[t]
	}
	q.Objective = 1000*points + q.UsesSum
}

func wrongFigures(plan plan.Plan, o assemble.Options, q assemble.Quiz) error {
	right := q
	right.Forms = slices.Clone(q.Forms)
	figures(plan, o, &right)
	if !slices.Equal(right.Off, q.Off) || right.Uneven != q.Uneven || right.UsesSum != q.UsesSum || right.Objective != q.Objective {
		return fmt.Errorf("off %v, uneven %v, uses %d, objective %d are said, %v, %v, %d, %d are true",
			q.Off, q.Uneven, q.UsesSum, q.Objective, right.Off, right.Uneven, right.UsesSum, right.Objective)
	}
	for f := range q.Forms {
		if q.Forms[f].Scores != right.Forms[f].Scores {
			return fmt.Errorf("form %s: scores %v are said, %v are true", q.Forms[f].Name, q.Forms[f].Scores, right.Forms[f].Scores)
		}
	}
	if q.Bound > q.Objective || q.Proved != (q.Bound == q.Objective) {
		return fmt.Errorf("bound %d, objective %d, proved %t", q.Bound, q.Objective, q.Proved)
	}
	return nil
}
