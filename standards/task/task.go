package task

import (
	"errors"
	"strings"
	"time"

	"evenhand/standards/words"
)

// Task is what an item asks, as mathematics. Tasks are small values that can be
// compared with == and used as map keys; the zero values are not valid tasks,
// use Parse or the New functions.
type Task interface {
	// String is the one plain text form of the task; Parse(t.String()) == t.
	String() string
	// Key is the right answer in its usual written form.
	Key() string
	// Judge says whether a written answer is right, in any form that a
	// teacher would accept.
	Judge(answer string) bool
	// Possible says whether a text could be a child's written answer to
	// this very task, right or wrong. What is right is possible.
	Possible(answer string) bool
	// Prompt is the question in words for the language ("en" or "es"; any
	// other reads as "en").
	Prompt(lang string) string
	// Traits are the computed properties that make the task hard.
	Traits() Traits
	// Codes are the published standards the task meets, the earliest first;
	// empty when it lies beyond grade 2 or none asks for it.
	Codes() []Code
	// Missteps are the wrong answers that known errors give, each answer
	// once, none of them right, in a fixed order.
	Missteps() []Misstep
	// Clashes names the groups of which one quiz form may hold one task,
	// beside "same key in the same skill": fact family, time on the clock.
	Clashes() []string
	// Fingerprint is equal for two tasks that ask the same thing, also
	// turned around (47 + 36 and 36 + 47).
	Fingerprint() string
	// Looks are the ways the task can be shown, the usual one first.
	Looks() []Look
}

// kinds lists every kind of task: its name and its reader. A reader gets text
// that tidy has cleaned, and returns errOther when the text is of another kind;
// any other error is about the mathematics and is shown to the teacher. Kinds that are known
// by their first word stand first, because they are told apart fastest.
var kinds = []struct {
	name string
	read func(string) (Task, error)
}{
	{"story", readStory},
	{"reason", readReason},
	{"true or false", readTrueFalse},
	{"odd or even", readOddEven},
	{"array", readArray},
	{"coins", readCoins},
	{"how many", readHowMany},
	{"counting on", readCountOn},
	{"dots one by one", readOneByOne},
	{"picture of a sum", readPictureSum},
	{"groups", readGroups},
	{"marked line", readMarkedLine},
	{"data", readData},
	{"ruler", readRuler},
	{"shape to name", readNameShape},
	{"parts of a shape", readShapeParts},
	{"shapes to find", readFindShapes},
	{"flat or solid", readFlatSolid},
	{"shape to draw", readDrawShape},
	{"shape from pieces", readMakeShape},
	{"shapes to join", readJoinShapes},
	{"line plot", readLinePlot},
	{"blocks", readBlocks},
	{"lengths", readLengths},
	{"estimate", readEstimate},
	{"shares", readShares},
	{"shares to find", readFindCuts},
	{"larger share", readLargerShare},
	{"shape to cut", readCutShape},
	{"squares in rows", readSquares},
	{"place of a shape", readWhere},
	{"dots to count out", readCountOut},
	{"equal addends", readEqualAddends},
	{"bills and coins", readBills},
	{"line to mark", readLineMark},
	{"pairs", readPairs},
	{"number writing", readWriteNumber},
	{"clock", readClock},
	{"match clocks", readMatch},
	{"place value", readPlaceValue},
	{"expanded form", readExpanded},
	{"more or less", readMoreLess},
	{"compare", readCompare},
	{"sequence", readSequence},
	{"related facts", readRelated},
	{"balance", readBalance},
	{"number sentence", readSentence},
}

// Kind is a kind of task.
type Kind struct{ Name string }

// Kinds lists the kinds.
func Kinds() []Kind {
	list := make([]Kind, len(kinds))
	for i, kind := range kinds {
		list[i] = Kind{kind.name}
	}
	return list
}

// KindOf is the name of a task's kind.
func KindOf(t Task) string {
	for _, kind := range kinds {
		if read, err := kind.read(tidy(t.String())); err == nil && read == t {
			return kind.name
		}
	}
	return ""
}

// errOther is what a kind's reader returns for text that is not of its kind.
var errOther = errors.New("another kind of task")

// Parse reads a task from what a person typed: "47+36", "47 + __ = 83",
// "half past 4", "98, 99, ?, 101". The error says in plain words what was read
// and what would be right.
func Parse(text string) (Task, error) {
	if isDate(text) {
		return nil, &NotUnderstoodError{Text: text}
	}
	if s, ok := plainSentence(text); ok {
		return s, nil
	}
	return parse(text)
}

// parse is Parse without its shortcut.
func parse(text string) (Task, error) {
	clean := tidy(text)
	if clean == "" {
		return nil, words.Errorf("there is no question here; write one such as 47 + 36 = ?")
	}
	if len(clean) > 200 {
		return nil, &NotUnderstoodError{Text: strings.TrimSpace(text)} // longer than any task
	}
	for _, kind := range kinds {
		task, err := kind.read(clean)
		if errors.Is(err, errOther) {
			continue
		}
		if err != nil {
			return nil, err
		}
		return task, nil
	}
	return nil, &NotUnderstoodError{Text: strings.TrimSpace(text)}
}

// isDate says that a text is a date as spreadsheets write it (ISO 8601), which would read as a
// subtraction.
func isDate(text string) bool {
	if len(text) != len(time.DateOnly) { // nearly every text
		return false
	}
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}

// NotUnderstoodError says that a text is no task of any kind known here; it may
// still be a good question that a teacher keeps with traits by hand.
type NotUnderstoodError struct {
	Text string // the text as it was read
}

func (e *NotUnderstoodError) Error() string { return e.Told().String() }

// Told is what the error tells.
func (e *NotUnderstoodError) Told() *words.Told {
	return words.Sayf("%q is not a task that evenhand understands; tasks look like 47 + 36 = ?, 47 ? 74, 98, 99, ?, 101 or read 4:30", e.Text)
}

// MustParse is Parse for texts known to be good, such as those in tables; it
// panics on an error.
func MustParse(text string) Task {
	task, err := Parse(text)
	if err != nil {
		panic(err)
	}
	return task
}
