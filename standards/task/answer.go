package task

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"evenhand/standards/words"
)

// How written answers are read. A kind reads an answer into what it says, a number or an
// equation, and only then compares: so a text is right because of what it says, never because
// of what is left of it. What can't be read is no possible answer.

// reply is what an answer to a number item says: one number, or an equation.
type reply struct {
	number   int
	equation *equation
}

// equation is numbers added and taken away on both sides of an equal sign.
type equation struct{ left, right []int } // what is taken away is negative

// aroundNumbers are the words that may stand around the number of an answer.
var aroundNumbers = wordSet("it it's its is the answer there there's are was were has have had he she they i we got gets " +
	"get left now in all altogether total more of an a each only think see count counted number missing just " +
	"la el las los es son hay tiene tengo tienen quedan queda le les en total ahora más respuesta")

// signWords are the words for signs between numbers; as in all answers, words have no accents.
var signWords = map[string]string{
	"plus": "+", "mas": "+", "minus": "-", "menos": "-",
	"equals": "=", "equal": "=", "makes": "=", "make": "=", "is": "=", "are": "=", "es": "=", "son": "=", "igual": "=",
}

func wordSet(text string) map[string]bool {
	set := make(map[string]bool)
	for _, word := range strings.Fields(words.Unaccented(text)) {
		set[word] = true
	}
	return set
}

// vocabulary is the words of a question in either language, each also as a single thing, and
// some more. They are looked up only when an answer has words.
func vocabulary(prompt func(lang string) string, more ...string) func(string) bool {
	lookUp := sync.OnceValue(func() map[string]bool {
		set := wordSet(strings.Join(more, " "))
		for _, t := range words.Tokens(prompt("en") + " " + prompt("es")) {
			if t.Kind == words.Word {
				set[t.Text] = true
				set[strings.TrimSuffix(t.Text, "s")] = true
				set[strings.TrimSuffix(t.Text, "es")] = true
			}
		}
		return set
	})
	return func(word string) bool { return lookUp()[word] }
}

// noWords is the vocabulary of an item whose answer is a bare number.
func noWords(string) bool { return false }

// readReply reads the answer to a number item: a number, alone or in a sentence of words
// that are known around it, or an equation of such numbers.
func readReply(answer string, known func(string) bool) (reply, bool) {
	if n, err := strconv.ParseUint(answer, 10, 32); err == nil { // the usual answer, soon read
		return reply{number: int(n)}, true
	}
	tokens := trimmed(words.Tokens(answer))
	if w, ok := readEquation(tokens, known); ok {
		return reply{equation: &w}, true
	}
	if spaced.MatchString(words.Plain(answer)) {
		tokens = words.Tokens(strings.ReplaceAll(answer, " ", ""))
	}
	n, ok := oneNumber(tokens, known)
	return reply{number: n}, ok
}

// spaced is a number with spaces for its thousands.
var spaced = regexp.MustCompile(`^[0-9]{1,3}( [0-9]{3})+$`)

// trimmed drops what may stand at the ends of an answer: "= 83", "83.", "83!".
func trimmed(tokens []words.Token) []words.Token {
	sign := func(t words.Token, of string) bool { return t.Kind == words.Sign && strings.Contains(of, t.Text) }
	for len(tokens) > 0 && sign(tokens[0], "=:+") {
		tokens = tokens[1:]
	}
	for len(tokens) > 0 && sign(tokens[len(tokens)-1], ".!,;") {
		tokens = tokens[:len(tokens)-1]
	}
	return tokens
}

// oneNumber reads the single number of an answer; every word around it must be known.
func oneNumber(tokens []words.Token, known func(string) bool) (n int, ok bool) {
	if len(tokens) == 3 && tokens[0].Text == "?" && tokens[1].Text == "=" { // "? = 36"
		tokens = tokens[2:]
	}
	for _, t := range tokens {
		switch {
		case t.IsNumber() && ok:
			return 0, false
		case t.IsNumber():
			n, ok = t.Number, true
		case t.Kind != words.Word && !strings.Contains(".,=:", t.Text), t.Kind == words.Word && !aroundNumbers[t.Text] && !known(t.Text):
			return 0, false
		}
	}
	return n, ok
}

// readEquation reads "47 + 36 = 83", in signs or words. A number of things may follow.
func readEquation(tokens []words.Token, known func(string) bool) (e equation, ok bool) {
	sides := [2][]int{}
	side, sign, want := 0, 1, true // want says that a number comes next
	for _, t := range tokens {
		text := t.Text
		if t.Kind == words.Word && signWords[text] != "" && !want {
			text = signWords[text]
		}
		switch {
		case t.IsNumber() && want:
			sides[side] = append(sides[side], sign*t.Number)
			want = false
		case (text == "+" || text == "-") && !want:
			sign, want = map[string]int{"+": 1, "-": -1}[text], true
		case text == "=" && !want && side == 0:
			side, sign, want = 1, 1, true
		case t.Kind == words.Word && (known(text) || aroundNumbers[text]) || text == ".":
		default:
			return e, false
		}
	}
	return equation{sides[0], sides[1]}, side == 1 && !want && len(sides[0])+len(sides[1]) > 2
}

// says says that one side of an equation holds these numbers in any order, and the other the
// result alone.
func (e equation) says(terms []int, result int) bool {
	return e.sides(terms, []int{result})
}

// sides says that an equation has these two sides, either way round, each in any order that
// does not begin with taking away.
func (e equation) sides(a, b []int) bool {
	return sameTerms(e.left, a) && sameTerms(e.right, b) || sameTerms(e.left, b) && sameTerms(e.right, a)
}

// sameTerms says that two sides hold the same numbers.
func sameTerms(a, b []int) bool {
	a, b = slices.Clone(a), slices.Clone(b)
	slices.Sort(a)
	slices.Sort(b)
	return slices.Equal(a, b)
}

// finds says that the equation is true, holds the numbers of a fact, and has what is asked for
// alone on one side: 83 - 47 = 36 for 47 + ? = 83.
func (e equation) finds(answer int, fact []int) bool {
	all := slices.Concat(e.left, e.right)
	for i, n := range all {
		all[i] = max(n, -n)
	}
	alone := func(side []int) bool { return len(side) == 1 && side[0] == answer }
	return sameTerms(all, fact) && sum(e.left) == sum(e.right) && (alone(e.left) || alone(e.right))
}

func sum(numbers []int) int {
	total := 0
	for _, n := range numbers {
		total += n
	}
	return total
}

// listOf is the numbers of tokens that are numbers and the signs or small words between them.
func listOf(tokens []words.Token, between string) (numbers []int, ok bool) {
	for _, t := range trimmed(tokens) {
		switch {
		case t.IsNumber():
			numbers = append(numbers, t.Number)
		case t.Kind == words.Sign && strings.Contains(between, t.Text), t.Text == "and", t.Text == "y":
		default:
			return nil, false
		}
	}
	return numbers, len(numbers) > 0
}
