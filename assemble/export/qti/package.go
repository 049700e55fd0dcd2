package qti

import (
	"evenhand/standards"
	"evenhand/standards/task"
)

// Package is what one file holds: items, and tests that set them in order.
type Package struct {
	Title string
	Lang  string // "en" or "es"
	Tests []Test
	Items []Item
}

// Test is one form of a quiz.
type Test struct {
	ID    string // "form-A", unique in the package
	Title string
	Items []string // the IDs of its items, in order
}

// Item is one question as a screen shows it, with what is needed to judge answers.
type Item struct {
	ID      string // unique in the package: the bank's ID, with a letter in front
	BankID  string
	Title   string // what kind of question it is; it never tells the answer
	Lang    string
	Task    string // the mathematics in plain text form; empty for an item by hand
	Skill   standards.SkillID
	Codes   []task.Code
	Band    standards.Band
	Seconds int // expected working time

	Stem      [][]Part // the question, a list for each paragraph
	Picture   *Picture // the drawing of its look, nil where words say it all
	Responses []Response
	Scoring   Scoring
	Rubric    string // the right answer, told to a person who marks; only with ByPerson
}

// Part is a piece of a paragraph: some text, or a place to answer at.
type Part struct {
	Text     string
	Response string // ID of the response that is typed here; empty for text
}

// Picture is a drawing with the words that stand for it where it can't be seen. They never
// tell the answer.
type Picture struct {
	Alt string
	SVG string
}

// Kind is the way to answer.
type Kind string

// The kinds of response.
const (
	Number  Kind = "number"  // a whole number to type
	Words   Kind = "words"   // a short text to type: a time, a number name
	Choice  Kind = "choice"  // one option
	Match   Kind = "match"   // pairs of options
	Drawing Kind = "drawing" // a drawing over the picture; a person marks it
	Text    Kind = "text"    // a longer text; a person marks it
)

// Response is one thing that is answered.
type Response struct {
	ID       string
	Kind     Kind
	Correct  []string // right values; option IDs for Choice, "ID ID" for Match
	Accepted []string // Words: all texts that count as right, whatever the size of the letters
	Options  []Option // Choice: in order; Match: to be joined
	Others   []Option // Match: what they are joined with
}

// Option is something to choose.
type Option struct {
	ID      string
	Text    string
	Picture *Picture // in place of the text
}

// Key is the right answer as the bank keeps it; empty for an item by hand without one.
func (it Item) Key() string {
	if asked, err := task.Parse(it.Task); err == nil {
		return asked.Key()
	}
	if right := it.Responses[0].Correct; len(right) > 0 {
		return right[0]
	}
	return it.Rubric
}
