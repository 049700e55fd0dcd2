package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Pairs asks for two different pairs of numbers that make a number: "pairs of 7".
// Any two pairs are right, and a pair turned around is the same pair.
type Pairs struct{ Whole int } // 2 to 10

var pairsPattern = regexp.MustCompile(`^(?:number )?pairs (?:of|for|that make):? ?([0-9]{1,4})$`)

func readPairs(text string) (Task, error) {
	m := pairsPattern.FindStringSubmatch(strings.TrimRight(text, " ?="))
	if m == nil {
		return nil, errOther
	}
	n, _ := strconv.Atoi(m[1])
	if n < 2 || n > 10 {
		return nil, words.Errorf("%q is for numbers from 2 to 10, as in pairs of 7", text)
	}
	return Pairs{n}, nil
}

func (t Pairs) String() string { return "pairs of " + strconv.Itoa(t.Whole) }

// Key is one right answer of many, "1 + 6, 2 + 5"; a pair with 0 only where there
// is no other.
func (t Pairs) Key() string {
	first := 1
	if t.Whole < 4 {
		first = 0
	}
	return fmt.Sprintf("%d + %d, %d + %d", first, t.Whole-first, first+1, t.Whole-first-1)
}

// Judge accepts any two different pairs, with or without the whole beside them.
func (t Pairs) Judge(answer string) bool {
	pairs, ok := t.reply(answer)
	return ok && len(pairs) == 2 && pairs[0] != pairs[1] && t.makes(pairs[0]) && t.makes(pairs[1])
}

// Possible takes one pair or more.
func (t Pairs) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

// reply is the pairs of an answer, each with its smaller number first.
func (t Pairs) reply(answer string) (pairs [][2]int, ok bool) {
	var numbers []int
	plus := make(map[int]bool) // a plus sign stands behind so many numbers
	tokens := trimmed(words.ListTokens(answer))
	for i, token := range tokens {
		isWhole := func(at int) bool {
			return at >= 0 && at < len(tokens) && tokens[at].IsNumber() && tokens[at].Number == t.Whole
		}
		switch {
		case token.IsNumber() && isWhole(i) && (i+1 < len(tokens) && tokens[i+1].Text == "=" || i > 0 && tokens[i-1].Text == "="):
		case token.IsNumber():
			numbers = append(numbers, token.Number)
		case token.Text == "+" || token.Text == "plus" || token.Text == "mas":
			plus[len(numbers)] = true
		case token.Text == "=" && (isWhole(i-1) || isWhole(i+1)), strings.Contains(",;/", token.Text), token.Text == "and", token.Text == "y":
		default:
			return nil, false
		}
	}
	for i := 1; i < len(numbers); i += 2 {
		pairs = append(pairs, [2]int{min(numbers[i-1], numbers[i]), max(numbers[i-1], numbers[i])})
	}
	for at := range plus {
		if at%2 == 0 {
			return nil, false
		}
	}
	return pairs, len(pairs) > 0 && len(numbers)%2 == 0
}

func (t Pairs) makes(pair [2]int) bool { return pair[0]+pair[1] == t.Whole }

// Prompt asks for two pairs.
func (t Pairs) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Escribe dos pares distintos que hagan %d.", t.Whole)
	}
	return fmt.Sprintf("Write two different pairs that make %d.", t.Whole)
}

// Traits of pairs.
func (t Pairs) Traits() Traits { return numberTraits(t.Whole) }

// Codes: taking apart numbers to 10, kindergarten.
func (t Pairs) Codes() []Code { return []Code{"K.OA.A.3"} }

// The missteps with pairs.
var (
	pairTurned = newMisstep("one pair turned around",
		"turns the first pair around and takes it for another",
		"da vuelta al primer par y lo toma por otro distinto",
		"move one counter from one side to the other: a new pair",
		"pasar una ficha de un lado al otro: un par nuevo", "common practice")
	wholeAsPart = newMisstep("whole taken for a part",
		"writes the number itself as a part and adds to it",
		"escribe el número mismo como una parte y le suma otra",
		"break a train of cubes: the whole is what was there before",
		"partir un tren de cubos: el todo es lo que había antes", "common practice")
)

// Missteps of pairs.
func (t Pairs) Missteps() []Misstep {
	a, b := 1, t.Whole-1
	return gather(t, []slip{
		{pairTurned, fmt.Sprintf("%d + %d, %d + %d", a, b, b, a)},
		{wholeAsPart, fmt.Sprintf("%d + %d, %d + %d", t.Whole, 1, t.Whole, 2)},
	})
}

// Clashes of pairs: the number.
func (t Pairs) Clashes() []string { return []string{"pairs:" + strconv.Itoa(t.Whole)} }

// Fingerprint of pairs is their text.
func (t Pairs) Fingerprint() string { return t.String() }

// Looks of pairs.
func (t Pairs) Looks() []Look { return []Look{LookPairs} }
