package task

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Trait is one property of a task that makes it easier or harder. Its position
// in the list of traits is its column in every CSV file.
type Trait int

// The traits, in the order of their columns.
const (
	Regroups      Trait = iota // regroupings in column addition or subtraction
	Crosses100                 // a sum of numbers below 100 lies above it, or a number above is taken below; a sequence has both
	Reaches100                 // 100 is the sum, the number taken from or left, or one of a sequence
	ClockStep                  // the coarsest of hour, half-hour, quarter-hour, five-minute, minute that fits
	Digits                     // digits of the longest operand
	RegroupPlaces              // columns that regroup: none, ones, tens, ones+tens, ...
	ZeroCrossed                // a borrow goes through a zero
	Doubles                    // the two addends are equal
	NearDoubles                // the two addends differ by one
	MakesTen                   // the ones of two addends make ten
	Unknown                    // which part is asked for: result, change, start
	Situation                  // the situation of a word problem, in the words of the published table
	HandsOverlap               // one clock hand hides the other
	PastNoon                   // the time is said to be after noon
	Largest                    // largest number in the task, the answer included
	Addends                    // how many numbers are added
	Asks                       // what is asked for, where a kind can ask for several things
	CountSteps                 // steps of one, ten or a hundred that count to the answer, 10 for more
	Apart                      // how far two numbers compared are apart, 10 for more
	Decides                    // which place decides between two numbers
	Misleads                   // a smaller place says otherwise, or a shape does not look as it usually does
	Step                       // the step of counting, or how much more or less
	PastHalf                   // the minute hand is past the half hour
	traitCount
)

// Hundred is asked for and counted like a trait, but not kept: it follows from Largest. It is 1 for numbers
// to 100, 2 for a largest number from 101 to 200, and so on.
const Hundred = traitCount

// Values says what values a trait takes.
type Values int

// The values of traits.
const (
	WholeNumber  Values = iota // a whole number
	TrueOrFalse                // true or false
	OneWord                    // one of some words
	OrderedWords               // one of some words, listed from easy to hard
)

var traitTable = [traitCount + 1]struct {
	name    string
	kind    Values
	words   []string // for word and ordered; nil where any word may stand
	meaning string
}{
	Regroups:      {"regroups", WholeNumber, nil, "regroupings in column addition or subtraction"},
	Crosses100:    {"crosses_100", TrueOrFalse, nil, "addends below 100 make more than 100, or more than 100 is taken below it; a sequence stands on both sides"},
	Reaches100:    {"reaches_100", TrueOrFalse, nil, "100 is the sum, the number taken from or the number left, or one of a sequence"},
	ClockStep:     {"clock_step", OrderedWords, words.ClockSteps, "the coarsest step on the dial that fits the time"},
	Digits:        {"digits", WholeNumber, nil, "digits of the longest operand"},
	RegroupPlaces: {"regroup_places", OneWord, nil, "columns that regroup, such as none, ones, ones+tens"},
	ZeroCrossed:   {"zero_crossed", TrueOrFalse, nil, "a borrow goes through a zero"},
	Doubles:       {"doubles", TrueOrFalse, nil, "the two addends are equal"},
	NearDoubles:   {"near_doubles", TrueOrFalse, nil, "the two addends differ by one"},
	MakesTen:      {"makes_ten", TrueOrFalse, nil, "the ones of two addends make ten"},
	Unknown:       {"unknown", OrderedWords, []string{"result", "change", "start"}, "which part is asked for"},
	Situation:     {"situation", OneWord, situationNames(), "the situation of a word problem"},
	HandsOverlap:  {"hands_overlap", TrueOrFalse, nil, "one clock hand hides the other"},
	PastNoon:      {"past_noon", TrueOrFalse, nil, "the time is said to be after noon"},
	Largest:       {"largest", WholeNumber, nil, "largest number in the task, the answer included"},
	Addends:       {"addends", WholeNumber, nil, "how many numbers are added"},
	Asks:          {"asks", OneWord, nil, "what is asked for, such as read or draw, up or down, more or less"},
	CountSteps:    {"count_steps", WholeNumber, nil, "steps of one, ten or a hundred that count to the answer, 10 for more"},
	Apart:         {"apart", WholeNumber, nil, "how far two numbers compared are apart, 10 for more"},
	Decides:       {"decides", OrderedWords, decidingPlaces, "which place decides between two numbers"},
	Misleads:      {"misleads", TrueOrFalse, nil, "a smaller place than the one that decides says otherwise, or a shape doesn't look as it usually does"},
	Step:          {"step", WholeNumber, nil, "the step of counting, or how much more or less"},
	PastHalf:      {"past_half", TrueOrFalse, nil, "the minute hand is past the half hour"},
	Hundred:       {"hundred", WholeNumber, nil, "the hundred in which the largest number stands: 1 to 100, 2 from 101 to 200"},
}

