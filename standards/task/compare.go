package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Compare asks for <, > or = between two numbers: "47 ? 74".
type Compare struct{ A, B int }

var comparePattern = regexp.MustCompile(`^(?:([0-9]+) ?\? ?([0-9]+)|compare:? ([0-9]+) ?(?:\?|and|y|with|to|con|,) ?([0-9]+))$`)

func readCompare(text string) (Task, error) {
	m := comparePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	a, errA := strconv.Atoi(m[1] + m[3])
	b, errB := strconv.Atoi(m[2] + m[4])
	if errA != nil || errB != nil || a > MaxNumber || b > MaxNumber {
		return nil, words.Errorf("%q compares numbers above %d", text, MaxNumber)
	}
	return Compare{a, b}, nil
}

func (c Compare) String() string { return fmt.Sprintf("%d ? %d", c.A, c.B) }

// Key is "<", ">" or "=".
func (c Compare) Key() string { return sign(c.A, c.B) }

func sign(a, b int) string {
	switch {
	case a < b:
		return "<"
	case a > b:
		return ">"
	}
	return "="
}

// compareWords are the words a person may write for the sign.
var compareWords = map[string]string{
	"less": "<", "smaller": "<", "fewer": "<", "menor": "<", "menos": "<",
	"greater": ">", "more": ">", "bigger": ">", "larger": ">", "mayor": ">", "mas": ">",
	"equal": "=", "equals": "=", "same": "=", "igual": "=", "iguales": "=", "<": "<", ">": ">", "=": "=",
}

// Judge accepts the sign, the word for it, or a whole comparison of the two numbers.
func (c Compare) Judge(answer string) bool {
	said, ok := c.reply(answer)
	return ok && said == c.Key()
}

// Possible takes the signs, the words for them, and whole comparisons.
func (c Compare) Possible(answer string) bool { _, ok := c.reply(answer); return ok }

// reply is the sign that an answer puts between the two numbers, as they stand in the item;
// empty for a comparison of other numbers.
func (c Compare) reply(answer string) (said string, ok bool) {
	var numbers []int
	for _, token := range words.Cut(words.Tokens(answer), func(t words.Token) bool { return t.Text == "." }) {
		switch s := compareWords[token.Text]; {
		case s != "" && !ok:
			said, ok = s, true
		case token.IsNumber() && len(numbers) < 2 && ok == (len(numbers) == 1):
			numbers = append(numbers, token.Number)
		case !strings.Contains(" it it's they is are than to as the que a es son sign ", " "+token.Text+" "):
			return "", false
		}
	}
	switch {
	case len(numbers) == 1:
		return "", false
	case len(numbers) == 0 || numbers[0] == c.A && numbers[1] == c.B:
		return said, ok
	case numbers[0] == c.B && numbers[1] == c.A:
		return map[string]string{"<": ">", ">": "<", "=": "="}[said], ok
	}
	return "", ok
}

// Prompt asks for the sign.
func (c Compare) Prompt(lang string) string {
	if lang == "es" {
		return "Escribe <, > o =: " + c.String()
	}
	return "Write <, > or =: " + c.String()
}

// Traits of a comparison.
func (c Compare) Traits() Traits {
	ts := numberTraits(max(c.A, c.B))
	ts.setNumber(Apart, gap(c.A, c.B))
	place, misleads := deciding(c.A, c.B)
	ts[Decides] = place
	ts.setFlag(Misleads, misleads)
	return ts
}

// Codes: 1 to 10 in kindergarten, both numbers of two digits in grade 1, of three in grade 2;
// no standard compares 2 with 89.
func (c Compare) Codes() []Code {
	switch small, large := min(c.A, c.B), max(c.A, c.B); {
	case large <= 10 && small >= 1:
		return []Code{"K.CC.C.7"}
	case large <= 99 && small >= 10:
		return []Code{"1.NBT.B.3"}
	case large <= 999 && small >= 100:
		return []Code{"2.NBT.A.4"}
	}
	return nil
}

// The missteps in comparing.
var (
	signTurned = newMisstep("sign turned around",
		"knows which is more but turns the sign around",
		"sabe cuál es mayor, pero pone el signo al revés",
		"read the sign aloud from the left: 47 is less than 74",
		"leer el signo en voz alta desde la izquierda: 47 es menor que 74", "common practice")
	onesCompared = newMisstep("ones compared first",
		"looks at the ones before the tens",
		"mira las unidades antes que las decenas",
		"compare the largest place first, with sticks and dots",
		"comparar primero la posición mayor, con barras y puntos", "common practice")
	digitsSummed = newMisstep("digit size compared",
		"goes by how big the digits are and not by their place",
		"se guía por lo grandes que son los dígitos y no por su posición",
		"what the digit in the tens place is worth",
		"cuánto vale el dígito de las decenas", "common practice")
)

// Missteps of a comparison.
func (c Compare) Missteps() []Misstep {
	turned := sign(c.B, c.A)
	slips := []slip{{signTurned, turned}}
	if max(c.A, c.B) >= 10 {
		slips = append(slips, slip{onesCompared, sign(c.A%10, c.B%10)}, slip{digitsSummed, sign(DigitSum(c.A), DigitSum(c.B))})
	}
	return gather(c, slips)
}

// Clashes of a comparison: the two numbers, either way round.
func (c Compare) Clashes() []string {
	return []string{fmt.Sprintf("pair:%d,%d", min(c.A, c.B), max(c.A, c.B))}
}

// Fingerprint of a comparison is its text: 47 ? 74 and 74 ? 47 have other keys.
func (c Compare) Fingerprint() string { return c.String() }

// Looks of a comparison.
func (c Compare) Looks() []Look { return []Look{LookCompare} }

// Short is the question alone.
func (c Compare) Short(lang string) string { return alone(c, lang) }

// Said names the two numbers: the sign between them is what is asked for.
func (c Compare) Said(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Compara %d y %d.", c.A, c.B)
	}
	return fmt.Sprintf("Compare %d and %d.", c.A, c.B)
}

// Offers are the signs.
func (c Compare) Offers() []string { return []string{"<", "=", ">"} }

// Written is the text itself.
func (c Compare) Written() string { return c.String() }
