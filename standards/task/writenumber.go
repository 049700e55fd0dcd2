package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// WriteNumber asks for a number in digits that is given in words, "write three hundred
// forty-two", or with InWords for the words: "write 342 in words".
type WriteNumber struct {
	Number  int // 0 to 1000
	InWords bool
}

var inWordsPattern = regexp.MustCompile(`^(?:write |escribe )?([0-9]{1,5}) in words$`)

// writeLeadIns open the question for digits.
var writeLeadIns = []string{"write the number", "write ", "escribe el número", "escribe "}

func readWriteNumber(text string) (Task, error) {
	text = strings.TrimRight(text, " .?=:")
	if m := inWordsPattern.FindStringSubmatch(text); m != nil {
		n, _ := strconv.Atoi(m[1])
		if n > words.MostNamed {
			return nil, words.Errorf("%q is more than %d; number names here go to %d", text, words.MostNamed, words.MostNamed)
		}
		return WriteNumber{n, true}, nil
	}
	for _, opening := range writeLeadIns {
		if rest, ok := strings.CutPrefix(text, opening); ok {
			if n, ok := words.ReadNumber(strings.Trim(rest, `:" `)); ok {
				return WriteNumber{n, false}, nil
			}
		}
	}
	return nil, errOther
}

func (t WriteNumber) String() string {
	if t.InWords {
		return fmt.Sprintf("write %d in words", t.Number)
	}
	return "write " + words.NumberName(t.Number, "en")
}

// Key is the number in digits, or its English name.
func (t WriteNumber) Key() string {
	if t.InWords {
		return words.NumberName(t.Number, "en")
	}
	return strconv.Itoa(t.Number)
}

// Judge accepts the digits, or where words are asked for the name in either language.
func (t WriteNumber) Judge(answer string) bool {
	said, ok := t.reply(answer)
	return ok && said.IsNumber() && said.Number == t.Number && (said.Kind == words.Spoken) == t.InWords
}

// Possible takes a number in digits or words; where words are asked for also several, as some
// name each digit, and misspelt ones.
func (t WriteNumber) Possible(answer string) bool {
	if _, ok := t.reply(answer); ok {
		return true
	}
	return t.InWords && words.NearNumbers(answer)
}

// reply is the one number of an answer.
func (t WriteNumber) reply(answer string) (said words.Token, ok bool) {
	for _, token := range trimmed(words.Tokens(answer)) {
		switch {
		case token.IsNumber() && !ok:
			said, ok = token, true
		case token.Kind != words.Word || !aroundNumbers[token.Text]:
			return said, false
		}
	}
	return said, ok
}

// Prompt gives the number in one form and asks for the other.
func (t WriteNumber) Prompt(lang string) string {
	name := words.NumberName(t.Number, lang)
	switch es := lang == "es"; {
	case t.InWords && es:
		return fmt.Sprintf("Escribe con palabras: %d", t.Number)
	case t.InWords:
		return fmt.Sprintf("Write in words: %d", t.Number)
	case es:
		return "Escribe el número: " + name
	}
	return "Write the number: " + name
}

// Traits of number writing.
func (t WriteNumber) Traits() Traits {
	ts := numberTraits(t.Number)
	ts[Asks] = "digits"
	if t.InWords {
		ts[Asks] = "words"
	}
	return ts
}

// Codes: digits to 20 in kindergarten, to 120 in grade 1, to 1000 and names in grade 2.
func (t WriteNumber) Codes() []Code {
	switch {
	case t.InWords || t.Number > 120:
		return []Code{"2.NBT.A.3"}
	case t.Number <= 20:
		return []Code{"K.CC.A.3", "1.NBT.A.1", "2.NBT.A.3"}
	}
	return []Code{"1.NBT.A.1", "2.NBT.A.3"}
}

