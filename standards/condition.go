package standards

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Condition is one wish about a trait, such as "regroups >= 1" or
// "crosses_100 = true".
type Condition struct {
	Trait task.Trait
	Op    string // one of = != < <= > >=
	Value string // as the trait would show it
}

// comparisons are the operators, the longer ones first so that they are found first.
var comparisons = []string{"!=", "<=", ">=", "=", "<", ">"}

// ParseCondition reads a condition. Spaces around the operator don't matter. The
// error names the nearest trait or the values that would be right.
func ParseCondition(text string) (Condition, error) {
	at, op := findComparison(text)
	if at < 0 {
		return Condition{}, words.Errorf("%q is not a condition; write a trait, one of = != < <= > >=, and a value, such as regroups >= 1", text)
	}
	name := strings.TrimSpace(text[:at])
	value := strings.TrimSpace(text[at+len(op):])
	names := traitNames()
	trait := slices.Index(names, name)
	if trait < 0 {
		rest := words.Sayf("; the traits are %s", strings.Join(names, ", "))
		return Condition{}, words.Errorf("no trait %q%s", name, words.SuggestOr(name, names, rest))
	}
	c := Condition{task.Conditions()[trait], op, value}
	return c, c.check()
}

func findComparison(text string) (at int, op string) {
	at = strings.IndexAny(text, "!<>=")
	if at < 0 {
		return -1, ""
	}
	for _, op := range comparisons {
		if strings.HasPrefix(text[at:], op) {
			return at, op
		}
	}
	return -1, ""
}

func (c Condition) check() error {
	equality := c.Op == "=" || c.Op == "!="
	switch kind, said := c.Trait.Values(); kind {
	case task.WholeNumber:
		if _, err := strconv.Atoi(c.Value); err != nil {
			return words.Errorf("%s is a whole number, not %q; write for example %s %s 1", c.Trait, c.Value, c.Trait.String(), c.Op)
		}
	case task.TrueOrFalse:
		if !equality || c.Value != "true" && c.Value != "false" {
			return words.Errorf("%s is true or false; write %s = true or %s = false", c.Trait, c.Trait.String(), c.Trait.String())
		}
	case task.OneWord, task.OrderedWords:
		if kind == task.OneWord && !equality {
			return words.Errorf("%s is a word; only = and != can be asked of it", c.Trait)
		}
		if said != nil && !slices.Contains(said, c.Value) {
			return words.Errorf("%s is one of %s, not %q%s", c.Trait, strings.Join(said, ", "), c.Value, words.Suggest(c.Value, said))
		}
	}
	return nil
}

// String is the condition as a plan writes it.
func (c Condition) String() string { return c.Trait.String() + " " + c.Op + " " + c.Value }

// Holds says whether the traits fulfil the condition. A trait that does not
// apply fulfils no condition but "!=".
func (c Condition) Holds(ts task.Traits) bool {
	value := ts.Get(c.Trait)
	switch {
	case c.Op == "=":
		return value == c.Value
	case c.Op == "!=":
		return value != c.Value
	case value == "":
		return false
	}
	have, _ := c.Trait.Number(value)
	want, _ := c.Trait.Number(c.Value)
	switch c.Op {
	case "<":
		return have < want
	case "<=":
		return have <= want
	case ">":
		return have > want
	default:
		return have >= want
	}
}

// Where is a list of conditions that must all hold.
type Where []Condition

// ParseWhere reads conditions, stopping at the first that is wrong.
func ParseWhere(texts []string) (Where, error) {
	var where Where
	for _, text := range texts {
		c, err := ParseCondition(text)
		if err != nil {
			return nil, err
		}
		where = append(where, c)
	}
	return where, nil
}

// Holds says whether every condition holds; an empty list always does.
func (w Where) Holds(ts task.Traits) bool {
	for _, c := range w {
		if !c.Holds(ts) {
			return false
		}
	}
	return true
}

// String joins the conditions with "and".
func (w Where) String() string {
	parts := make([]string, len(w))
	for i, c := range w {
		parts[i] = c.String()
	}
	return strings.Join(parts, " and ")
}

func traitNames() []string {
	var names []string
	for _, t := range task.Conditions() {
		names = append(names, t.String())
	}
	return names
}
