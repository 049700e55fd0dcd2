package desk

import (
	"html/template"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// usualConditions are what plans usually ask of traits that are numbers, to choose from.
var usualConditions = []string{
	"regroups = 0", "regroups = 1", "regroups = 2", "regroups >= 1", "digits = 1", "digits = 2", "digits = 3",
	"largest <= 10", "largest <= 20", "largest <= 100", "addends = 3", "addends = 4",
	"hundred = 2", "hundred = 3", "hundred = 4", "hundred = 5", "hundred = 6", "hundred = 7", "hundred = 8", "hundred = 9", "hundred = 10",
	"step = 1", "step = 2", "step = 5", "step = 10", "step = 100", "count_steps <= 3", "apart <= 3",
}

// Conditions are the options of conditions to choose from, in templates.
func (s sentences) Conditions() template.HTML { return s.conditions }

func (s sentences) conditionOptions() (template.HTML, error) {
	texts := usualConditions
	for _, trait := range task.AllTraits() {
		kind, values := trait.Values()
		if kind == task.TrueOrFalse {
			values = []string{"true", "false"}
		}
		for _, value := range values {
			texts = append(texts, trait.String()+" = "+value)
		}
	}
	var options strings.Builder
	for _, text := range texts {
		c, err := standards.ParseCondition(text)
		if err != nil {
			return "", err
		}
		options.WriteString(optionValue(text) + ` label="` + template.HTMLEscapeString(s.condition(c)) + `"></option>`)
	}
	return template.HTML(options.String()), nil
}

// comparisons are the signs of conditions as people write them.
var comparisons = map[string]string{"=": ":", "!=": " ≠", "<": " <", "<=": " ≤", ">": " >", ">=": " ≥"}

// where is what conditions ask of an item's traits, in words.
func (s sentences) where(w standards.Where) string {
	var parts []string
	for _, c := range w {
		parts = append(parts, s.condition(c))
	}
	return strings.Join(parts, ", ")
}

// condition is one of them, such as "regroupings ≥ 1".
func (s sentences) condition(c standards.Condition) string {
	return s.say("trait."+c.Trait.String()) + comparisons[c.Op] + " " + s.value(c.Value)
}

// value is a trait's value in words; a number, or a word that is none of the listed, stays.
func (s sentences) value(of string) string {
	if said, ok := s.text["value."+of]; ok {
		return said
	}
	return of
}

// Traits are an item's traits in words, in templates.
func (s sentences) Traits(ts task.Traits) (list []string) {
	for _, trait := range task.AllTraits() {
		if value := ts.Get(trait); value != "" {
			list = append(list, s.condition(standards.Condition{Trait: trait, Op: "=", Value: value}))
		}
	}
	return list
}
