package desk

import (
	"html/template"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
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
		options.WriteString(optionValue(s.condition(c)) + "></option>")
	}
	return template.HTML(options.String()), nil
}

// InWords are conditions as a person reads and may type them, in templates; what is none stays as it was typed.
func (s sentences) InWords(texts []string) string {
	var parts []string
	for _, text := range texts {
		c, err := standards.ParseCondition(text)
		kind, _ := c.Trait.Values()
		if _, known := s.text["value."+c.Value]; err == nil && (known || kind == task.WholeNumber) {
			text = s.condition(c)
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

// where is what conditions ask of an item's traits, in words.
func (s sentences) where(w standards.Where) string {
	var parts []string
	for _, c := range w {
		parts = append(parts, s.condition(c))
	}
	return strings.Join(parts, ", ")
}

// condition is one of them, such as "at least one regrouping".
func (s sentences) condition(c standards.Condition) string {
	name, amount := c.Trait.String(), ""
	if c.Op != "=" {
		amount = s.say("op."+c.Op) + " "
	}
	switch kind, _ := c.Trait.Values(); kind {
	case task.WholeNumber:
		n, _ := strconv.Atoi(c.Value)
		if none, ok := s.text["number."+name+".none"]; ok && n == 0 && c.Op == "=" {
			return none
		}
		return s.say(forNumber("number."+name, n), amount, n)
	case task.TrueOrFalse:
		if (c.Value == "true") == (c.Op == "=") {
			return s.say("trait." + name)
		}
		return s.say("trait." + name + ".not")
	}
	return s.say("trait."+name) + ": " + amount + s.value(c.Value)
}

// value is a trait's value in words; a word that is none of the listed stays.
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

// conditionsTyped are the conditions that a text holds, as plans write them: behind each other with ; or , between,
// typed in the words of a language or as plans write them. What is none stays as it was typed.
func (p *pages) conditionsTyped(text string) (list []string) {
	between := ","
	whole := func() bool { _, called := p.conditionCalled(text); return called }
	if strings.Contains(text, ";") || strings.Contains(text, ",") && whole() {
		between = ";" // words may have a comma
	}
	for part := range strings.SplitSeq(text, between) {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		if c, ok := p.conditionCalled(part); ok {
			part = c.String()
		}
		list = append(list, part)
	}
	return list
}

// conditionCalled finds the condition that is called so in one of the languages.
func (p *pages) conditionCalled(text string) (found standards.Condition, ok bool) {
	text = words.Plain(text)
	if found, ok = p.called[text]; ok {
		return found, ok
	}
	for _, c := range p.shaped[shape(text)] {
		for _, c.Value = range append(digits.FindAllString(text, -1), "0", "1") {
			if slices.Contains(p.callings(c), text) {
				found, ok = c, true
			}
		}
	}
	return found, ok
}

// findCalled fills the tables that conditions are found by.
func (p *pages) findCalled() {
	p.called, p.shaped = map[string]standards.Condition{}, map[string][]standards.Condition{}
	for _, c := range p.conditionsOn(nil) {
		for _, text := range p.callings(c) {
			p.called[text] = c
		}
	}
	for _, c := range p.conditionsOn([]string{"0", "1", "2"}) { // none, one and many
		for _, text := range p.callings(c) {
			at, any := shape(text), standards.Condition{Trait: c.Trait, Op: c.Op}
			if !slices.Contains(p.shaped[at], any) {
				p.shaped[at] = append(p.shaped[at], any)
			}
		}
	}
}

// shape is a text with one sign for every number.
func shape(text string) string { return digits.ReplaceAllString(text, "#") }

// callings are what a condition is called in each language.
func (p *pages) callings(c standards.Condition) (list []string) {
	for _, lang := range languages {
		list = append(list, words.Plain(p.said(lang).condition(c)))
	}
	return list
}

// conditionsOn are the conditions on numbers with the given ones, or without any those on words.
func (p *pages) conditionsOn(numbers []string) (list []standards.Condition) {
	for _, trait := range task.Conditions() {
		kind, values := trait.Values()
		if (kind == task.WholeNumber) != (numbers != nil) {
			continue
		}
		ops := allComparisons
		switch {
		case kind == task.WholeNumber:
			values = numbers
		case kind == task.TrueOrFalse:
			values, ops = []string{"true"}, ops[:2]
		case values == nil:
			values, ops = p.values(), ops[:2]
		case kind == task.OneWord:
			ops = ops[:2]
		}
		for _, op := range ops {
			for _, value := range values {
				list = append(list, standards.Condition{Trait: trait, Op: op, Value: value})
			}
		}
	}
	return list
}

// values are all values of traits that have words of their own.
func (p *pages) values() (list []string) {
	for key := range p.said("en").text {
		if value, ok := strings.CutPrefix(key, "value."); ok {
			list = append(list, value)
		}
	}
	return list
}

var (
	digits         = regexp.MustCompile(`\d+`)
	allComparisons = []string{"=", "!=", "<", "<=", ">", ">="}
)