// AllTraits lists the traits that are kept, in the order of their columns.
func AllTraits() []Trait {
	all := make([]Trait, traitCount)
	for i := range all {
		all[i] = Trait(i)
	}
	return all
}

// Conditions lists what conditions can be about: all traits, and what follows from them.
func Conditions() []Trait { return append(AllTraits(), Hundred) }

// String is the trait's name, as in CSV headers and plans.
func (t Trait) String() string { return traitTable[t].name }

// Meaning says in a few words what the trait is.
func (t Trait) Meaning() string { return traitTable[t].meaning }

// Values says what values the trait takes, and for words which ones; nil where any word
// may stand.
func (t Trait) Values() (Values, []string) { return traitTable[t].kind, traitTable[t].words }

// TraitNamed finds a trait that is kept by its name.
func TraitNamed(name string) (Trait, bool) {
	for _, t := range AllTraits() {
		if t.String() == name {
			return t, true
		}
	}
	return 0, false
}

// Traits are the values of a task's traits in column order: a whole number,
// "true" or "false", or a word; empty where a trait does not apply. Traits can
// be compared and used as a map key.
type Traits [traitCount]string

// Get is the value of one trait, empty where it does not apply.
func (ts Traits) Get(t Trait) string {
	if t != Hundred {
		return ts[t]
	}
	largest, ok := ts.Number(Largest)
	if !ok {
		return ""
	}
	return strconv.Itoa(max(1, (largest+99)/100))
}

// Number is the value of a whole-number trait, and 1 or 0 for true or false;
// ok is false where the trait does not apply.
func (ts Traits) Number(t Trait) (n int, ok bool) { return t.Number(ts.Get(t)) }

// Number is one of the trait's values as a number, for words their place in the list.
func (t Trait) Number(value string) (n int, ok bool) {
	switch value {
	case "":
		return 0, false
	case "true":
		return 1, true
	case "false":
		return 0, true
	}
	if traitTable[t].kind == OrderedWords {
		i := slices.Index(traitTable[t].words, value)
		return i, i >= 0
	}
	n, err := strconv.Atoi(value)
	return n, err == nil
}

// Only says that no other traits than these apply.
func (ts Traits) Only(traits ...Trait) bool {
	for t, value := range ts {
		if value != "" && !slices.Contains(traits, Trait(t)) {
			return false
		}
	}
	return true
}

// Signature is the traits as one short text, equal for equal traits; it holds
// no control characters. ParseSignature reads it back.
func (ts Traits) Signature() string { return strings.Join(ts[:], "|") }

// List is the traits that apply, as "name=value" in column order.
func (ts Traits) List() []string {
	var list []string
	for i, value := range ts {
		if value != "" {
			list = append(list, Trait(i).String()+"="+value)
		}
	}
	return list
}

// Named is the traits that apply, by name.
func (ts Traits) Named() map[string]string {
	named := map[string]string{}
	for i, value := range ts {
		if value != "" {
			named[Trait(i).String()] = value
		}
	}
	return named
}

// numberTraits are those of a task about one number: its digits and its size.
func numberTraits(n int) Traits {
	var ts Traits
	ts.setNumber(Digits, digitCount(n))
	ts.setNumber(Largest, n)
	return ts
}

func (ts *Traits) setNumber(t Trait, n int) { ts[t] = strconv.Itoa(n) }
func (ts *Traits) setFlag(t Trait, b bool)  { ts[t] = strconv.FormatBool(b) }
