package assemble

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Balance shows side by side what the forms of a quiz hold.
type Balance struct {
	Forms  []string // names
	Lines  []Line   // skills by band, regroupings, crossings, clock steps, means, minutes, distance from the mark
	Traits []Line   // for every trait, the items with the value in which the forms differ most
}

// Line is one figure of every form.
type Line struct {
	Name     string
	Values   []float64 // one a form
	Decimals int       // how many are worth showing
}

// Difference is the largest difference between two forms.
func (l Line) Difference() float64 { return slices.Max(l.Values) - slices.Min(l.Values) }

// Names of the lines that programs look for.
const (
	LineWeaker   = "points that a weaker pupil can expect"
	LineTypical  = "points that a typical pupil can expect"
	LineStronger = "points that a stronger pupil can expect"
	LineMinutes  = "minutes"
	LineUses     = "earlier uses"
)

// BalanceOf compares the forms of a quiz.
func BalanceOf(q Quiz) Balance {
	b := Balance{}
	for _, form := range q.Forms {
		b.Forms = append(b.Forms, form.Name)
	}
	if len(q.Forms) == 0 {
		return b
	}
	for _, skill := range standards.Catalogue() {
		for _, band := range standards.Bands() {
			b.ifAny(fmt.Sprintf("%s, %s", skill.ID, band), q, func(it bank.Item) bool {
				return it.Skill == skill.ID && q.Difficulty(it).Band() == band
			})
		}
	}
	b.line("regroupings", 0, q, total(func(p Placed) float64 { return traitNumber(p, task.Regroups) }))
	b.line("crossings of 100", 0, q, total(func(p Placed) float64 { return traitNumber(p, task.Crosses100) }))
	b.hundreds(q)
	for _, step := range valuesOf(q, task.ClockStep) {
		b.ifAny("clock to the "+step, q, func(it bank.Item) bool { return it.Traits.Get(task.ClockStep) == step })
	}
	if len(q.Diagnose) > 0 {
		b.line(tellName(q.Diagnose), 0, q, total(func(p Placed) float64 {
			if asked, err := task.Parse(p.Item.Task); err == nil && tells(asked, p.Item.Look, q.Diagnose) {
				return 1
			}
			return 0
		}))
	}
	for t, name := range []string{LineWeaker, LineTypical, LineStronger} {
		b.line(name, 2, q, func(form Form) float64 { return float64(form.score(q.Ability)[t]) / 1000 })
	}
	b.line(LineMinutes, 1, q, total(func(p Placed) float64 { return float64(p.Item.Seconds) / 60 }))
	b.line(LineUses, 0, q, total(func(p Placed) float64 { return float64(p.Uses) }))
	b.traits(q)
	return b
}

// hundreds counts within which hundred the items stand, if any is beyond the first.
func (b *Balance) hundreds(q Quiz) {
	found := valuesOf(q, task.Hundred)
	if len(found) == 0 || len(found) == 1 && found[0] == "1" {
		return
	}
	slices.SortFunc(found, func(a, b string) int { return cmp.Or(len(a)-len(b), strings.Compare(a, b)) })
	for _, hundred := range found {
		last, _ := task.Hundred.Number(hundred + "00")
		name := fmt.Sprintf("numbers from %d to %d", last-99, last)
		if last == 100 {
			name = "numbers to 100"
		}
		b.ifAny(name, q, func(it bank.Item) bool { return it.Traits.Get(task.Hundred) == hundred })
	}
}

func (b *Balance) line(name string, decimals int, q Quiz, figure func(Form) float64) {
	l := Line{Name: name, Decimals: decimals}
	for _, form := range q.Forms {
		l.Values = append(l.Values, figure(form))
	}
	b.Lines = append(b.Lines, l)
}

// ifAny adds a line that counts items, unless there are none.
func (b *Balance) ifAny(name string, q Quiz, counts func(bank.Item) bool) {
	if l := countLine(name, q, counts); slices.Max(l.Values) > 0 {
		b.Lines = append(b.Lines, l)
	}
}

