package desk

import (
	"slices"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Conditions read as words in every language, no two of them alike, and are understood as they read.
func TestConditionsInWords(t *testing.T) {
	p, err := loadPages()
	if err != nil {
		t.Fatal(err)
	}
	for _, lang := range languages {
		said, read := p.said(lang), map[string]string{}
		for _, trait := range task.Conditions() {
			kind, values := trait.Values()
			ops := []string{"=", "!="}
			switch {
			case kind == task.WholeNumber:
				values, ops = []string{"0", "1", "2", "30"}, allComparisons
			case kind == task.OrderedWords:
				ops = allComparisons
			case kind == task.TrueOrFalse:
				values, ops = []string{"true", "false"}, []string{"="}
			case values == nil:
				values = []string{"ones", "ones+tens", "read", "draw"}
			}
			for _, op := range ops {
				for _, value := range values {
					text := standards.Condition{Trait: trait, Op: op, Value: value}.String()
					words := said.InWords([]string{text})
					if strings.ContainsAny(words, "=<>_") {
						t.Errorf("%s in %s reads %q", text, lang, words)
					}
					if before := read[words]; before != "" {
						t.Errorf("%s: %s and %s both read %q", lang, before, text, words)
					}
					read[words] = text
					if got := p.conditionsTyped(words); len(got) != 1 || said.InWords(got) != words {
						t.Errorf("%s in %s, %q, is understood as %q", text, lang, words, got)
					}
				}
			}
		}
		typed := []string{"regroups >= 1", "largest <= 20", "situation = add-to result-unknown"}
		if got := p.conditionsTyped(said.InWords(typed)); !slices.Equal(got, typed) {
			t.Errorf("%q are understood as %q", said.InWords(typed), got)
		}
	}
	for typed, want := range map[string]string{
		"at least one regrouping": "regroups >= 1", "al menos una reagrupación; número mayor como máximo 20": "regroups >= 1|largest <= 20",
		"regroups>=1, digits = 2": "regroups>=1|digits = 2", "": "", " , ": "", "sin reagrupar": "regroups = 0", "three hats": "three hats",
		"Regroups >= 1; more than 12 regroupings": "Regroups >= 1|regroups > 12",
	} {
		if got := strings.Join(p.conditionsTyped(typed), "|"); got != want {
			t.Errorf("%q is understood as %q, want %q", typed, got, want)
		}
	}
}

// Tasks whose words stand in the table are read in Spanish, whole; no phrase stands there for nothing.
func TestTasksInSpanish(t *testing.T) {
	p, err := loadPages()
	if err != nil {
		t.Fatal(err)
	}
	es := p.said("es")
	for typed, want := range map[string]string{
		"read 4:30": "leer 4:30", "142 = ? hundreds ? tens ? ones": "142 = ? centenas ? decenas ? unidades", "47 + 36 = ?": "47 + 36 = ?",
		"10 more than 47 = ?": "10 más que 47 = ?", "true or false: 7 = 8 - 1": "verdadero o falso: 7 = 8 - 1", "odd or even: 14 dots": "par o impar: 14 puntos",
		"what is it?": "what is it?", "corners of: square": "corners of: square", "bars 5, 8: which is longer": "barras 5, 8: cuál es más larga",
	} {
		if got := es.Asks(typed); got != want {
			t.Errorf("%s reads %q, want %q", typed, got, want)
		}
	}
	used := map[string]bool{}
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 40, Seed: 3})
		if err != nil {
			t.Fatal(err)
		}
		for _, asked := range made.Tasks {
			if text := asked.String(); es.Asks(text) != text {
				for phrase := range spanishNotation().said {
					used[phrase] = used[phrase] || strings.Contains(text, phrase)
				}
			}
		}
	}
	for phrase := range spanishNotation().said {
		if !used[phrase] {
			t.Errorf("no task has %q", phrase)
		}
	}
}

// Every word that a trait of a generated item takes has its own in both languages.
func TestTraitsInWords(t *testing.T) {
	p, err := loadPages()
	if err != nil {
		t.Fatal(err)
	}
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 100, Seed: 3})
		if err != nil {
			t.Fatal(err)
		}
		for _, asked := range made.Tasks {
			traits := asked.Traits()
			for _, trait := range task.AllTraits() {
				value := traits.Get(trait)
				if kind, _ := trait.Values(); kind == task.WholeNumber || value == "" {
					continue
				}
				for _, lang := range languages {
					if _, ok := p.said(lang).text["value."+value]; !ok {
						t.Errorf("%s: %s is %q, which has no words in %s", asked, trait, value, lang)
					}
				}
			}
		}
	}
}
