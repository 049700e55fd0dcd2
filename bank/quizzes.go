package bank

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Quizzes are kept as they were given, with all that is needed to print and to mark them again.

const quizzesBucket = "quizzes"

// Quiz is a quiz as it was given. It never changes; one that is made from it is another quiz.
type Quiz struct {
	ID    string `json:"id"` // follows from the week and the items in their places
	Title string `json:"title"`
	Week  string `json:"week"`            // ISO week, such as 2026-W48
	Class string `json:"class,omitempty"` // for whom; empty for the whole grade

	Plan       string `json:"plan,omitempty"`        // the text of its plan
	PacingWeek int    `json:"pacing_week,omitempty"` // from 1, where the text is a pacing list: which of its weeks
	From       string `json:"from,omitempty"`        // ID of the quiz that it was started from
	MakeUp     string `json:"make_up,omitempty"`     // ID of the quiz whose absent pupils it is for
	Seed       uint64 `json:"seed,string"`

	Printed *Printed `json:"printed,omitempty"` // how its sheets were printed; nil where nobody noted it

	ShareRight int    `json:"share_right"` // the mark aimed at, in 100
	Level      int    `json:"level"`       // ability of the typical pupil, thousandths of a logit
	Off        []int  `json:"off"`         // of each form from the mark, hundredths of a point
	Uneven     [3]int `json:"uneven"`      // forms apart for a weaker, typical, stronger pupil, hundredths of a point
	Uses       int    `json:"uses"`        // earlier uses of its items
	Objective  int    `json:"objective"`
	Bound      int    `json:"bound"`
	Verdict    string `json:"verdict"` // how good it is, in words

	Forms []QuizForm `json:"forms"`

	By string    `json:"by"`
	At time.Time `json:"at"` // UTC

	TakenBack bool `json:"taken_back,omitempty"` // it was not given after all: its items are free again
}

// Printed is how the sheets of a quiz were printed.
type Printed struct {
	Paper   string `json:"paper"`             // letter or a4
	Lang    string `json:"lang"`              // en or es
	Both    bool   `json:"both,omitempty"`    // English, and below it Spanish
	Large   bool   `json:"large,omitempty"`   // large print
	Columns int    `json:"columns,omitempty"` // at most so many items side by side
	Spaced  bool   `json:"spaced,omitempty"`  // more room between the items
	Fewer   int    `json:"fewer,omitempty"`   // only so many items of each form; 0 is all
	Aloud   bool   `json:"aloud,omitempty"`   // also what to read aloud
	HTML    bool   `json:"html,omitempty"`    // also pages for a browser
	Strips  bool   `json:"strips,omitempty"`  // strips to cut apart, not pages
}

// QuizForm is a form of a quiz, its items in the order of the sheet.
type QuizForm struct {
	Name   string     `json:"name"`            // "A", "B", ...
	Scores [3]int     `json:"expected_scores"` // of a weaker, typical, stronger pupil, thousandths of a point
	Items  []QuizItem `json:"items"`
}

// QuizItem is an item as it stood in the quiz.
type QuizItem struct {
	Item   Item   `json:"-"`
	Row    string `json:"row"`              // the name of the plan's row that it fills
	Uses   int    `json:"uses,omitempty"`   // how often it was used before
	Shared bool   `json:"shared,omitempty"` // it stands in every form

	Choices []string `json:"choices,omitempty"` // the answers printed to choose from, in order

	Basis Basis `json:"basis,omitempty"` // what its difficulty rested on; empty where that was not noted
}

