package task

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Balance is a number sentence with operations on both sides of the equal sign and
// one number to fill in: "8 + 3 = 3 + ?", "4 + 6 = 5 + ?".
type Balance struct {
	Left, Right Side // the number to fill in included
	Blank       int  // its place, counted through both sides from the left
}

func readBalance(text string) (Task, error) {
	left, right, _ := strings.Cut(text, "=")
	if !sentenceShape.MatchString(text) || strings.Contains(text, ",") || strings.Count(text, "=") != 1 ||
		!strings.ContainsAny(left, "+-") || !strings.ContainsAny(right, "+-") {
		return nil, errOther
	}
	a, blankA, err := readSide(left)
	if err != nil {
		return nil, err
	}
	b, blankB, err := readSide(right)
	if err != nil {
		return nil, err
	}
	switch {
	case blankA >= 0 && blankB >= 0:
		return nil, words.Errorf("%q has two places to fill in; leave one, as in 8 + 3 = 3 + ?", text)
	case blankA < 0 && blankB < 0:
		return nil, words.Errorf("%q has nothing to fill in; write ? for one number, or true or false: before it", text)
	case blankA >= 0:
		return Balance{a, b, blankA}.solve(a, b, blankA)
	}
	return Balance{a, b, a.N + blankB}.solve(b, a, blankB)
}

// solve fills in the number at place blank of a side so that it is worth as much as the
// other side.
func (t Balance) solve(side, other Side, blank int) (Task, error) {
	n := (other.Value() - side.Value()) * side.sign(blank)
	if n < 0 {
		return nil, words.Errorf("no number from 0 up makes %s true", t)
	}
	if t.Blank < t.Left.N {
		t.Left.Terms[blank] = n
	} else {
		t.Right.Terms[blank] = n
	}
	if err := t.Left.check(); err != nil {
		return nil, err
	}
	return t, t.Right.check()
}

// answer is the number to fill in.
func (t Balance) answer() int { return append(t.Left.Numbers(), t.Right.Numbers()...)[t.Blank] }

func (t Balance) String() string {
	return t.Left.marked(t.Blank) + " = " + t.Right.marked(t.Blank-t.Left.N)
}

// Key is the number to fill in.
func (t Balance) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, also within the whole sentence.
func (t Balance) Judge(answer string) bool {
	r, ok := readReply(answer, noWords)
	if !ok || r.equation == nil {
		return ok && r.number == t.answer()
	}
	return r.equation.sides(t.Left.signed(), t.Right.signed())
}

// Possible takes a number and number sentences.
func (t Balance) Possible(answer string) bool { _, ok := readReply(answer, noWords); return ok }

// Prompt asks for the missing number.
func (t Balance) Prompt(lang string) string { return fillIn(t.String(), lang) }

// Largest is the largest number of the sentence, the values of its sides included.
func (t Balance) Largest() int { return largestOf(t.Left, t.Right) }

// Traits of a balance are those of both sides.
func (t Balance) Traits() Traits {
	ts := sidesTraits(t.Left, t.Right)
	ts[Asks] = "equal sides"
	if t.SameAddends() {
		ts[Asks] = "same addends"
	}
	return ts
}

// Codes: addends turned around or put together differently, within 20, show the
// properties of addition; other sentences ask what the equal sign means.
func (t Balance) Codes() []Code {
	switch size := t.Largest(); {
	case size <= 20 && t.SameAddends():
		return []Code{"1.OA.B.3", "1.OA.D.7"}
	case size <= 20:
		return []Code{"1.OA.D.7"}
	case size <= 1000:
		return sizeCodes(size)
	}
	return nil
}

// SameAddends says that one side has the other's addends, turned around or
// two of them put together: 8 + 3 = 3 + 8, 2 + 6 + 4 = 2 + 10.
func (t Balance) SameAddends() bool {
	if !t.Left.isSum() || !t.Right.isSum() {
		return false
	}
	long, short := t.Left.Numbers(), t.Right.Numbers()
	if len(long) < len(short) {
		long, short = short, long
	}
	slices.Sort(short)
	slices.Sort(long)
	if slices.Equal(long, short) {
		return true
	}
	for i := range long {
		for j := range i {
			if len(long) > len(short) && slices.Equal(merged(long, i, j), short) {
				return true
			}
		}
	}
	return false
}

// merged is the numbers in order with numbers i and j put together.
func merged(numbers []int, i, j int) []int {
	rest := []int{numbers[i] + numbers[j]}
	for k, n := range numbers {
		if k != i && k != j {
			rest = append(rest, n)
		}
	}
	slices.Sort(rest)
	return rest
}

// Missteps of a balance: the other side's result written at once, everything seen
// added, a number copied.
func (t Balance) Missteps() []Misstep {
	full, open := t.Left, t.Right
	if t.Blank < t.Left.N {
		full, open = t.Right, t.Left
	}
	all := full.Value()
	for i, n := range open.Numbers() {
		if i != t.Blank && i != t.Blank-t.Left.N {
			all += n
		}
	}
	return gather(t, []slip{
		{answerNext, strconv.Itoa(full.Value())},
		{operatedSeen, strconv.Itoa(all)},
		{copiedSeen, strconv.Itoa(full.Terms[0])},
		{copiedSeen, strconv.Itoa(full.Terms[1])},
	})
}

// Clashes of a balance: the fact families of its sides.
func (t Balance) Clashes() []string { return sidesClashes(t.Left, t.Right) }

// Fingerprint of a balance is its text.
func (t Balance) Fingerprint() string { return t.String() }

// Looks of a balance.
func (t Balance) Looks() []Look { return withChoice(t, LookSentence) }

// Short is the question alone.
func (t Balance) Short(lang string) string { return alone(t, lang) }

// Written is the text itself.
func (t Balance) Written() string { return t.String() }