// The missteps in writing numbers.
var (
	teenTy = newMisstep("teen and ty mixed up",
		"mixes up thirteen and thirty, or other numbers that sound alike",
		"confunde trece con treinta, u otros números que suenan parecido",
		"say and show both: ten and three, three tens",
		"decir y mostrar los dos: diez y tres, tres decenas", "common practice")
	zeroLeftOut = newMisstep("zero left out",
		"leaves out the zero that keeps a place empty",
		"deja fuera el cero que guarda una posición vacía",
		"a place-value frame: no place may be skipped",
		"una tabla de valor posicional: no se salta ninguna posición", writingSource)
	digitsNamed = newMisstep("digits named",
		"names the digits one by one",
		"nombra los dígitos uno por uno",
		"what each digit is worth: hundreds, tens and ones",
		"cuánto vale cada dígito: centenas, decenas y unidades", "common practice")
)

// Missteps of number writing.
func (t WriteNumber) Missteps() []Misstep {
	if t.InWords {
		return gather(t, t.namingSlips())
	}
	slips := writtenOutSlips(t.Number, saidParts(t.Number))
	n := t.Number
	switch {
	case n > 12 && n < 20:
		slips = append(slips, slip{teenReversed, strconv.Itoa(n%10*10 + 1)}, slip{teenTy, strconv.Itoa(n % 10 * 10)})
	case n >= 30 && n < 100 && n%10 == 0:
		slips = append(slips, slip{teenTy, strconv.Itoa(10 + n/10)})
	case n > 20:
		slips = append(slips, slip{turnedAround, strconv.Itoa(reversed(n))})
	}
	if n > 100 && n%100 != 0 && (n%10 == 0 || n/10%10 == 0) {
		slips = append(slips, slip{zeroLeftOut, strings.ReplaceAll(strconv.Itoa(n), "0", "")})
	}
	return gather(t, slips)
}

// saidParts are the parts of a number as its name says them: fourteen is one part, 114 two.
func saidParts(n int) []int {
	if n%100 < 11 || n%100 > 19 {
		return expandedParts(n)
	}
	return append(expandedParts(n-n%100), n%100)
}

func (t WriteNumber) namingSlips() []slip {
	if t.Number < 10 {
		return nil
	}
	var names []string
	for _, digit := range strconv.Itoa(t.Number) {
		names = append(names, words.NumberName(int(digit-'0'), "en"))
	}
	slips := []slip{{digitsNamed, strings.Join(names, " ")}, {turnedAround, words.NumberName(reversed(t.Number), "en")}}
	switch n := t.Number; {
	case n > 12 && n < 20:
		slips = append(slips, slip{teenTy, words.NumberName(n%10*10, "en")})
	case n >= 30 && n < 100 && n%10 == 0:
		slips = append(slips, slip{teenTy, words.NumberName(10+n/10, "en")})
	}
	return slips
}

// reversed is the number with its digits in the opposite order.
func reversed(n int) int {
	turned := 0
	for ; n > 0; n /= 10 {
		turned = 10*turned + n%10
	}
	return turned
}

// Clashes of number writing: the number itself.
func (t WriteNumber) Clashes() []string { return []string{"parts:" + strconv.Itoa(t.Number)} }

// Fingerprint of number writing is its text.
func (t WriteNumber) Fingerprint() string { return t.String() }

// Looks of number writing.
func (t WriteNumber) Looks() []Look {
	if t.InWords {
		return []Look{LookWords}
	}
	return withChoice(t, LookWords)
}

// AnswerIn is the number, or its name in the language.
func (t WriteNumber) AnswerIn(answer, lang string) string {
	if t.InWords {
		return words.RenameNumbers(answer, lang)
	}
	return answer
}

// Accepted are the number's names, with and without hyphen and "and".
func (t WriteNumber) Accepted(lang string) []string {
	if !t.InWords {
		return []string{t.Key()}
	}
	var list []string
	for _, l := range []string{lang, "en", "es"} {
		name := words.NumberName(t.Number, l)
		and := strings.Replace(name, "hundred ", "hundred and ", 1)
		list = append(list, name, strings.ReplaceAll(name, "-", " "), and, strings.ReplaceAll(and, "-", " "))
	}
	return list
}