// quizItem is how a QuizItem is kept: all of the item that a sheet, a key or a marking may ask for.
type quizItem struct {
	ID         string            `json:"id"`
	Revision   int               `json:"revision"`
	Task       string            `json:"task,omitempty"`
	Wording    map[string]string `json:"wording,omitempty"`
	Key        string            `json:"key"`
	Skill      standards.SkillID `json:"skill"`
	Look       task.Look         `json:"look"`
	Standards  []task.Code       `json:"standards,omitempty"`
	Traits     map[string]string `json:"traits,omitempty"`
	Difficulty int               `json:"difficulty"` // thousandths of a logit
	Seconds    int               `json:"seconds"`
	Row        string            `json:"row"`
	Uses       int               `json:"uses,omitempty"`
	Shared     bool              `json:"shared,omitempty"`
	Choices    []string          `json:"choices,omitempty"`
	Basis      Basis             `json:"basis,omitempty"`
}

// MarshalJSON writes the item with its place.
func (q QuizItem) MarshalJSON() ([]byte, error) {
	it := q.Item
	kept := quizItem{
		ID: it.ID, Revision: it.Revision, Task: it.Task, Wording: it.Wording, Key: it.Key, Skill: it.Skill, Look: it.Look,
		Standards: it.Codes, Traits: it.Traits.Named(), Difficulty: int(it.Difficulty()), Seconds: it.Seconds,
		Row: q.Row, Uses: q.Uses, Shared: q.Shared, Choices: q.Choices, Basis: q.Basis,
	}
	return json.Marshal(kept)
}

// UnmarshalJSON reads what MarshalJSON wrote; the item's difficulty counts as its predicted one.
func (q *QuizItem) UnmarshalJSON(text []byte) error {
	var kept quizItem
	if err := json.Unmarshal(text, &kept); err != nil {
		return err
	}
	it := Item{
		ID: kept.ID, Revision: kept.Revision, Task: kept.Task, Wording: maps.Clone(kept.Wording), Key: kept.Key, Skill: kept.Skill,
		Look: kept.Look, Codes: kept.Standards, Predicted: standards.Difficulty(kept.Difficulty), Seconds: kept.Seconds,
	}
	for name, value := range kept.Traits {
		if trait, ok := task.TraitNamed(name); ok {
			it.Traits[trait] = value
		}
	}
	*q = QuizItem{Item: it, Row: kept.Row, Uses: kept.Uses, Shared: kept.Shared, Choices: kept.Choices, Basis: kept.Basis}
	return nil
}

// Name is the quiz in a few words.
func (q Quiz) Name() string { return fmt.Sprintf("%s (%s)", q.Title, q.Week) }

// KeepQuiz keeps a quiz as it is given and notes the use of its items, both or neither. A quiz of
// the same ID that is there already is left as it is, but is given again if it was taken back.
func (b *Bank) KeepQuiz(q Quiz) error {
	ids, err := q.check()
	if err != nil {
		return err
	}
	return b.update(func(tx store.Writer) error { return b.keepQuiz(tx, q, ids) })
}

// use is what the quiz makes of its items.
func (q *Quiz) use() Use { return Use{Quiz: q.Title, Week: q.Week, At: q.At} }

// check says what a quiz lacks to be kept, and gives the keys of its items.
func (q *Quiz) check() ([]ulid.ULID, error) {
	if err := q.use().Check(); err != nil {
		return nil, err
	}
	switch {
	case q.ID == "" || len(q.ID) > longest:
		return nil, words.Errorf("the quiz has no ID")
	case strings.TrimSpace(q.By) == "":
		return nil, words.Errorf("say who gives the quiz")
	}
	var texts []string
	for _, form := range q.Forms {
		for _, placed := range form.Items {
			texts = append(texts, placed.Item.ID)
		}
	}
	return parseIDs(texts)
}

func (b *Bank) keepQuiz(tx store.Writer, q Quiz, ids []ulid.ULID) error {
	if err := b.writer(tx).recordUses(ids, q.use()); err != nil {
		return err
	}
	key := []byte(q.ID)
	sealed, err := tx.Get(quizzesBucket, key)
	if err != nil {
		return err
	}
	if there, err := b.readQuiz(store.Entry{Key: key, Value: sealed}); err == nil {
		if !there.TakenBack {
			return nil
		}
		if !q.At.After(there.At) {
			q.At = there.At.Add(1)
		}
	}
	return putQuiz(tx, q)
}

