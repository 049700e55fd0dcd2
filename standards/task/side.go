package task

import (
	"slices"
	"strings"

	"evenhand/standards/words"
)

// Side is one side of an equal sign: one to three numbers, added or taken away from
// left to right. No number on the way is negative.
type Side struct {
	Terms [3]int
	Minus [3]bool // term i is taken away; never term 0
	N     int     // how many numbers, 1 to 3
}

// Numbers are the numbers of the side.
func (s Side) Numbers() []int { return slices.Clone(s.Terms[:s.N]) }

// Value is what the side is worth.
func (s Side) Value() int {
	value := 0
	for i, n := range s.Terms[:s.N] {
		value += s.sign(i) * n
	}
	return value
}

func (s Side) sign(i int) int {
	if s.Minus[i] {
		return -1
	}
	return 1
}

// String is the side as it is written, "8 - 1".
func (s Side) String() string { return s.marked(-1) }

// marked is the side with "?" in place of number blank.
func (s Side) marked(blank int) string { return written(s.Terms[:s.N], s.Minus[:], blank) }

// signed is the numbers of the side, those taken away negative.
func (s Side) signed() []int { return signed(s.Terms[:s.N], s.Minus[:]) }

// isSum says that numbers are added and none is taken away.
func (s Side) isSum() bool { return s.N > 1 && s.Minus == [3]bool{} }

// readSide reads "8 - 1"; blank is the place of "?", −1 without one.
func readSide(text string) (s Side, blank int, err error) {
	tokens := termPattern.FindAllString(text, -1)
	blank = -1
	if len(tokens)%2 == 0 || len(tokens) > 5 || squeeze(text) != strings.Join(tokens, "") {
		return s, blank, words.Errorf("%q does not read as one to three numbers with + or - between them", strings.TrimSpace(text))
	}
	for i, token := range tokens {
		if i%2 == 1 {
			if token != "+" && token != "-" {
				return s, blank, words.Errorf("%q does not read as one to three numbers with + or - between them", strings.TrimSpace(text))
			}
			s.Minus[s.N] = token == "-"
			continue
		}
		n, isBlank, err := readNumber(token)
		if err != nil {
			return s, blank, err
		}
		if isBlank && blank >= 0 {
			return s, blank, words.Errorf("%q has two places to fill in; leave one", strings.TrimSpace(text))
		}
		if isBlank {
			blank = s.N
		}
		s.Terms[s.N] = n
		s.N++
	}
	return s, blank, nil
}

// check says what is wrong with the numbers of a side.
func (s Side) check() error {
	value := 0
	for i, n := range s.Terms[:s.N] {
		if value += s.sign(i) * n; value < 0 {
			return words.Errorf("%s is less than 0; quizzes for these grades stay with 0 and more", s)
		}
	}
	if value > MaxNumber {
		return words.Errorf("%s is more than %d", s, MaxNumber)
	}
	return nil
}

// sentence is the side as a number sentence whose result is asked for; ok is false
// for a single number.
func (s Side) sentence() (Sentence, bool) {
	t := Sentence{N: s.N, Blank: s.N}
	copy(t.Terms[:], s.Terms[:s.N])
	copy(t.Minus[:], s.Minus[:s.N])
	return t, s.N > 1
}

// largestOf is the largest number of some sides, their values included.
func largestOf(sides ...Side) int {
	largest := 0
	for _, s := range sides {
		largest = max(largest, s.Value(), slices.Max(s.Numbers()))
	}
	return largest
}

// sidesTraits are those that two sides have together: regroupings of both, longest
// and largest number.
func sidesTraits(sides ...Side) Traits {
	var ts Traits
	regroups := 0
	for _, s := range sides {
		if t, ok := s.sentence(); ok {
			n, _ := t.Traits().Number(Regroups)
			regroups += n
		}
	}
	ts.setNumber(Regroups, regroups)
	ts.setNumber(Largest, largestOf(sides...))
	ts.setNumber(Digits, digitCount(largestOf(sides...)))
	return ts
}

// sidesClashes are the fact families of the sides.
func sidesClashes(sides ...Side) []string {
	var groups []string
	for _, s := range sides {
		if t, ok := s.sentence(); ok && !slices.Contains(groups, t.Clashes()[0]) {
			groups = append(groups, t.Clashes()[0])
		}
	}
	return groups
}

// squeeze drops all spaces.
func squeeze(s string) string { return strings.ReplaceAll(s, " ", "") }