func countLine(name string, q Quiz, counts func(bank.Item) bool) Line {
	l := Line{Name: name}
	for _, form := range q.Forms {
		n := 0
		for _, p := range form.Items {
			if counts(p.Item) {
				n++
			}
		}
		l.Values = append(l.Values, float64(n))
	}
	return l
}

// traits finds for every trait the value in which the forms differ most, of several
// the last (true rather than false); for the
// largest number, which has hundreds of values, it compares means.
func (b *Balance) traits(q Quiz) {
	for _, t := range task.AllTraits() {
		values := valuesOf(q, t)
		if len(values) == 0 {
			continue
		}
		if !balanced(t) {
			l := Line{Name: "mean of " + t.String(), Decimals: 1}
			for _, form := range q.Forms {
				l.Values = append(l.Values, mean(func(p Placed) float64 { return traitNumber(p, t) })(form))
			}
			b.Traits = append(b.Traits, l)
			continue
		}
		var worst Line
		for i, value := range values {
			l := countLine(t.String()+" = "+value, q, func(it bank.Item) bool { return it.Traits.Get(t) == value })
			if i == 0 || l.Difference() >= worst.Difference() {
				worst = l
			}
		}
		b.Traits = append(b.Traits, worst)
	}
}

// valuesOf lists the values that a trait takes in a quiz.
func valuesOf(q Quiz, t task.Trait) []string {
	seen := map[string]bool{}
	for _, form := range q.Forms {
		for _, p := range form.Items {
			if value := p.Item.Traits.Get(t); value != "" {
				seen[value] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

func traitNumber(p Placed, t task.Trait) float64 {
	n, _ := p.Item.Traits.Number(t)
	return float64(n)
}

func total(of func(Placed) float64) func(Form) float64 {
	return func(form Form) float64 {
		sum := 0.0
		for _, p := range form.Items {
			sum += of(p)
		}
		return sum
	}
}

func mean(of func(Placed) float64) func(Form) float64 {
	return func(form Form) float64 { return total(of)(form) / float64(len(form.Items)) }
}

// score is what pupils can expect of a form, in thousandths of a point.
func (f Form) score(ability int) search.Points {
	var score search.Points
	for _, placed := range f.Items {
		for t, p := range expected(difficultyFor(placed.Item, ability)) {
			score[t] += p
		}
	}
	return score
}

// Table is the balance in rows of cells, the heading first: a name, the forms,
// and with more than one form their largest difference.
func (b Balance) Table() [][]string {
	heading := []string{""}
	for _, name := range b.Forms {
		heading = append(heading, "form "+name)
	}
	if len(b.Forms) > 1 {
		heading = append(heading, "difference")
	}
	table := [][]string{heading}
	for _, l := range slices.Concat(b.Lines, b.Traits) {
		row := []string{l.Name}
		for _, v := range l.Values {
			row = append(row, l.show(v))
		}
		if len(b.Forms) > 1 {
			row = append(row, l.show(l.Difference()))
		}
		table = append(table, row)
	}
	return table
}

func (l Line) show(v float64) string { return fmt.Sprintf("%.*f", l.Decimals, v) }

// Changes says what is different in a later balance of the same forms, a figure
// of a form in each entry: "form A, regroupings: 4, now 5".
func (b Balance) Changes(later Balance) []string {
	var names []string
	before, after := b.byName(&names), later.byName(&names)
	var changes []string
	for f, form := range b.Forms {
		for _, name := range names {
			was, now := before[name].at(f), after[name].at(f)
			if was != now && f < len(later.Forms) {
				changes = append(changes, fmt.Sprintf("form %s, %s: %s, now %s", form, name, was, now))
			}
		}
	}
	return changes
}

// byName finds the lines that are about the forms as they are, and adds their
// names to those known.
func (b Balance) byName(names *[]string) map[string]Line {
	lines := map[string]Line{}
	for _, l := range b.Lines {
		lines[l.Name] = l
		if !slices.Contains(*names, l.Name) {
			*names = append(*names, l.Name)
		}
	}
	return lines
}

// at is the figure of a form as it is shown; a line that isn't there shows 0.
func (l Line) at(form int) string {
	if form >= len(l.Values) {
		return "0"
	}
	return l.show(l.Values[form])
}