func putQuiz(w store.Writer, q Quiz) error {
	return putSealed(w, quizzesBucket, []byte(q.ID), q)
}

func (b *Bank) readQuiz(e store.Entry) (q Quiz, err error) {
	if unsealJSON(e.Key, e.Value, &q) != nil {
		return q, b.damaged("the quiz %s can't be read", e.Key)
	}
	return q, nil
}

// Quizzes lists the quizzes that were given, by week, then by title.
func (b *Bank) Quizzes() (list []Quiz, err error) {
	err = b.view(func(r store.Reader) error {
		list, err = b.readQuizzes(r, func(q Quiz) bool { return !q.TakenBack })
		return err
	})
	slices.SortStableFunc(list, func(a, b Quiz) int { return strings.Compare(a.Week+" "+a.Title, b.Week+" "+b.Title) })
	return list, err
}

// MakeUps lists the make-up forms of a quiz, in the order of their letters.
func (b *Bank) MakeUps(id string) (list []Quiz, err error) {
	all, err := b.Quizzes()
	for _, q := range all {
		if q.MakeUp == id {
			list = append(list, q)
		}
	}
	slices.SortFunc(list, func(a, b Quiz) int { return strings.Compare(a.Forms[0].Name, b.Forms[0].Name) })
	return list, err
}

// WithMakeUps finds a quiz as Quiz does, and its make-up forms, the quiz first; the name of one of them
// means the quiz, too.
func (b *Bank) WithMakeUps(called string) ([]Quiz, error) {
	quiz, err := b.Quiz(called)
	if err == nil && quiz.MakeUp != "" {
		quiz, err = b.Quiz(quiz.MakeUp)
	}
	if err != nil {
		return nil, err
	}
	makeUps, err := b.MakeUps(quiz.ID)
	return append([]Quiz{quiz}, makeUps...), err
}

// Quiz finds a quiz by what a person calls it: its title, its week, the beginning of its ID. Where
// several quizzes are called so, be it by title or by week, the error names them. A make-up form has the title and the week of its
// quiz, so that it is called by its ID only.
func (b *Bank) Quiz(called string) (Quiz, error) {
	all, err := b.Quizzes()
	if err != nil {
		return Quiz{}, err
	}
	called = strings.TrimSpace(called)
	var found []Quiz
	for _, q := range all {
		byName := strings.EqualFold(q.Title, called) || strings.EqualFold(q.Name(), called) || strings.EqualFold(q.Week, called)
		switch {
		case q.ID == called:
			return q, nil
		case q.MakeUp == "" && byName, len(called) >= 4 && strings.HasPrefix(q.ID, strings.ToLower(called)):
			found = append(found, q)
		}
	}
	switch len(found) {
	case 0:
		return Quiz{}, words.Errorf("%s has no quiz called %q; evenhand quizzes lists them", b.Path(), called)
	case 1:
		return found[0], nil
	}
	var names []string
	for _, q := range found {
		names = append(names, q.Name()+" "+q.ID)
	}
	return Quiz{}, words.Errorf("%q can be %s; name one by its ID", called, strings.Join(names, " or "))
}

// markTakenBack notes that the quizzes of this title and week were not given after all.
func (b *Bank) markTakenBack(w store.Writer, title, week string) error {
	list, err := b.readQuizzes(w, func(q Quiz) bool { return q.Title == title && q.Week == week })
	for _, q := range list {
		q.TakenBack = true
		err = errors.Join(err, putQuiz(w, q))
	}
	return err
}

// readQuizzes reads the quizzes that are wanted.
func (b *Bank) readQuizzes(r store.Reader, wanted func(Quiz) bool) (list []Quiz, err error) {
	for e, err := range r.Scan(quizzesBucket, store.Range{}) {
		if err != nil {
			return nil, err
		}
		q, err := b.readQuiz(e)
		if err != nil {
			return nil, err
		}
		if wanted(q) {
			list = append(list, q)
		}
	}
	return list, nil
}
