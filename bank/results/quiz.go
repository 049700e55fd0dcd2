package results

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"evenhand/standards"
	"evenhand/standards/task"
)

// The names in the tags below are those of the stored files.

// Quiz is a quiz as it was given. Make it with NewQuiz.
type Quiz struct {
	ID    string `json:"ID"` // follows from all the rest but the title and make-up forms
	Title string `json:"Title"`
	Week  string `json:"Week"` // ISO week, such as 2026-W48
	Forms []Form `json:"Forms"`
}

// Form is one form of a quiz, its items in the order of the sheet.
type Form struct {
	Name  string `json:"Name"` // "A", "B", ...
	Items []Item `json:"Items"`

	MakeUp bool `json:"MakeUp,omitempty"` // it was added for pupils who were absent
}

// Item is an item as it stood in the quiz.
type Item struct {
	ID         string               `json:"ID"` // in the bank
	Skill      standards.SkillID    `json:"Skill"`
	Codes      []task.Code          `json:"Codes"`
	Asks       string               `json:"Asks"` // the task, or the question of an item by hand
	Key        string               `json:"Key"`
	Difficulty standards.Difficulty `json:"Difficulty"` // by which the quiz was assembled

	Look task.Look `json:"-"` // how it was shown, where that is known: with the quiz, not with its papers
}

// NewQuiz makes a quiz and its ID: the same week and items give the same quiz,
// whatever it is called.
func NewQuiz(title, week string, forms []Form) Quiz {
	sum := sha256.Sum256(idText(week, forms))
	return Quiz{ID: hex.EncodeToString(sum[:8]), Title: title, Week: week, Forms: forms}
}

// idText is what a quiz's ID is the hash of: this very JSON, in this order of fields, whatever
// else is kept of a quiz. Papers hang on it, so it can never change.
func idText(week string, forms []Form) []byte {
	type item struct {
		ID         string      `json:"ID"`
		Skill      string      `json:"Skill"`
		Codes      []task.Code `json:"Codes"`
		Asks       string      `json:"Asks"`
		Key        string      `json:"Key"`
		Difficulty int         `json:"Difficulty"`
	}
	type form struct {
		Name   string `json:"Name"`
		Items  []item `json:"Items"`
		MakeUp bool   `json:"MakeUp,omitempty"`
	}
	content := struct {
		Week  string `json:"Week"`
		Forms []form `json:"Forms"`
	}{week, nil}
	if forms != nil {
		content.Forms = []form{}
	}
	for _, f := range forms {
		next := form{Name: f.Name, MakeUp: f.MakeUp}
		if f.Items != nil {
			next.Items = []item{}
		}
		for _, it := range f.Items {
			next.Items = append(next.Items, item{it.ID, string(it.Skill), it.Codes, it.Asks, it.Key, int(it.Difficulty)})
		}
		content.Forms = append(content.Forms, next)
	}
	text, err := json.Marshal(content)
	if err != nil { // strings and numbers always have a JSON form
		panic(err)
	}
	return text
}

// With is the quiz with make-up forms, whose papers count with it; of a form's name only the first
// stands. Its ID stays.
func (q Quiz) With(forms []Form) Quiz {
	q.Forms = slices.Clone(q.Forms)
	for _, form := range forms {
		if _, there := q.Form(form.Name); !there {
			form.MakeUp = true
			q.Forms = append(q.Forms, form)
		}
	}
	return q
}

// Form finds a form by its name, capitals or not, with or without the word "form".
func (q Quiz) Form(name string) (Form, bool) {
	name = strings.TrimSpace(strings.TrimPrefix(fold(name), "form"))
	for _, form := range q.Forms {
		if fold(form.Name) == name {
			return form, true
		}
	}
	return Form{}, false
}

// FormNames lists the forms.
func (q Quiz) FormNames() []string {
	names := make([]string, len(q.Forms))
	for i, form := range q.Forms {
		names[i] = form.Name
	}
	return names
}

// Size is the number of items of the longest form.
func (q Quiz) Size() int {
	n := 0
	for _, form := range q.Forms {
		n = max(n, len(form.Items))
	}
	return n
}

// Name is the quiz in a few words: its title and, unless that tells it, its week.
func (q Quiz) Name() string {
	if q.Week == "" {
		return q.Title
	}
	return fmt.Sprintf("%s (%s)", q.Title, q.Week)
}

// Task is the item's mathematics; ok is false for an item by hand.
func (it Item) Task() (asked task.Task, ok bool) {
	asked, err := task.Parse(it.Asks)
	return asked, err == nil && asked.Judge(it.Key)
}

// Judge says whether a written answer is right: as the item's task allows, and
// for an item by hand when it is the key, whatever its spaces and capitals, or the letter of
// the choice that is the key, or that choice itself.
func (it Item) Judge(written string) bool {
	if asked, ok := it.Task(); ok {
		return asked.Judge(written)
	}
	right := it.choice(it.Key)
	return fold(written) == fold(it.Key) || right >= 0 && it.choice(written) == right
}

// choice is the place of the choice that a text names, by its letter or its words; -1 for none.
func (it Item) choice(text string) int {
	text = fold(text)
	named := -1
	for i, m := range lettered.FindAllStringSubmatch(it.Asks, -1) {
		letter, words := fold(m[1]), fold(m[2])
		if text == letter || text == letter+")" {
			return i
		}
		if named < 0 && (text == words || text == letter+") "+words) {
			named = i
		}
	}
	return named
}

// lettered is a choice of a question by hand, as an import writes it below the question.
var lettered = regexp.MustCompile(`(?m)^([A-H])\) (.+)$`)

// fold makes texts equal that differ in spaces, capitals or a full stop only.
func fold(text string) string {
	text = strings.ToLower(norm.NFKC.String(text))
	return strings.TrimRight(strings.Join(strings.Fields(text), " "), " .")
}
