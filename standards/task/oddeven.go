package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// OddEven asks whether a number of things can be put in pairs: "odd or even: 14", or of a group of dots "odd or even: 14 dots".
type OddEven struct {
	Number int // 0 to 999; 2 to 20 dots
	Dots   bool
}

// LookParityDots is a group of dots, and odd and even to choose from.
const LookParityDots Look = "dots-odd-even"

var _ = ownLook(LookParityDots, "dots with odd and even to choose from", 10)

var oddEvenPattern = regexp.MustCompile(`^(?:is )?([0-9]{1,3}) (?:odd or even|even or odd)$|^(?:odd or even|even or odd)\b[:? ]*([0-9]{1,3})( dots)?$`)

func readOddEven(text string) (Task, error) {
	if !strings.Contains(text, "odd") {
		return nil, errOther
	}
	m := oddEvenPattern.FindStringSubmatch(strings.TrimRight(text, "? ="))
	rest, asked := strings.CutPrefix(text, "odd or even")
	switch {
	case m == nil && asked && sentenceShape.MatchString(strings.Trim(rest, ":? ")):
		return nil, words.Errorf("%q needs one number from 0 to 999, as in odd or even: 14", text)
	case m == nil:
		return nil, errOther
	}
	n, _ := strconv.Atoi(m[1] + m[2])
	if m[3] != "" && (n < 2 || n > 20) {
		return nil, words.Errorf("%q: groups of 2 to 20 dots are drawn, as in odd or even: 14 dots", text)
	}
	return OddEven{n, m[3] != ""}, nil
}

func (t OddEven) String() string {
	if t.Dots {
		return fmt.Sprintf("odd or even: %d dots", t.Number)
	}
	return fmt.Sprintf("odd or even: %d", t.Number)
}

// Key is "odd" or "even".
func (t OddEven) Key() string { return parity(t.Number) }

func parity(n int) string { return [...]string{"even", "odd"}[n%2] }

// Judge accepts the word, also in Spanish and within "14 is even".
func (t OddEven) Judge(answer string) bool {
	said, ok := t.reply(answer)
	return ok && said == t.Key()
}

// Possible takes one of the words, or its first letter.
func (t OddEven) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

// parityWords are what people write for odd and even.
var parityWords = map[string]string{"even": "even", "e": "even", "par": "even", "odd": "odd", "o": "odd", "impar": "odd"}

// reply is the parity that an answer says of the number.
func (t OddEven) reply(answer string) (said string, ok bool) {
	for i, token := range trimmed(words.Tokens(answer)) {
		switch parity := parityWords[token.Text]; {
		case parity != "" && !ok:
			said, ok = parity, true
		case i == 0 && token.IsNumber() && token.Number == t.Number, strings.Contains(" it it's is es un número numero a an number ", " "+token.Text+" "):
		default:
			return "", false
		}
	}
	return said, ok
}

// Prompt asks for the word.
func (t OddEven) Prompt(lang string) string {
	switch {
	case t.Dots && lang == "es":
		return "¿Hay un número par o impar de puntos?"
	case t.Dots:
		return "Is the number of dots odd or even?"
	}
	if lang == "es" {
		return fmt.Sprintf("¿Es %d par o impar?", t.Number)
	}
	return fmt.Sprintf("Is %d odd or even?", t.Number)
}

// Traits of odd and even.
func (t OddEven) Traits() Traits {
	ts := numberTraits(t.Number)
	if t.Dots {
		ts[Asks] = "a group"
	}
	return ts
}

// Short tells how many dots there are.
func (t OddEven) Short(lang string) string {
	if t.Dots {
		return shown(t, lang, t.Number)
	}
	return t.Prompt(lang)
}

// Codes: groups of up to 20 things, grade 2; no standard up to grade 2 goes further.
func (t OddEven) Codes() []Code {
	if t.Number > 20 {
		return nil
	}
	return []Code{"2.OA.C.3"}
}

// The missteps with odd and even.
var (
	parityMixed = newMisstep("odd and even mixed up",
		"takes the words odd and even for each other",
		"confunde las palabras par e impar",
		"put things in pairs: even when none is left over",
		"formar parejas de cosas: es par cuando no sobra ninguna", "common practice")
	firstDigit = newMisstep("first digit judged",
		"goes by the first digit and not by the ones",
		"se guía por el primer dígito y no por las unidades",
		"put things in pairs: tens always pair up, so only the ones decide",
		"formar parejas de cosas: las decenas siempre quedan en pareja y solo deciden las unidades", "common practice")
)

// Missteps of odd and even.
func (t OddEven) Missteps() []Misstep {
	slips := []slip{{parityMixed, parity(t.Number + 1)}}
	if t.Number >= 10 && !t.Dots {
		first := strconv.Itoa(t.Number)[0] - '0'
		slips = append(slips, slip{firstDigit, parity(int(first))})
	}
	return gather(t, slips)
}

// Clashes of odd and even: the number.
func (t OddEven) Clashes() []string { return []string{"parity:" + strconv.Itoa(t.Number)} }

// Fingerprint of odd and even is its text.
func (t OddEven) Fingerprint() string { return t.String() }

// Looks of odd and even.
func (t OddEven) Looks() []Look {
	if t.Dots {
		return []Look{LookParityDots}
	}
	return []Look{LookTick}
}

// Offers are the two words.
func (t OddEven) Offers() []string { return []string{"odd", "even"} }

// Judged is the number.
func (t OddEven) Judged() string { return strconv.Itoa(t.Number) }

// AnswerIn is odd or even.
func (t OddEven) AnswerIn(answer, lang string) string {
	return inSpanish(answer, lang, map[string]string{"odd": "impar", "even": "par"})
}
